/**
 * What of the works stands already: entries of the notebook by line or group of the bill, and one share of all that no
 * entry names. Each line counts with what comes on top of it, the engineer and tax that is not reclaimed.
 */
import { BILL_GROUPS, type BillGroup, HAD_NAMES } from '../../notebook/billIds.ts';
import type { Made } from '../engine/walk.ts';
import { walk } from '../engine/walk.ts';
import { HAD_RESULTS, HADS, type HadResult } from '../money/owned.ts';
import { BILL_LINES, type BillColumn, isEngineered } from './billLines.ts';

const COUNTED = BILL_LINES.filter(({ onTop }) => !onTop);
const IN_GROUP: readonly number[] = COUNTED.map(({ id }) => {
  const group = (Object.keys(BILL_GROUPS) as BillGroup[]).find((name) =>
    (BILL_GROUPS[name] as readonly string[]).includes(id),
  );
  return group === undefined ? 0 : HAD_NAMES.indexOf(group) + 1;
});
const BY_NAME: readonly number[] = COUNTED.map(({ id }) => (HAD_NAMES as readonly string[]).indexOf(id) + 1);

/** Which entry a line falls under, by the entries' numbers: its own name before its group; −1 for none. */
function entryOf(line: number, codes: readonly number[]): number {
  const own = codes.indexOf(BY_NAME[line]);
  return own >= 0 ? own : codes.indexOf(IN_GROUP[line]);
}

const costsOf = (some: typeof COUNTED): readonly BillColumn[] => some.map(({ cost }) => cost);
const COSTS = costsOf(COUNTED);
const SHORT = costsOf(COUNTED.filter(({ shortLived }) => shortLived));
const OWN = costsOf(COUNTED.filter(({ own }) => own));
const BESIDE = [
  'capitalGiven', 'capitalLinesAll', 'capitalAllShortLived', 'capitalLinesOwn', 'engineerFraction', 'worksMaterialsVatRate',
  'worksServicesVatRate', 'worksMachineryVatRate', 'worksFuelVatRate', 'vatKeptWorks', 'alreadyHaveShare', 'had*Code', 'had*Share',
] as const; // biome-ignore format: one list
type Read = BillColumn | (typeof BESIDE)[number];
const READS: readonly Read[] = [...COSTS, ...BESIDE];
const ENTRIES: readonly Read[] = ['had*Code', 'had*Share', 'capitalLinesAll'];
const TAX: readonly Read[] = [
  'worksMaterialsVatRate', 'worksServicesVatRate', 'worksMachineryVatRate', 'worksFuelVatRate', 'vatKeptWorks',
]; // biome-ignore format: one list
const SHORT_TAX: readonly Read[] = ['worksMaterialsVatRate', 'worksMachineryVatRate', 'vatKeptWorks'];
const PART: readonly Read[] = [...COSTS, ...ENTRIES, ...TAX, 'engineerFraction', 'alreadyHaveShare'];
const OWN_PART: readonly Read[] = [...OWN, ...ENTRIES, 'capitalLinesOwn', 'alreadyHaveShare'];
const SHORT_PART: readonly Read[] = [
  ...SHORT, ...ENTRIES, ...SHORT_TAX, 'capitalGiven', 'capitalAllShortLived', 'alreadyHaveShare',
]; // biome-ignore format: one list

const FORM =
  'lines of the entry with what comes on top of them × the part that stands already; the same share of a given capital';
const made = Object.fromEntries(
  HADS.flatMap((had, k) => [
    [
      `${had}Capital`,
      {
        label: `entry ${k + 1} of what stands already, as new`,
        unit: 'money',
        formula: FORM,
        from: [...COSTS, ...ENTRIES, ...TAX, 'capitalGiven', 'engineerFraction'],
      },
    ],
    [
      `${had}ShortLived`,
      {
        label: `short-lived part of entry ${k + 1} of what stands already, as new`,
        unit: 'money',
        formula: `short-lived ${FORM}`,
        from: [...SHORT, ...ENTRIES, ...SHORT_TAX, 'capitalGiven'],
      },
    ],
  ]),
) as unknown as Record<HadResult, Made<never>>;

const RATE_OF = {
  materials: 'worksMaterialsVatRate',
  services: 'worksServicesVatRate',
  machinery: 'worksMachineryVatRate',
  fuel: 'worksFuelVatRate',
} as const;

/** Sums of one row, used again for every row. */
const worth = new Float64Array(HADS.length);
const short = new Float64Array(HADS.length);

export const standing = walk({
  name: 'works that stand already',
  about: 'What of the works stands already, by line and group of the bill',
  reads: READS,
  makes: {
    alreadyHavePart: {
      label: 'part of all works that stands already',
      unit: 'fraction',
      formula: 'worth of what stands already, as new ÷ worth of all works as new',
      from: PART,
    },
    capitalOwnedOwn: {
      label: 'own timber and hours of what stands already',
      unit: 'money',
      formula: 'lines of own timber and hours × the part that stands already',
      from: OWN_PART,
    },
    capitalOwnedShortLived: {
      label: 'short-lived works that stand already, as new',
      unit: 'money',
      formula: 'short-lived works times the part that stands already',
      from: SHORT_PART,
    },
    ...made,
  },
  run({ count, read: r, write: w }) {
    const [codes, shares] = [r['had*Code'], r['had*Share']];
    const [ownCodes, ownShares]: [number[], number[]] = [[], []];
    for (let i = 0; i < count; i++) {
      const rest = r.alreadyHaveShare[i];
      for (const name of HAD_RESULTS) w[name][i] = 0;
      let any = false;
      for (let k = 0; k < codes.length; k++) {
        ownCodes[k] = Math.round(codes[k][i]);
        ownShares[k] = shares[k][i];
        any ||= ownCodes[k] > 0;
      }
      const all = r.capitalLinesAll[i];
      if (!any || all === 0) {
        w.alreadyHavePart[i] = rest;
        w.capitalOwnedOwn[i] = r.capitalLinesOwn[i] * rest;
        w.capitalOwnedShortLived[i] = r.capitalAllShortLived[i] * rest;
        continue;
      }
      const given = r.capitalGiven[i];
      const scale = Number.isFinite(given) ? given / all : 1;
      worth.fill(0);
      short.fill(0);
      let [left, leftOwn, owned, ownedOwn] = [all, r.capitalLinesOwn[i], 0, 0];
      let leftShort = r.capitalAllShortLived[i];
      const kept = r.vatKeptWorks[i];
      const engineered = r.engineerFraction[i] * (1 + r.worksServicesVatRate[i] * kept);
      COUNTED.forEach((spec, line) => {
        const { cost, own, shortLived, taxed } = spec;
        const entry = entryOf(line, ownCodes);
        if (entry < 0) return;
        const price = r[cost][i];
        if (price === 0) return;
        const tax = 1 + r[RATE_OF[taxed ?? 'materials']][i] * kept;
        const full = own ? price : price * (tax + (isEngineered(spec) ? engineered : 0));
        left -= full;
        if (own) leftOwn -= price;
        if (shortLived) leftShort -= price * tax * scale;
        const share = ownShares[entry];
        worth[entry] += full * share;
        if (shortLived) short[entry] += price * tax * share;
        if (own) ownedOwn += price * share;
        owned += full * share;
      });
      w.alreadyHavePart[i] = (owned + left * rest) / all;
      w.capitalOwnedOwn[i] = ownedOwn + leftOwn * rest;
      let ownedShort = leftShort * rest;
      for (let k = 0; k < codes.length && k < HADS.length; k++) {
        w[`${HADS[k]}Capital`][i] = worth[k] * scale;
        w[`${HADS[k]}ShortLived`][i] = short[k] * scale;
        ownedShort += short[k] * scale;
      }
      w.capitalOwnedShortLived[i] = ownedShort;
    }
  },
});
