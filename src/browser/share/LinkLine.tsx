import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';

/** A link that can be copied with or without the browser's help, and handed to the share sheet where there is one. */
export function LinkLine({ link, title }: { readonly link: string; readonly title: string }) {
  const field = useRef<HTMLInputElement>(null);
  const said = useSignal('');
  const copy = async () => {
    field.current!.select();
    try {
      await navigator.clipboard.writeText(link);
      said.value = 'Copied.';
    } catch {
      // Over plain http there is no clipboard for pages; the selected text is one key away from it.
      said.value = 'Selected: copy it with Ctrl C or ⌘ C.';
    }
  };
  const send = () => void navigator.share({ title, url: link }).catch(() => {});
  return (
    <div class="share-link">
      <input ref={field} readOnly type="text" aria-label="Link" value={link} onFocus={(event) => event.currentTarget.select()} />
      <div class="share-deeds">
        <button type="button" onClick={() => void copy()}>
          Copy the link
        </button>
        {'share' in navigator && (
          <button type="button" onClick={send}>
            Send the link …
          </button>
        )}
        <span class="quiet">
          <span class="number">{link.length.toLocaleString('en-GB')}</span> letters
        </span>
      </div>
      <p role="status" class="quiet">
        {said.value}
      </p>
    </div>
  );
}
