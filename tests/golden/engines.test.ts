import { readFileSync } from 'node:fs';
import { getQuickJS } from 'quickjs-emscripten';
import { beforeAll, expect, test } from 'vitest';
import { gradeOfFile } from './engineAnswers';
import { engineScript } from './engineScript';
import { longRunText } from './longRun';
import { printedBy, programHere, saidByFirefox } from './otherEngines';

const golden = JSON.parse(readFileSync('tests/golden/worlds.json', 'utf8')) as Readonly<Record<string, string>>;
/** An interpreter takes long for a ground: two of the six, unless all are asked for with `ENGINES=all`. */
const STYLES = process.env['ENGINES'] === 'all' ? Object.keys(golden) : ['fen', 'ridged'];
const BUN = programHere('BUN_PATH', ['bun']);
const FIREFOX = programHere('FIREFOX_PATH', ['firefox', 'firefox-esr']);
const WORLDS = `Object.fromEntries(${JSON.stringify(Object.keys(golden))}.map((style) => [style, Engine.digestOfStyle(style)]))`;
let script = '';
let run = '';
/** Digests are compared to the bit, and so is every number of the grade: the core takes nothing of the engine that may differ. */
let wanted: object = {};

beforeAll(async () => {
  script = await engineScript();
  if (!BUN && !FIREFOX) return;
  run = longRunText();
  const grade = JSON.parse(gradeOfFile(run)) as unknown;
  expect(grade).toMatchObject({ replayMatches: true });
  wanted = { worlds: golden, grade };
}, 240_000);

const answer = () => `({ worlds: ${WORLDS}, grade: JSON.parse(Engine.gradeOfFile(${JSON.stringify(run)})) })`;

test.skipIf(!BUN)(
  'Bun makes all six grounds with the bits of Node, and replays a run of half an hour to its very grade',
  () => {
    expect(printedBy(BUN!, script, answer())).toEqual(wanted);
  },
  240_000,
);

test.skipIf(!FIREFOX)(
  'Firefox does the same',
  async () => {
    expect(await saidByFirefox(FIREFOX!, script, answer())).toEqual(wanted);
  },
  240_000,
);

test.each(STYLES)(
  'QuickJS makes the %s ground with the bits of Node',
  async (style) => {
    const context = (await getQuickJS()).newContext();
    const text = 'globalThis.TextEncoder ??= class { encode(t) { return Uint8Array.from(t, (c) => c.charCodeAt(0)); } };';
    const result = context.evalCode(`${text}${script};Engine.digestOfStyle(${JSON.stringify(style)})`);
    const digest = context.dump(context.unwrapResult(result)) as string;
    context.dispose();
    expect(digest).toBe(golden[style]);
  },
  240_000,
);
