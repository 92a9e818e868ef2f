/** TEMP until the weather room is done. */
import type { WinterOf } from '../model/evaluate.ts';
import { makeYear } from '../model/weatherGenerator.ts';
import { hargreavesTermMm } from '../model/science/evapotranspiration.ts';
import { extraterrestrialRadiationMj } from '../model/science/radiation.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Problem } from '../units/problem.ts';
export async function wintersOf(notebook: Notebook): Promise<{ winterOf: WinterOf; problems: readonly Problem[] }> {
  const start = notebook.farm.winter.start;
  const made = makeYear({ rainMm: [60,45,45,45,55,80,80,85,70,75,70,65], temperatureC: [-4,-4,-1,5,11,15,18,16,11,6,1,-2], rangeC: [5,6,7,8,9,9,9,9,8,6,5,5], wetDays: [15,13,14,12,12,12,13,13,14,15,16,16] }, start, 366, 1);
  const w = { label: 'temp', start, days: 366, rainMm: made.rainMm, temperatureC: made.meanC, hargreavesTermMm: made.minC.map((lo, d) => hargreavesTermMm(lo, made.maxC[d], extraterrestrialRadiationMj(57, ((293 + d) % 365) + 1))) };
  return { winterOf: () => w, problems: [] };
}
