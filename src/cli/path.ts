import { pathColumns } from '../core/radio/path';
import { loadPaths } from '../core/scenario/pathFile';

/** The columns of one profile or a list of them, as the input was. */
export function pathCommand(text: string, file: string): unknown {
  const { list, paths } = loadPaths(file, text);
  const rows = paths.map((path) => pathColumns(path));
  return list ? rows : rows[0];
}
