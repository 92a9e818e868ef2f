/** Bedding a bed needs to stay as dry as wanted; the water balance of the bed read backwards. Derived. */
export interface BedWater {
  /** Water and dry matter of the excreta that reach the bed, kg a day. */
  readonly excretaWaterKg: number;
  readonly excretaDryMatterKg: number;
  /** Water the bed gives to the air, kg a day. */
  readonly evaporatedKg: number;
  /** Share of all dry matter lost so far. */
  readonly dryMatterLoss: number;
}

/**
 * Bedding as it lies, kg a day, that holds the bed at `targetMoisture`; 0 when it is drier without any, null
 * when the bedding is itself too wet to reach it.
 */
export function beddingForMoisture(
  { excretaWaterKg, excretaDryMatterKg, evaporatedKg, dryMatterLoss }: BedWater,
  beddingMoisture: number,
  targetMoisture: number,
): number | null {
  const waterPerDry = targetMoisture / (1 - targetMoisture);
  const left = 1 - dryMatterLoss;
  const excess = excretaWaterKg - evaporatedKg - waterPerDry * excretaDryMatterKg * left;
  const takenPerKg = waterPerDry * (1 - beddingMoisture) * left - beddingMoisture;
  if (excess <= 0) return 0;
  return takenPerKg > 0 ? excess / takenPerKg : null;
}
