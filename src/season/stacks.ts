/** What bedding has to lie under a roof before the winter, and how much room and work it is. */

import type { ShedResult } from '../model/checks/check.ts';
import { say } from '../model/checks/say.ts';
import type { Coefficient } from '../tables/coefficient.ts';
import { dayAfter } from '../units/days.ts';

/** A row of the tables, or nothing where it is missing. */
export type RowOf = (id: string) => Coefficient | undefined;

export interface Stack {
  readonly material: string;
  readonly label: string;
  /** With the margin for a hard winter. */
  readonly tonnes: number;
  readonly missingTonnes: number;
  readonly looseM3: number | null;
  /** Round and big square bales; null for what does not come in bales. */
  readonly roundBales: number | null;
  readonly squareBales: number | null;
  readonly loads: number;
  /** Floor of the store, m². */
  readonly storeM2: number | null;
  /** Own hours to saw, chip, bale or haul it; null when not known. */
  readonly hours: number | null;
  /** Made on the farm; else bought. */
  readonly own: boolean;
  /** ISO day. */
  readonly by: string;
  readonly words: string;
}

/** A stack should stand a week before the first animal comes in. */
const DAYS_BEFORE = 7;

/** `barleyStraw` → `barley straw`. */
function materialLabel(material: string): string {
  return material.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** One stack for each material of the bedding mix; empty without a bed or a mix. */
export function stacksOf({ scenario, values }: ShedResult, row: RowOf): Stack[] {
  const total = values.beddingTonnes;
  if (total === null || total === undefined) return [];
  const margin = row('stackMarginFraction')?.central ?? 0;
  return scenario.bed.mix
    .filter((part) => part.share > 0)
    .map(({ material, share }) => {
      const own = scenario.farm.materials.filter((m) => m.material === material);
      const tonnes = total * share * (1 + margin);
      const kilos = tonnes * 1000;
      const onHand = own.reduce((sum, m) => sum + m.tonnes, 0);
      const loose = row(`materialLooseDensityKgPerM3.${material}`)?.central ?? null;
      const baled = (row(`materialBaledFraction.${material}`)?.central ?? 0) > 0;
      const bales = (id: string) => (baled && row(id) ? Math.ceil(kilos / (row(id)?.central ?? 1)) : null);
      const looseM3 = loose ? kilos / loose : null;
      const density = baled ? row('baleDensityKgPerM3')?.central : loose;
      const height = row(baled ? 'stackHeightM' : 'looseStackHeightM')?.central;
      const perTonne =
        own.find((m) => m.machineHoursPerTonne !== undefined)?.machineHoursPerTonne ??
        row(`materialHoursPerTonne.${material}`)?.central ??
        null;
      const stack = {
        material,
        label: materialLabel(material),
        tonnes,
        missingTonnes: Math.max(0, tonnes - onHand),
        looseM3,
        roundBales: bales('roundBaleKg'),
        squareBales: bales('squareBaleKg'),
        loads: Math.ceil(tonnes / (row('trailerLoadTonnes')?.central ?? tonnes)),
        storeM2: density && height ? kilos / density / height : null,
        hours: perTonne === null ? null : perTonne * tonnes,
        own: own.some((m) => m.own),
        by: dayAfter(scenario.farm.winter.start, -DAYS_BEFORE),
      };
      return { ...stack, words: wordsOf(stack, margin) };
    });
}

function wordsOf(stack: Omit<Stack, 'words'>, margin: number): string {
  const parts = [
    stack.looseM3 === null ? '' : `${say(stack.looseM3, 0)} m³ loose`,
    stack.roundBales === null ? '' : `${stack.roundBales} round or ${stack.squareBales} big square bales`,
    `${stack.loads} trailer loads`,
    stack.storeM2 === null ? '' : `${say(stack.storeM2, 0)} m² of dry floor`,
    stack.hours === null
      ? ''
      : `${say(stack.hours, 0)} own hours to ${stack.own ? 'make and bring' : 'unload and stack'}`,
  ];
  const spare = margin > 0 ? ` A margin of ${say(margin * 100, 0)} % for a hard winter is in it.` : '';
  return `${parts.filter((part) => part !== '').join(', ')}.${spare}`;
}
