/** The stages in the order the matter flows; each may read inputs, coefficients and what stands above it. */

import { bedStage } from './bed/bed.ts';
import { beddingStage } from './bed/bedding.ts';
import { compostStage } from './bed/compost.ts';
import { paddockStage } from './field/paddock.ts';
import { soilStage } from './field/soil.ts';
import { spreadStage } from './field/spread.ts';
import { excretionStage } from './herd/excretion.ts';
import { herdStage } from './herd/herd.ts';
import { intakeStage } from './herd/intake.ts';
import { placementStage } from './herd/placement.ts';
import { costsStage } from './money/costs.ts';
import { financeStage } from './money/finance.ts';
import { labourStage } from './money/labour.ts';
import { ledgerStage } from './nutrients/ledger.ts';
import { valueStage } from './nutrients/value.ts';
import { slurryStage } from './slurry/slurry.ts';
import type { Stage } from './stage.ts';
import { weatherStage } from './weather/soilWater.ts';
import { buildingStage } from './works/building.ts';

export const STAGES: readonly Stage[] = [
  herdStage,
  weatherStage,
  intakeStage,
  excretionStage,
  beddingStage,
  placementStage,
  paddockStage,
  slurryStage,
  bedStage,
  compostStage,
  spreadStage,
  soilStage,
  ledgerStage,
  valueStage,
  labourStage,
  buildingStage,
  costsStage,
  financeStage,
];
