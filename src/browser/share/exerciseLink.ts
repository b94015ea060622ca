import { LONGEST_LINK, packedScenario, QR_BYTES } from '../../core/scenario/link';
import type { Scenario } from '../../core/scenario/schema';

/** An exercise as an address: all of it stands after the #, which no browser sends to any server. `null` where it is too long for one. */
export function exerciseLink(scenario: Scenario): string | null {
  const packed = packedScenario(scenario);
  return packed.length > LONGEST_LINK ? null : `${location.origin}${location.pathname}#/exercise/${packed}`;
}

/** The address is plain ASCII: a letter is a byte. */
export const fitsQr = (link: string): boolean => link.length <= QR_BYTES;

/** Only this very machine answers to such a name. @source RFC 6761, section 6.3; RFC 1122, section 3.2.1.3 for 127/8 */
export const onlyHere = (): boolean => /^(localhost|127(\.\d+){3}|\[::1\])$/.test(location.hostname);
