import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { randomFor } from '../../src/core/random/draw';

/** Folders of the core whose tests are tried, and those tests. */
export const TRIED: Readonly<Record<string, readonly string[]>> = {
  radio: [
    'tests/core/radio/*.test.ts',
    'tests/outside/{propagation,drawnProfiles,trade,besideWires}.test.ts',
    'tests/cli/{path,arrivals}*.test.ts',
  ],
  antenna: ['tests/core/antenna/*.test.ts', 'tests/outside/{antenna,antennaDrawnSets,trade}.test.ts', 'tests/cli/pattern*.test.ts'],
  technique: ['tests/core/technique/*.test.ts'],
  fix: ['tests/core/fix/*.test.ts', 'tests/outside/fix.test.ts', 'tests/cli/fix*.test.ts'],
};

/** One place of a source where something is turned into something else. */
export type DrawnBreak = {
  readonly file: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly was: string;
  readonly put: string;
};

const TURNED: Readonly<Partial<Record<ts.SyntaxKind, readonly string[]>>> = {
  [ts.SyntaxKind.PlusToken]: ['-'],
  [ts.SyntaxKind.MinusToken]: ['+'],
  [ts.SyntaxKind.AsteriskToken]: ['/'],
  [ts.SyntaxKind.SlashToken]: ['*'],
  [ts.SyntaxKind.LessThanToken]: ['<=', '>='],
  [ts.SyntaxKind.LessThanEqualsToken]: ['<', '>'],
  [ts.SyntaxKind.GreaterThanToken]: ['>=', '<='],
  [ts.SyntaxKind.GreaterThanEqualsToken]: ['>', '<'],
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: ['!=='],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: ['==='],
  [ts.SyntaxKind.AmpersandAmpersandToken]: ['||'],
  [ts.SyntaxKind.BarBarToken]: ['&&'],
  [ts.SyntaxKind.PlusEqualsToken]: ['-='],
  [ts.SyntaxKind.MinusEqualsToken]: ['+='],
  [ts.SyntaxKind.AsteriskEqualsToken]: ['/='],
};
const CALLS: Readonly<Record<string, string>> = { min: 'max', max: 'min', sin: 'cos', cos: 'sin', floor: 'ceil', ceil: 'floor' };
/** Numbers become so much larger; zero becomes one. */
const LARGER = 1.25;

/** Every break of a file: operators, comparisons, numbers, signs, negations, branches and a few functions, each by itself. */
export function breaksOf(file: string, text = readFileSync(file, 'utf8')): readonly DrawnBreak[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found: DrawnBreak[] = [];
  const add = (node: ts.Node, put: string) => {
    const from = node.getStart(source);
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    found.push({ file, line, from, to: node.end, was: text.slice(from, node.end), put });
  };
  const visit = (node: ts.Node): void => {
    // What a fault says, and types, decide nothing.
    if (ts.isTypeNode(node) || ts.isThrowStatement(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) for (const put of TURNED[node.operatorToken.kind] ?? []) add(node.operatorToken, put);
    else if (ts.isNumericLiteral(node)) {
      const value = Number(node.text.replaceAll('_', ''));
      if (Number.isFinite(value)) add(node, String(value === 0 ? 1 : Number.isInteger(value) && value < 4 ? value + 1 : value * LARGER));
    } else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken) add(node, node.operand.getText(source));
    else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      add(node, `(${node.operand.getText(source)})`);
    else if (ts.isConditionalExpression(node))
      add(node, `${node.condition.getText(source)} ? ${node.whenFalse.getText(source)} : ${node.whenTrue.getText(source)}`);
    else if (ts.isPropertyAccessExpression(node) && node.expression.getText(source) === 'Math' && CALLS[node.name.text])
      add(node.name, CALLS[node.name.text]!);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

export const brokenText = (text: string, { from, to, put }: DrawnBreak): string => text.slice(0, from) + put + text.slice(to);

/** So many breaks of a folder, drawn without repetition; the same for the same seed. */
export function drawBreaks(folder: string, count: number, seed: string): readonly DrawnBreak[] {
  const all = readdirSync(`src/core/${folder}`)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .flatMap((name) => breaksOf(`src/core/${folder}/${name}`));
  const random = randomFor(`${seed} ${folder}`, 'test');
  const left = [...all];
  return Array.from({ length: Math.min(count, all.length) }, () => left.splice(Math.floor(random() * left.length), 1)[0]!);
}
