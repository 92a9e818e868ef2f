/** Numbers as they stand in the sentences of checks. */

/** `1.25` with at most `digits` decimals and no trailing zeros; a dash for null. */
export function say(value: number | null, digits = 2): string {
  if (value === null || !Number.isFinite(value)) return '–';
  // Halves go up as they do where the same number is shown beside: 21.45 is 21.5 in both, though stored a little below.
  const up = Number(`${Math.round(Number(`${Math.abs(value)}e${digits}`))}e-${digits}`) * Math.sign(value);
  return String(Number.isFinite(up) ? up + 0 : Number(value.toFixed(digits)));
}

/** `1.25 m`; money and plain numbers leave the unit out. */
export function sayIn(value: number | null, unit: string, digits = 2): string {
  return unit === '' ? say(value, digits) : `${say(value, digits)} ${unit}`;
}

/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
