/** `timeS` seconds after an ISO instant, in UTC, such as `2026-05-12T17:42:35.500Z`. */
export function utcInstant(begunAt: string, timeS: number): string {
  // biome-ignore lint/plugin: a number is written as a date; nothing asks what time it is
  return new Date(Date.parse(begunAt) + timeS * 1000).toISOString();
}
