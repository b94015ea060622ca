import { readFileSync } from 'node:fs';
import { getQuickJS } from 'quickjs-emscripten';
import { beforeAll, expect, test } from 'vitest';
import { worldsAsScript } from './worldsAsScript';

const golden = JSON.parse(readFileSync('tests/golden/worlds.json', 'utf8')) as Readonly<Record<string, string>>;
/** An interpreter takes long for a ground: two of the six, unless all are asked for with `ENGINES=all`. */
const STYLES = process.env['ENGINES'] === 'all' ? Object.keys(golden) : ['fen', 'ridged'];
let script = '';

beforeAll(async () => {
  script = await worldsAsScript();
});

test.each(STYLES)(
  'QuickJS makes the %s ground with the bits of Node',
  async (style) => {
    const context = (await getQuickJS()).newContext();
    const text = 'globalThis.TextEncoder ??= class { encode(t) { return Uint8Array.from(t, (c) => c.charCodeAt(0)); } };';
    const result = context.evalCode(`${text}${script};Worlds.digestOfStyle(${JSON.stringify(style)})`);
    const digest = context.dump(context.unwrapResult(result)) as string;
    context.dispose();
    expect(digest).toBe(golden[style]);
  },
  240_000,
);
