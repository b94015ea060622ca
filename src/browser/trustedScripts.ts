/**
 * The page enforces trusted types: a text never becomes markup or script. What is let through are addresses of the program's own
 * script files, for workers; everything else throws where it is tried. Comes before anything that opens a worker.
 */
type Policies = { createPolicy: (name: string, rules: { createScriptURL: (address: string) => string }) => unknown };

const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;
const ownFolder = new URL('.', document.baseURI).href;

policies?.createPolicy('default', {
  createScriptURL(address) {
    const { href, pathname } = new URL(address, document.baseURI);
    if (href.startsWith(ownFolder) && /\.(js|ts)$/.test(pathname)) return address;
    throw new TypeError(`no script of this program: ${href.slice(0, 200)}`);
  },
});
