/** How high animals and machines reach above what they stand on. */
import type { Coefficient } from '../../tables/coefficient.ts';
import type { Context } from './context.ts';

export interface Reach {
  /** Free height needed, margin included, m. */
  readonly needM: number;
  /** The height without the margin, m. */
  readonly sizeM: number;
  /** For sentences: `horned cattle`. */
  readonly who: string;
  readonly row: Coefficient;
}

/** Horn tips where there are horns, polls otherwise, heads raised; null without animals. */
export function animalReachM(c: Context): Reach | null {
  const margin = c.row('roofMarginM').central;
  const horns = c.largest('hornReachM', (group) => group.hornedShare > 0);
  const heads = c.largest('headReachM');
  const best = horns && (!heads || horns.size >= heads.size) ? horns : heads;
  if (!best) return null;
  return {
    needM: best.size + margin,
    sizeM: best.size,
    who: best === horns ? 'horned cattle' : 'cattle with raised heads',
    row: best.row,
  };
}

/** The keeper's loader and the air over it. */
export function machineNeedM(c: Context): Reach {
  const row = c.row('commonPracticeClearanceOverMachineM');
  return { needM: c.shed.machineHeightM + row.central, sizeM: c.shed.machineHeightM, who: 'the loader', row };
}
