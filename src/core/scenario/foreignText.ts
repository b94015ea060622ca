/** Characters that turn the direction of writing, hide, or mark an order of bytes. @source Unicode Standard Annex 9; common practice */
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
const HIDDEN = /[\u00ad\u115f\u1160\u180e\u200b\u2060-\u2064\u206a-\u206f\u3164\ufeff\uffa0\ufff9-\ufffb]|\u034f|[\u{e0000}-\u{e0fff}]/u;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029]/;
/** Half of a letter pair without the other, and code points that stand for no letter. */
const BROKEN = /\p{Cs}|\p{Noncharacter_Code_Point}/u;
/** So many marks on one letter that they cover the lines above and below. */
const STACKED = /\p{M}{5}/u;
const LINE_BREAK = /[\r\n\t]/;

/** Scripts whose letters are taken for one another. Any other script may stand beside Latin, as ツ beside kHz does. */
const ALIKE = [/\p{Script=Latin}/u, /\p{Script=Greek}/u, /\p{Script=Cyrillic}/u, /\p{Script=Armenian}/u, /\p{Script=Cherokee}/u];
/** Signs of measure that stand beside Latin letters honestly: micro, ohm, degrees of a phase, wavelength. */
const SIGNS = /[µμΩΩφλπ]/gu;

/** What is odd about a text from a file, or `null`: what can't be seen, or reads as something else than it is. */
export function oddText(text: string, isName: boolean): string | null {
  if (CONTROLS.test(text)) return 'a control character in a text';
  if (TURNS.test(text)) return 'a character that turns the direction of writing';
  if (HIDDEN.test(text)) return 'an invisible character in a text';
  if (BROKEN.test(text)) return 'half a character in a text';
  if (STACKED.test(text)) return 'more than four marks on one letter';
  if (!isName) return null;
  if (LINE_BREAK.test(text)) return 'a line break in a name';
  const words = text.replace(SIGNS, '').split(/[^\p{L}\p{M}]+/u);
  return words.some((word) => ALIKE.filter((script) => script.test(word)).length > 1)
    ? 'letters of two scripts in one word of a name'
    : null;
}

/** Letters that look like a Latin one, each after the letter that it is taken for. Our choice of the commonest, no whole table. */
const LIKE_LATIN = new Map<string, string>(
  [
    ['a', 'аαɑ'],
    ['b', 'Ььβ'],
    ['c', 'сϲ'],
    ['d', 'ԁ'],
    ['e', 'еєε'],
    ['h', 'һн'],
    ['i', 'іιıl1|'],
    ['j', 'ј'],
    ['k', 'кκ'],
    ['m', 'м'],
    ['n', 'η'],
    ['o', 'оοо0օ'],
    ['p', 'рρ'],
    ['s', 'ѕ'],
    ['t', 'тτ'],
    ['u', 'υս'],
    ['v', 'νѵ'],
    ['w', 'ѡω'],
    ['x', 'хχ'],
    ['y', 'уγү'],
    ['z', 'ζ'],
  ].flatMap(([latin, others]) => [...others!].map((letter) => [letter, latin!] as const)),
);

/** Two names with the same likeness are taken for each other by eye: case, accents, spaces and borrowed letters are gone. */
export const likenessOf = (name: string): string =>
  [...name.normalize('NFKD').toLowerCase()]
    .filter((letter) => /[\p{L}\p{N}|]/u.test(letter))
    .map((letter) => LIKE_LATIN.get(letter) ?? letter)
    .join('')
    .replaceAll('rn', 'm');
