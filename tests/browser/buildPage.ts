import { buildPage } from './builtPage';

/** Once before all browser tests: two files that built it at the same time would take it away from one another. */
export const setup = (): Promise<void> => buildPage(process.pid);
