import { drawRehearsed } from '../../core/walkers/drawRehearsed';
import type { FromDraw, ToDraw } from './drawMessages';

const TELL_EVERY_TICKS = 400;
const tell = (message: FromDraw) => postMessage(message);

/** Draws exercises until the steady walker finds the tag in one. */
addEventListener('message', ({ data: { seed, lesson, level } }: MessageEvent<ToDraw>) => {
  const drawn = drawRehearsed(seed, lesson, level, ({ title }, { tick, walkedM }) => {
    if (tick % TELL_EVERY_TICKS === 0) tell({ kind: 'rehearsing', title, walkedM });
  });
  tell({ kind: 'drawn', scenario: drawn?.scenario ?? null });
});
