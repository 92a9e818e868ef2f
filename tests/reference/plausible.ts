/** Distribution function of the two-piece triangle a number with a range is drawn from. */
export function plausibleShareBelow(x: number, low: number, central: number, high: number): number {
  if (x <= low) return 0;
  if (x >= high) return 1;
  if (central === low) return 1 - ((high - x) / (high - low)) ** 2 / 2;
  if (central === high) return ((x - low) / (high - low)) ** 2 / 2;
  const share = Math.min(0.8, Math.max(0.2, (high - central) / (high - low)));
  return x < central
    ? share * ((x - low) / (central - low)) ** 2
    : 1 - (1 - share) * ((high - x) / (high - central)) ** 2;
}
