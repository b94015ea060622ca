/** A moment with this device's offset from UTC, such as `2026-05-12T19:30:05+02:00`: its first ten characters are the date here. */
export function localInstant(moment: Date): string {
  const offsetMin = -moment.getTimezoneOffset();
  const local = new Date(moment.getTime() + offsetMin * 60_000).toISOString().slice(0, 19);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${local}${offsetMin < 0 ? '-' : '+'}${two(Math.floor(Math.abs(offsetMin) / 60))}:${two(Math.abs(offsetMin) % 60)}`;
}
