/** Laying differences over defaults: maps merge key by key, everything else is replaced whole. */
export type Plain = Readonly<Record<string, unknown>>;

export const isPlain = (value: unknown): value is Plain =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

/** `over` on top of `under`; neither is changed. Lists are replaced, not joined. */
export function mergeOver(under: unknown, over: unknown): unknown {
  if (!isPlain(under) || !isPlain(over)) return over === undefined ? under : over;
  const out: Record<string, unknown> = { ...under };
  for (const [key, value] of Object.entries(over))
    out[key] = Object.hasOwn(under, key) ? mergeOver(under[key], value) : value;
  return out;
}
