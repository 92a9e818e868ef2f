/**
 * What `make` gives for this key, the same whenever it is asked for again while it is among the `most` that were asked for
 * last: what else was kept is let go, with the memory it holds. Made values are never undefined.
 */
export function recall<Key, Value extends object>(
  kept: Map<Key, Value>,
  key: Key,
  most: number,
  make: () => Value,
): Value {
  const known = kept.get(key);
  const value = known ?? make();
  if (known) kept.delete(key);
  else if (kept.size >= most) kept.delete(kept.keys().next().value as Key);
  kept.set(key, value);
  return value;
}
