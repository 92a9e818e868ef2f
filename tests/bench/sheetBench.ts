/** The edit of one shared input, in the spreadsheet and in the whole pipeline, by turns. */
import { compute, computing } from '../../src/model/compute.ts';
import { soilWater } from '../../src/model/weather/soilWater.ts';
import { winter } from '../../src/model/weather/winter.ts';
import type { Setting } from '../../src/study/rows.ts';
import { CHIEF } from './chief.ts';
import { byTurns, sumOf } from './measure.ts';
import { type Columns, drawnColumns } from './rows.ts';
import { buildSheet, SHARED } from './sheet.ts';

/** Drawn rows that stand in one weather and soil, so that the sheet needs one water balance only. */
export function oneWeather(setting: Setting, draws: number): Columns {
  const columns = drawnColumns(setting, draws, 1);
  for (const name of [...winter.reads, ...soilWater.reads]) columns[name]?.fill(columns[name][0]);
  // What weather does to the animals, and the usual bedding, is given to the sheet; the pipeline works it out again.
  return { ...columns, ...compute(WEATHERED, columns, setting.weather) };
}

const WEATHERED = [
  'coldNeedFraction',
  'coldMaintenanceMjPerKg',
  'mudShare',
  'appetiteFactor',
  'beddingDailyKgPer100Kg',
] as const;

export interface EditTimes {
  readonly edit: string;
  readonly sheetMs: number;
  readonly pipelineMs: number;
}

/** Times of one edit each of the shared inputs; `cells` is how many formulas the sheet holds. */
export function timeEdits(
  setting: Setting,
  draws: number,
  rounds: number,
): { cells: number; edits: EditTimes[] } {
  const rows = draws * setting.bound.length;
  const columns = oneWeather(setting, draws);
  const sheet = buildSheet(columns, rows, setting.weather[0]);
  const edits = SHARED.map((edit) => {
    const usual = columns[edit][0];
    let [inSheet, inColumn] = [0, 0];
    // Both keep what they worked out before: the sheet its cells, the pipeline the columns this input does not reach.
    const again = computing(CHIEF, columns, setting.weather);
    again();
    const [cells, pipeline] = byTurns(
      [
        {
          name: 'sheet',
          run: () => {
            sheet.set(edit, usual * (1 + (++inSheet % 50) / 100));
            return sheet.read('costOfHours', rows - 1);
          },
        },
        {
          name: 'pipeline',
          run: () => {
            columns[edit].fill(usual * (1 + (++inColumn % 50) / 100));
            return sumOf(again([edit]));
          },
        },
      ],
      rounds,
    );
    columns[edit].fill(usual);
    sheet.set(edit, usual);
    return { edit, sheetMs: cells.workMs, pipelineMs: pipeline.workMs };
  });
  return { cells: sheet.cells, edits };
}
