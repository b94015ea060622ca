import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/**
 * What stands in a golden file. With `GOLDEN=write` it is written anew from the answers of today: a person does that who has looked at
 * why they changed; CI never.
 */
export function goldenAnswers<Answers>(
  path: string,
  today: Answers,
  text = (answers: Answers) => JSON.stringify(answers, null, 1),
): Answers | null {
  if (process.env['GOLDEN'] === 'write' && !process.env['CI']) writeFileSync(path, `${text(today)}\n`);
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as Answers) : null;
}
