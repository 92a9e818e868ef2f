/** The yearly cost of a way of wintering, line by line, in prices of the notebook's year. */

import { defineStage, type Quantity } from '../stage.ts';
import { annuityFactor, realRate, straightLineCost } from './presentValue.ts';

const money = (
  label: string,
  formula: string,
  from: readonly string[],
  route?: Quantity['route'],
): Quantity => ({
  label,
  unit: 'money',
  formula,
  from,
  ...(route ? { route } : {}),
});

// biome-ignore format: one list of names
const LINES = [
  'capitalCharge', 'repairsCost', 'insuranceCost', 'beddingCost', 'feedCost', 'feedWasteCost', 'machineryCost',
  'contractorCost', 'labourCost', 'grassLostCost', 'reseedCost', 'vetCost', 'hoofCost',
] as const;

const perHead = (label: string, what: string, formula: string, unit = 'money/head'): Quantity => ({
  label,
  unit,
  formula,
  from: [what, 'headCount'],
});

export const costsStage = defineStage({
  name: 'costs',
  about: 'Yearly cost by line; what the kept nutrients are worth taken off; per head, day and kilogram',
  // biome-ignore format: one list of names
  reads: [
    'winterDays', 'headCount', 'capitalCost', 'capitalShortLived', 'grantAmount', 'interestRate', 'inflation',
    'lifeYears', 'shortLifeYears', 'repairsBuildingFraction', 'repairsEquipmentFraction', 'insuranceFraction',
    'beddingTonnes', 'dryMatterOfferedKg', 'dryMatterWastedKg', 'tractorHours', 'tractorPricePerHour',
    'chippingHours', 'chippingPricePerHour', 'contractorSlurryHours', 'slurrySpreadPricePerHour',
    'contractorAgitatingHours', 'agitatePricePerHour', 'contractorSolidHours', 'solidSpreadPricePerHour',
    'labourHours', 'labourPricePerHour', 'grassLostTonnes', 'grassPricePerTonne', 'reseedHa',
    'reseedPricePerHa', 'vetPricePerHead', 'hoofPricePerHead', 'nutrientValue', 'nitrogenKeptKg',
  ],
  families: { feed: ['Share', 'DryMatterFraction', 'PricePerTonne'], material: ['Share', 'PricePerTonne'] },
  makes: {
    grantUsed: money('grant', 'the grant, as far as there is capital to pay with it', [
      'grantAmount',
      'capitalCost',
    ]),
    grantOverCost: money(
      'grant beyond the capital',
      'what is left of the grant when the capital is paid; look at it',
      ['grantAmount', 'capitalCost'],
    ),
    capitalCharge: {
      ...money(
        'capital charge',
        'capital less grant as an even yearly amount over the life of the works, short-lived works over theirs, at the interest rate above inflation',
        [
          'capitalCost',
          'capitalShortLived',
          'grantUsed',
          'interestRate',
          'inflation',
          'lifeYears',
          'shortLifeYears',
        ],
      ),
      source: ['financeText'],
    },
    capitalChargeStraight: {
      ...money(
        'capital charge the older way',
        'even depreciation and interest on half the capital less grant; a second method beside the first, not added to it',
        ['capitalCost', 'capitalShortLived', 'grantUsed', 'interestRate', 'lifeYears', 'shortLifeYears'],
      ),
      source: ['ugaCosts'],
    },
    repairsCost: money('repairs', 'shares of the price of long-lived and short-lived works', [
      'capitalCost',
      'capitalShortLived',
      'repairsBuildingFraction',
      'repairsEquipmentFraction',
    ]),
    insuranceCost: money('insurance', 'share of the price of the works', [
      'capitalCost',
      'insuranceFraction',
    ]),
    beddingCost: money(
      'bedding',
      'tonnes of each material times its price; own material without a price costs only hours',
      ['beddingTonnes', 'material*Share', 'material*PricePerTonne'],
      'pack',
    ),
    feedCost: money('feed eaten', 'feed put out at its price, for the share that is eaten', [
      'dryMatterOfferedKg',
      'dryMatterWastedKg',
      'feed*Share',
      'feed*DryMatterFraction',
      'feed*PricePerTonne',
    ]),
    feedWasteCost: money('feed wasted', 'feed put out at its price, for the share that is wasted', [
      'dryMatterOfferedKg',
      'dryMatterWastedKg',
      'feed*Share',
      'feed*DryMatterFraction',
      'feed*PricePerTonne',
    ]),
    machineryCost: money('own machines', 'tractor hours and chipping hours at their running prices', [
      'tractorHours',
      'tractorPricePerHour',
      'chippingHours',
      'chippingPricePerHour',
    ]),
    contractorCost: money('contractor', "contractor's hours at their prices, driver included", [
      'contractorSlurryHours',
      'slurrySpreadPricePerHour',
      'contractorAgitatingHours',
      'agitatePricePerHour',
      'contractorSolidHours',
      'solidSpreadPricePerHour',
    ]),
    labourCost: money('own labour', "keeper's hours at what the keeper says an hour is worth", [
      'labourHours',
      'labourPricePerHour',
    ]),
    grassLostCost: money(
      'grass lost to treading',
      'grass lost times what a tonne of its dry matter is worth',
      ['grassLostTonnes', 'grassPricePerTonne'],
      'paddock',
    ),
    reseedCost: money(
      'reseeding',
      'area reseeded times its price',
      ['reseedHa', 'reseedPricePerHa'],
      'paddock',
    ),
    vetCost: money('vet and losses, allowance', 'allowance a head for how the animals are sheltered', [
      'headCount',
      'vetPricePerHead',
    ]),
    hoofCost: money('hoof care, allowance', 'allowance a head for what the animals stand on', [
      'headCount',
      'hoofPricePerHead',
    ]),
    annualCost: money('yearly cost', 'sum of all lines', LINES),
    operatingCost: money('yearly running cost', 'yearly cost without the capital charge', [
      'annualCost',
      'capitalCharge',
    ]),
    operatingCashCost: money(
      'yearly running cost in cash',
      'running cost without own labour and without grass lost',
      ['operatingCost', 'labourCost', 'grassLostCost'],
    ),
    netCost: money(
      'yearly cost less value kept',
      'yearly cost less the value of the nutrients the first crop can use',
      ['annualCost', 'nutrientValue'],
    ),
    annualCostPerHead: perHead('yearly cost a head', 'annualCost', 'yearly cost over head; 0 for no animals'),
    netCostPerHead: perHead('net cost a head', 'netCost', 'net cost over head; 0 for no animals'),
    netCostPerHeadDay: {
      label: 'net cost a head and winter day',
      unit: 'money/head/d',
      formula: 'net cost over head and days; 0 for no animals',
      from: ['netCost', 'headCount', 'winterDays'],
    },
    costPerNitrogenKeptKg: {
      label: 'yearly cost a kilogram of nitrogen kept',
      unit: 'money/kg',
      formula: 'yearly cost over nitrogen kept; absent when nothing is kept',
      from: ['annualCost', 'nitrogenKeptKg'],
    },
  },
  run({ count, read: r, family: { feed, material }, write: w }) {
    for (let i = 0; i < count; i++) {
      const head = r.headCount[i];
      const days = r.winterDays[i];
      const capital = r.capitalCost[i];
      const shortLived = r.capitalShortLived[i];
      const granted = Math.min(r.grantAmount[i], capital);
      const paidShare = capital > 0 ? 1 - granted / capital : capital === 0 ? 0 : Number.NaN;
      const rate = realRate(r.interestRate[i], r.inflation[i]);
      const long = (capital - shortLived) * paidShare;
      const short = shortLived * paidShare;
      w.grantUsed[i] = granted;
      w.grantOverCost[i] = r.grantAmount[i] - granted;
      w.capitalCharge[i] = yearly(long, rate, r.lifeYears[i]) + yearly(short, rate, r.shortLifeYears[i]);
      w.capitalChargeStraight[i] =
        straightLineCost(long, r.interestRate[i], r.lifeYears[i], 0) +
        straightLineCost(short, r.interestRate[i], r.shortLifeYears[i], 0);
      w.repairsCost[i] =
        (capital - shortLived) * r.repairsBuildingFraction[i] + shortLived * r.repairsEquipmentFraction[i];
      w.insuranceCost[i] = capital * r.insuranceFraction[i];

      let bedding = 0;
      for (let k = 0; k < material.length; k++)
        bedding += times(r.beddingTonnes[i] * material[k].Share[i], material[k].PricePerTonne[i]);
      w.beddingCost[i] = bedding;

      let feeding = 0;
      for (let k = 0; k < feed.length; k++) {
        const offered = r.dryMatterOfferedKg[i] * feed[k].Share[i];
        if (offered !== 0)
          feeding += times(offered / feed[k].DryMatterFraction[i] / 1000, feed[k].PricePerTonne[i]);
      }
      const wastedShare = r.dryMatterOfferedKg[i] > 0 ? r.dryMatterWastedKg[i] / r.dryMatterOfferedKg[i] : 0;
      w.feedCost[i] = feeding * (1 - wastedShare);
      w.feedWasteCost[i] = feeding * wastedShare;

      w.machineryCost[i] =
        times(r.tractorHours[i], r.tractorPricePerHour[i]) +
        times(r.chippingHours[i], r.chippingPricePerHour[i]);
      w.contractorCost[i] =
        times(r.contractorSlurryHours[i], r.slurrySpreadPricePerHour[i]) +
        times(r.contractorAgitatingHours[i], r.agitatePricePerHour[i]) +
        times(r.contractorSolidHours[i], r.solidSpreadPricePerHour[i]);
      w.labourCost[i] = times(r.labourHours[i], r.labourPricePerHour[i]);
      w.grassLostCost[i] = times(r.grassLostTonnes[i], r.grassPricePerTonne[i]);
      w.reseedCost[i] = times(r.reseedHa[i], r.reseedPricePerHa[i]);
      w.vetCost[i] = times(head, r.vetPricePerHead[i]);
      w.hoofCost[i] = times(head, r.hoofPricePerHead[i]);

      let annual = 0;
      for (let k = 0; k < LINES.length; k++) annual += w[LINES[k]][i];
      const net = annual - r.nutrientValue[i];
      w.annualCost[i] = annual;
      w.operatingCost[i] = annual - w.capitalCharge[i];
      w.operatingCashCost[i] = w.operatingCost[i] - w.labourCost[i] - w.grassLostCost[i];
      w.netCost[i] = net;
      w.annualCostPerHead[i] = head > 0 ? annual / head : 0;
      w.netCostPerHead[i] = head > 0 ? net / head : 0;
      w.netCostPerHeadDay[i] = head > 0 && days > 0 ? net / (head * days) : 0;
      w.costPerNitrogenKeptKg[i] = r.nitrogenKeptKg[i] > 0 ? annual / r.nitrogenKeptKg[i] : Number.NaN;
    }
  },
});

/** Nothing used costs nothing; a price that is missing or below 0 is no price and leaves the line undefined. */
function times(quantity: number, price: number): number {
  return quantity === 0 ? 0 : price >= 0 ? quantity * price : Number.NaN;
}

/** An even yearly amount; nothing to pay back costs nothing whatever the life. */
function yearly(amount: number, rate: number, years: number): number {
  return amount === 0 ? 0 : amount / annuityFactor(rate, years);
}
