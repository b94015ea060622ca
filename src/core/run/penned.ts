import type { Mark } from './state';

/** A notebook as its owner has drawn it on the map: each bearing from where he believed to stand, which is where he stood if the map shows it. */
export const pennedMarks = (notebook: readonly Mark[]): readonly Mark[] =>
  notebook.map((mark) => ({ ...mark, at: mark.believedAt ?? mark.at }));
