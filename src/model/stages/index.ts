/** The stages in the order the matter flows; each may read inputs, coefficients and what stands above it. */
import type { Stage } from '../stage.ts';
import { bedStage } from './bed.ts';
import { beddingStage } from './bedding.ts';
import { buildingStage } from './building.ts';
import { compostStage } from './compost.ts';
import { costsStage } from './costs.ts';
import { excretionStage } from './excretion.ts';
import { financeStage } from './finance.ts';
import { herdStage } from './herd.ts';
import { intakeStage } from './intake.ts';
import { labourStage } from './labour.ts';
import { ledgerStage } from './ledger.ts';
import { paddockStage } from './paddock.ts';
import { placementStage } from './placement.ts';
import { slurryStage } from './slurry.ts';
import { soilStage } from './soil.ts';
import { spreadStage } from './spread.ts';
import { valueStage } from './value.ts';
import { weatherStage } from './weather.ts';

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
