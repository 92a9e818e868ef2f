/** Surface run-off by the curve number of the US Soil Conservation Service (National Engineering Handbook 4). */

/** Potential retention S, mm, of a curve number 0–100: 25400/CN − 254. */
export function retentionMm(curveNumber: number): number {
  return curveNumber > 0 ? Math.max(0, 25_400 / curveNumber - 254) : Number.POSITIVE_INFINITY;
}

/**
 * Run-off of a day, mm, from rain and melt: (P − 0.2·S)²/(P + 0.8·S) above the first 0.2·S. Its slope lies
 * between 0 and 1, so neither run-off nor what soaks in ever falls when more water comes.
 */
export function runoffMm(waterMm: number, retention: number): number {
  const over = waterMm - 0.2 * retention;
  return over > 0 ? (over * over) / (over + retention) : 0;
}
