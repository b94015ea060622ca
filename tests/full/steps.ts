/** One long study: what it is called in the state file, and what npm is told. */
export type Step = { readonly name: string; readonly args: readonly string[] };

const run = (script: string, ...args: readonly string[]): readonly string[] => [
  'run',
  '-s',
  script,
  ...(args.length > 0 ? ['--', ...args] : []),
];

/** All long studies in the order in which a fault is found soonest. `state` names a file; steps that resume keep theirs beside it. */
export function stepsOf(state: string | undefined): readonly Step[] {
  const beside = (name: string): readonly string[] => (state ? ['--state', `${state}.${name}`] : []);
  return [
    { name: 'tests', args: ['test'] },
    { name: 'coverage', args: run('coverage') },
    { name: 'check values', args: run('fidelity') },
    { name: 'spoilt files', args: run('fuzz', '100000') },
    { name: 'edited runs', args: run('tampering') },
    { name: 'habits broken', args: run('mutation') },
    { name: 'core broken', args: run('mutation:drawn', '--count', '100', ...beside('drawn')) },
    { name: 'kills', args: run('kills', '--times', '1000') },
    { name: 'study', args: run('faintward', 'validity', '--exercises', '50', ...beside('study')) },
  ];
}

/** The steps that a state file, one JSON line a step, does not tell as passed. A last line cut short counts for nothing. */
export function left(steps: readonly Step[], state: string): readonly Step[] {
  const passed = new Set<unknown>();
  for (const line of state.split('\n').filter(Boolean)) {
    try {
      passed.add((JSON.parse(line) as { readonly passed?: unknown }).passed);
    } catch (fault) {
      if (!(fault instanceof SyntaxError)) throw fault;
    }
  }
  return steps.filter(({ name }) => !passed.has(name));
}
