export function Debrief({ onAgain }: { readonly runFileText: () => string; readonly onAgain: () => void; readonly onOther: () => void }) {
  return (
    <button type="button" onClick={onAgain}>
      Again
    </button>
  );
}
