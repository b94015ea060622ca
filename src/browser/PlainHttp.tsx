/** What a browser keeps back from a page that came over a club's own plain-http network; nothing where it came safely. */
export function PlainHttp() {
  if (isSecureContext) return null;
  return (
    <p class="plain-http">
      This page came over plain http. Here browsers offer no playing offline later, no compass of the phone, no share sheet and only the
      simpler of two ways to make sound. Exercises, runs, their check and the table work as everywhere. Open the program over https once, at
      home, and all of it is there.
    </p>
  );
}
