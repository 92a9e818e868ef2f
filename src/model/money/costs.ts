/** The yearly cost of a way of wintering, line by line, in prices of the notebook's year; nutrients kept taken off. */

import { quantity } from '../engine/quantity.ts';
import { capitalFlows } from './capitalFlows.ts';
import { horizonOf } from './cashTerms.ts';
import { HAD_RESULTS, hadAt, ownedOf } from './owned.ts';
import {
  annuityPayment,
  levelisedCost,
  netPresentValue,
  realRate,
  straightLineCost,
} from './presentValue.ts';

const money = (label: string, formula: string, when?: string) =>
  quantity(label, 'money', formula, when === undefined ? {} : { when });

/** Nothing used costs nothing; a price that is missing or below 0 is no price and leaves the line undefined. */
function times(amount: number, price: number): number {
  return amount === 0 ? 0 : price >= 0 ? amount * price : Number.NaN;
}

const priced = (label: string, formula: string, used: string, price: string, when?: string) =>
  money(label, formula, when).whole([used, price], (count, out, amount, each) => {
    for (let i = 0; i < count; i++) out[i] = times(amount[i], each[i]);
  });

/** Share of the capital that no grant pays. */
function paidShare(capital: number, granted: number): number {
  return capital > 0 ? 1 - granted / capital : capital === 0 ? 0 : Number.NaN;
}

/** An even yearly amount; nothing to pay back costs nothing whatever the life. */
function yearly(amount: number, rate: number, years: number): number {
  return amount === 0 ? 0 : annuityPayment(amount, rate, years);
}

const wastedShare = (wasted: number, offered: number) => (offered > 0 ? wasted / offered : 0);

const works = {
  grantUsed: money('grant', 'the grant, as far as there is capital to pay with it').of(
    ['grantAmount', 'capitalCost'],
    (i, grant, capital) => Math.min(grant[i], capital[i]),
  ),
  grantOverCost: money(
    'grant beyond the capital',
    'what is left of the grant when the capital is paid; look at it',
  ).minus('grantAmount', ['grantUsed']),
  ownedCharge: quantity(
    'buying again what stands already',
    'money',
    'purchases of the years counted, when each part is worn out, as an even yearly amount at the interest rate above inflation',
    { source: ['financeText'] },
  ).of(
    [
      'capitalOwned', 'capitalOwnedShortLived', 'alreadyHaveYears', 'interestRate', 'inflation', 'lifeYears', 'shortLifeYears',
      'had*AgeYears', 'had*LeftYears', ...HAD_RESULTS,
    ], // biome-ignore format: one list
    (i, owned, short, age, interest, inflation, life, shortLife, ages, left, ...worth) => {
      if (owned[i] === 0) return 0;
      const rate = realRate(interest[i], inflation[i]);
      const horizon = horizonOf({ lifeYears: life[i] });
      if (!(horizon >= 1)) return Number.NaN;
      const flows = capitalFlows({
        capital: 0,
        shortLived: 0,
        owned: ownedOf({
          capitalOwned: owned[i],
          capitalOwnedShortLived: short[i],
          alreadyHaveYears: age[i],
          ...(ages.length > 0 && hadAt(i, ages, left, worth)),
        }),
        lifeYears: horizon,
        shortLifeYears: shortLife[i],
        inflation: 0,
        horizon,
      });
      return levelisedCost(-netPresentValue(rate, flows), rate, horizon);
    },
  ),
  capitalCharge: quantity(
    'capital charge',
    'money',
    'capital less grant as an even yearly amount over the years counted, short-lived works over theirs, at the interest rate above inflation; and buying again what stands already',
    { source: ['financeText'] },
  ).of(
    [
      'capitalCost', 'capitalShortLived', 'grantUsed', 'ownedCharge', 'interestRate', 'inflation', 'lifeYears', 'shortLifeYears',
    ], // biome-ignore format: one list
    (i, capital, short, granted, owned, interest, inflation, life, shortLife) => {
      const share = paidShare(capital[i], granted[i]);
      const rate = realRate(interest[i], inflation[i]);
      return (
        yearly((capital[i] - short[i]) * share, rate, life[i]) +
        yearly(short[i] * share, rate, shortLife[i]) +
        owned[i]
      );
    },
  ),
  capitalChargeStraight: quantity(
    'capital charge the older way',
    'money',
    'even depreciation and interest on half the capital less grant, without what stands already; a second method beside the first, not added to it',
    { source: ['ugaCosts'] },
  ).of(
    ['capitalCost', 'capitalShortLived', 'grantUsed', 'interestRate', 'lifeYears', 'shortLifeYears'],
    (i, capital, short, granted, interest, life, shortLife) => {
      const share = paidShare(capital[i], granted[i]);
      return (
        straightLineCost((capital[i] - short[i]) * share, interest[i], life[i], 0) +
        straightLineCost(short[i] * share, interest[i], shortLife[i], 0)
      );
    },
  ),
  repairsCost: money(
    'repairs',
    'shares of the price of long-lived and short-lived works, those that stand already too',
  ).of(
    [
      'capitalCost', 'capitalShortLived', 'capitalOwned', 'capitalOwnedShortLived', 'repairsBuildingFraction',
      'repairsEquipmentFraction',
    ], // biome-ignore format: one list
    (i, capital, short, owned, ownedShort, building, equipment) =>
      (capital[i] - short[i] + (owned[i] - ownedShort[i])) * building[i] +
      (short[i] + ownedShort[i]) * equipment[i],
  ),
  insuranceCost: money('insurance', 'share of the price of the works, those that stand already too').of(
    ['capitalCost', 'capitalOwned', 'insuranceFraction'],
    (i, capital, owned, share) => (capital[i] + owned[i]) * share[i],
  ),
};

const running = {
  beddingCost: money(
    'bedding',
    'tonnes of each material, strewn or mixed into the heap, times its price; own material without a price costs only hours',
    'packShare',
  ).of(
    [
      'beddingTonnes', 'material*Share', 'material*PricePerTonne', 'heapAddedKg', 'amendment*Tonnes', 'amendment*PricePerTonne',
    ], // biome-ignore format: one list
    (i, tonnes, share, price, added, mixed, mixedPrice) => {
      let sum = 0;
      for (let k = 0; k < share.length; k++) sum += times(tonnes[i] * share[k][i], price[k][i]);
      if (added[i] > 0) for (let k = 0; k < mixed.length; k++) sum += times(mixed[k][i], mixedPrice[k][i]);
      return sum;
    },
  ),
  feedPutOutCost: money('feed put out', 'dry matter put out of each feed at its price, eaten or not').of(
    ['dryMatterOfferedKg', 'feed*Share', 'feed*DryMatterFraction', 'feed*PricePerTonne'],
    (i, offered, share, dryMatter, price) => {
      let sum = 0;
      for (let k = 0; k < share.length; k++) {
        const part = offered[i] * share[k][i];
        if (part !== 0) sum += times(part / dryMatter[k][i] / 1000, price[k][i]);
      }
      return sum;
    },
  ),
  feedCost: money('feed eaten', 'feed put out at its price, for the share that is eaten').of(
    ['feedPutOutCost', 'dryMatterWastedKg', 'dryMatterOfferedKg'],
    (i, all, wasted, offered) => all[i] * (1 - wastedShare(wasted[i], offered[i])),
  ),
  feedWasteCost: money('feed wasted', 'feed put out at its price, for the share that is wasted').of(
    ['feedPutOutCost', 'dryMatterWastedKg', 'dryMatterOfferedKg'],
    (i, all, wasted, offered) => all[i] * wastedShare(wasted[i], offered[i]),
  ),
  machineryCost: money('own machines', 'tractor hours and chipping hours at their running prices').of(
    ['tractorHours', 'tractorPricePerHour', 'chippingHours', 'chippingPricePerHour'],
    (i, tractor, perTractorHour, chipping, perChippingHour) =>
      times(tractor[i], perTractorHour[i]) + times(chipping[i], perChippingHour[i]),
  ),
  contractorCost: money('contractor', "contractor's hours at their prices, driver included").of(
    [
      'contractorSlurryHours', 'slurrySpreadPricePerHour', 'contractorAgitatingHours', 'agitatePricePerHour',
      'contractorSolidHours', 'solidSpreadPricePerHour',
    ], // biome-ignore format: one list
    (i, slurry, perSlurryHour, stirring, perStirringHour, solid, perSolidHour) =>
      times(slurry[i], perSlurryHour[i]) +
      times(stirring[i], perStirringHour[i]) +
      times(solid[i], perSolidHour[i]),
  ),
  labourCost: priced(
    'own labour',
    "keeper's hours at what the keeper says an hour is worth",
    'labourHours',
    'labourPricePerHour',
  ),
  grassLostCost: priced(
    'grass lost',
    'grass lost times what a tonne of its dry matter is worth',
    'grassLostTonnes',
    'grassPricePerTonne',
    'paddockShare',
  ),
  reseedCost: priced(
    'reseeding',
    'area reseeded times its price',
    'reseedHa',
    'reseedPricePerHa',
    'paddockShare',
  ),
  vetCost: priced(
    'vet and losses, allowance',
    'allowance a head for how the animals are sheltered',
    'headCount',
    'vetPricePerHead',
  ),
  hoofCost: priced(
    'hoof care, allowance',
    'allowance a head for what the animals stand on',
    'headCount',
    'hoofPricePerHead',
  ),
  vatCost: money(
    'value added tax not reclaimed',
    'on what is bought for the winter, each by its kind: bedding and feed; own machines as fuel; contractor, reseeding, vet and hooves as services; repairs as materials; none where the farm reclaims it',
  ).of(
    [
      'beddingCost', 'feedCost', 'feedWasteCost', 'machineryCost', 'contractorCost', 'repairsCost', 'reseedCost', 'vetCost',
      'hoofCost', 'winterFeedVatRate', 'winterFuelVatRate', 'winterServicesVatRate', 'winterMaterialsVatRate', 'vatKeptWinter',
    ], // biome-ignore format: one list
    (
      i,
      bedding,
      feed,
      waste,
      machines,
      contractor,
      repairs,
      reseeding,
      vet,
      hoof,
      onFeed,
      onFuel,
      onServices,
      onMaterials,
      kept,
    ) =>
      kept[i] === 0
        ? 0
        : kept[i] *
          ((bedding[i] + feed[i] + waste[i]) * onFeed[i] +
            machines[i] * onFuel[i] +
            (contractor[i] + reseeding[i] + vet[i] + hoof[i]) * onServices[i] +
            repairs[i] * onMaterials[i]),
  ),
};

const gains = {
  gainsPerYear: money(
    'gains the keeper names',
    'sum of what the keeper expects a year beyond the model; none unless the notebook names them',
  ).of(['gain*Amount'], (i, amount) => {
    let sum = 0;
    for (let k = 0; k < amount.length; k++) sum += amount[k][i];
    return sum;
  }),
  gainsInCash: money('gains in cash', 'those of them that come as money to the bank').of(
    ['gain*Amount', 'gain*Paid'],
    (i, amount, paid) => {
      let sum = 0;
      for (let k = 0; k < amount.length; k++) sum += amount[k][i] * paid[k][i];
      return sum;
    },
  ),
};

const totals = {
  annualCost: money('yearly cost', 'sum of all lines').sum([
    'capitalCharge', 'repairsCost', 'insuranceCost', 'beddingCost', 'feedCost', 'feedWasteCost', 'machineryCost',
    'contractorCost', 'labourCost', 'grassLostCost', 'reseedCost', 'vetCost', 'hoofCost', 'vatCost',
  ]), // biome-ignore format: one list
  operatingCost: money('yearly running cost', 'yearly cost without the capital charge').minus('annualCost', [
    'capitalCharge',
  ]),
  operatingCashCost: money(
    'yearly running cost in cash',
    'running cost without own labour and without grass lost',
  ).minus('operatingCost', ['labourCost', 'grassLostCost']),
  netCost: money(
    'yearly cost less value kept',
    'yearly cost less the value of the nutrients the first crop can use, and less the gains the keeper names',
  ).minus('annualCost', ['nutrientValue', 'gainsPerYear']),
  annualCostPerHead: quantity(
    'yearly cost a head',
    'money/head',
    'yearly cost over head; 0 for no animals',
  ).ratio('annualCost', 'headCount'),
  netCostPerHead: quantity('net cost a head', 'money/head', 'net cost over head; 0 for no animals').ratio(
    'netCost',
    'headCount',
  ),
  netCostPerHeadDay: quantity(
    'net cost a head and winter day',
    'money/head/d',
    'net cost over head and days; 0 for no animals',
  ).of(['netCost', 'headCount', 'winterDays'], (i, net, head, days) =>
    head[i] > 0 && days[i] > 0 ? net[i] / (head[i] * days[i]) : 0,
  ),
  costPerNitrogenKeptKg: quantity(
    'yearly cost a kilogram of nitrogen kept',
    'money/kg',
    'yearly cost over nitrogen kept; absent when nothing is kept',
  ).of(['annualCost', 'nitrogenKeptKg'], (i, cost, kept) => (kept[i] > 0 ? cost[i] / kept[i] : Number.NaN)),
};

export const costs = [works, running, gains, totals] as const;
