import type { Action, Entry } from '../../core/run/actions';

/** The action that takes the last line of the notebook back; taken back twice it stands again. `null` where nothing was written. */
export function undoOf(log: readonly Entry[]): Action | null {
  const written = log
    .map(({ action }) => action)
    .filter(({ type }) => ['mark', 'strikeOut', 'unstrike', 'guess', 'ruleOut', 'takeBack', 'ruleOutAgain'].includes(type));
  const last = written.at(-1);
  switch (last?.type) {
    case 'mark':
      return { type: 'strikeOut', mark: written.filter(({ type }) => type === 'mark').length - 1 };
    case 'strikeOut':
      return { type: 'unstrike', mark: last.mark };
    case 'unstrike':
      return { type: 'strikeOut', mark: last.mark };
    case 'ruleOut':
      return { type: 'takeBack', ruling: written.filter(({ type }) => type === 'ruleOut').length - 1 };
    case 'takeBack':
      return { type: 'ruleOutAgain', ruling: last.ruling };
    case 'ruleOutAgain':
      return { type: 'takeBack', ruling: last.ruling };
    case 'guess': {
      const before = written
        .slice(0, -1)
        .filter(({ type }) => type === 'guess')
        .at(-1);
      return { type: 'guess', at: before?.type === 'guess' ? before.at : null };
    }
    default:
      return null;
  }
}
