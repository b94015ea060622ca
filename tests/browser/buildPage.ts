import { buildPage } from './builtPage';
import { browserPath } from './chromium';

/** Once before all browser tests: two files that built the page or unpacked the browser at the same time would take it away from one another. */
export async function setup(): Promise<void> {
  const before = { ...process.env };
  await browserPath();
  // What the browser needs of the environment each file of tests says for itself; the tests of the core know nothing of it.
  for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
  Object.assign(process.env, before);
  await buildPage(process.pid);
}
