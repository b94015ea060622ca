/**
 * The first file of the page. The Listening room comes alone, so that a phone in a hall has it within a second; every other
 * room comes with `main.tsx`. Both may be open in turn in one page, each in its own element.
 */
const inListeningRoom = (): boolean => /^#\/listen(\/|\?|$)/.test(location.hash);

let leaveListening: (() => void) | null = null;
let coming = false;

async function follow(): Promise<void> {
  if (!inListeningRoom()) {
    leaveListening?.();
    leaveListening = null;
    await import('./main');
    return;
  }
  if (leaveListening || coming) return;
  coming = true;
  const { mountListening } = await import('./listening/mountListening');
  coming = false;
  if (!inListeningRoom()) return;
  leaveListening = mountListening(document.getElementById('listening')!, () => {
    location.hash = '/';
  });
}

addEventListener('hashchange', () => void follow());
void follow();
