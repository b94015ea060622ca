import { digestOf } from '../scenario/seal';

type Sealed = {
  readonly name: string;
  readonly scenario: unknown;
  readonly digest: string;
  readonly seal?: string | undefined;
};

/**
 * Digest of a run file but for its name, which a club may set right; the scenario goes in by its own digest. It shows that a
 * file was changed after it was written, by slip or by hand. It is no signature: whoever can compute one can compute another.
 */
export function runSealOf<T extends Sealed>(run: T): string {
  const { name: _free, scenario: _digested, seal: _itself, ...sealed } = run;
  return digestOf(sealed);
}
