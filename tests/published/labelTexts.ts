/** The labels as they stand in titles, for the tests that carry them and for the command that counts them. */
export const LABELS = {
  published: 'result against a published figure',
  recalled: 'result against a recalled or customary figure',
  fitted: 'result against a study that set a row (calibration)',
  row: 'table row against its source',
  sum: 'hand-worked sum (regression)',
} as const;

/** Stands in the title of a check that is known to miss its figure. */
export const MISS = 'known miss';
