/** How a run ended, in a word or two. */
export const outcomeEndings: Readonly<Record<string, string>> = {
  found: 'found',
  fixed: 'fix declared',
  'too-near': 'came too near',
  'walked-out': 'way used up',
  'gave-up': 'given up',
  'out-of-time': 'out of time',
};
