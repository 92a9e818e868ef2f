/** What is needed to hold a bill against published costs of cattle houses. */

/** Euros for one unit of a currency: means of 2024 of the European Central Bank, as in data/coefficients/reference.csv. */
export const EUR_PER: Readonly<Record<string, number>> = { EUR: 1, CAD: 1 / 1.4821 };

/** Lines of the bill that a listed house does not hold: stores, pads, roof water, pens' partitions, ramps, fees. */
export const SCOPE = [
  'beddingStore', 'compostPad', 'heapCover', 'waterTank', 'penPartitions', 'exitRamps', 'engineer',
] as const; // biome-ignore format: one short list
