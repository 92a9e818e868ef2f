/**
 * Part of the model as a spreadsheet, for the bench: the daily water balance and its weeks (one weather for all
 * rows), herd, intake, excretion, bedding, placement, volume of slurry and the cost of labour.
 * Cold, wet coat, mud and the rate of bedding are given. Left out: nitrogen of house, store and spreading, paddock, bed
 * and its pushing out, heap, soil, value, bill, the other costs and finance. What the left-out
 * parts would give is not in the sheet, so its time is a lower bound beside the whole pipeline.
 */
import { HyperFormula, type SimpleCellAddress } from 'hyperformula';
import { gestationMj } from '../../src/model/herd/energy.ts';
import { WEEKS, winterDaysInWeek } from '../../src/model/series.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import type { Columns } from './rows.ts';

/** Inputs that stand in one cell for all rows. */
export const SHARED = ['rainFactor', 'herdFactor', 'labourPricePerHour'] as const;

export interface Sheet {
  readonly cells: number;
  readonly set: (shared: (typeof SHARED)[number], value: number) => void;
  readonly read: (name: string, row: number) => number;
}

type Cell = string | number;

const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));

/** Columns of one sheet under names; `[name]` in a formula is this line, `<name>` the line above. */
function grid(sheet: string) {
  const at = new Map<string, number>();
  const cell = (name: string, line: number) => {
    const column = at.get(name);
    if (column === undefined) throw new Error(`the sheet ${sheet} has no ${name}`);
    return `${sheet}!$${letters(column)}$${line + 1}`;
  };
  const fill = (formula: string, line: number) =>
    formula.replace(/\[(\w+)\]/g, (_, n) => cell(n, line)).replace(/<(\w+)>/g, (_, n) => cell(n, line - 1));
  return { at, cell, fill };
}

/** The sum over the two groups, feeds or materials there are. */
const both = (of: (item: number) => string) => `(${of(1)}+${of(2)})`;

/** Builds the sheet from the rows' columns; two groups, feeds and materials, and weather columns alike in all rows. */
export function buildSheet(columns: Columns, rows: number, weather: PreparedWeather): Sheet {
  const value = (name: string, row: number) => columns[name]?.[row] || 0;
  const shared: Cell[][] = SHARED.map((name) => [value(name, 0)]);
  const share = (name: (typeof SHARED)[number]) => `shared!$A$${SHARED.indexOf(name) + 1}`;

  // The water balance, a line a day; the line above the first holds the start.
  const of = (name: string) => value(name, 0);
  const capacity = of('fieldCapacityM3PerM3') * of('rootDepthMm');
  const most = capacity - Math.min(capacity, of('wiltingPointM3PerM3') * of('rootDepthMm'));
  const retention = (curve: string) => Math.max(0, 25_400 / of(curve) - 254);
  const firstWeekC = weather.temperatureC.subarray(0, 7).reduce((sum, t) => sum + t, 0) / 7;
  const days = grid('days');
  const daily: Record<string, string> = {
    fall: `[rain]*${share('rainFactor')}`,
    flakes: `IF([warmth]<=${of('snowThresholdC')},[fall],0)`,
    melt: `IF(AND([warmth]>${of('meltThresholdC')},<snow>+[flakes]>0),MIN(${of('meltFactorMmPerCDay')}*([warmth]-${of('meltThresholdC')}),<snow>+[flakes]),0)`,
    snow: '<snow>+[flakes]-[melt]',
    ground: `<ground>+${of('groundResponsePerDay')}*([warmth]-<ground>)`,
    frozen: `IF([ground]<${of('frozenGroundBelowC')},1,0)`,
    water: '[fall]-[flakes]+[melt]',
    holds: `IF([frozen]=1,${retention('curveNumberFrozen')},${retention('curveNumber')})`,
    away: 'IF([water]>0.2*[holds],([water]-0.2*[holds])^2/([water]+0.8*[holds]),0)',
    demand: `${of('hargreavesFactor') * of('grassCropFactor')}*[term]*IF([snow]>0,${of('snowEvaporationFraction')},1)`,
    use: `MIN(<soil>,[demand]*MIN(1,<soil>/${(1 - of('readilyAvailableFraction')) * most}))`,
    over: `<soil>+[water]-[away]-[use]-${most}`,
    drain: `IF([over]>0,${Math.min(1, of('drainageRatePerDay'))}*[over],0)`,
    soil: `[over]+${most}-[drain]`,
    wet: `IF(AND([frozen]=0,[over]>0,[over]>=${of('wetMarginMm')},[snow]<=${of('snowPoachingLimitMm')}),1,0)`,
  };
  for (const name of ['rain', 'warmth', 'term', ...Object.keys(daily)]) days.at.set(name, days.at.size);
  const start: Record<string, number> = { ground: firstWeekC, soil: of('startSoilWaterFraction') * most };
  const dayLines: Cell[][] = [[...days.at.keys()].map((name) => start[name] ?? 0)];
  for (let d = 0; d < weather.days; d++)
    dayLines.push([
      weather.rainMm[d], weather.temperatureC[d], weather.hargreavesTermMm[d],
      ...Object.values(daily).map((formula) => `=${days.fill(formula, d + 1)}`),
    ]); // biome-ignore format: one list

  const winterDays = of('winterDays');
  const weeks = Math.ceil(winterDays / 7);
  const overWinter = (name: string) =>
    `SUM(${days.cell(name, 1)}:${days.cell(name, winterDays).split('!')[1]})`;
  const week = grid('weeks');
  for (const name of ['inWeek', 'warmth', 'drainage', 'runoff']) week.at.set(name, week.at.size);
  const weekLines = Array.from({ length: WEEKS }, (_, w): Cell[] => {
    const [first, last] = [7 * w + 1, Math.min(weather.days, 7 * w + 7)];
    const range = (name: string) => `${days.cell(name, first)}:${days.cell(name, last).split('!')[1]}`;
    return [
      winterDaysInWeek(w, winterDays),
      `=AVERAGE(${range('warmth')})`,
      `=SUM(${range('drain')})`,
      `=SUM(${range('away')})`,
    ];
  });
  const ofWeeks = (name: string) => `${week.cell(name, 0)}:${week.cell(name, weeks - 1).split('!')[1]}`;

  const line = grid('rows');
  const made: Record<string, string> = {
    ...herd(share('herdFactor')),
    ...intakeAndExcretion(share('herdFactor'), (g) => value(`group${g}CalvingDay`, 0) || winterDays),
    ...bedding(),
    warmth: `SUMPRODUCT(EXP([ammoniaSlopePerC]*(${ofWeeks('warmth')}-[ammoniaReferenceC]))*${ofWeeks('inWeek')})/[winterDays]`,
    ...placement(),
    rainMm: overWinter('fall'),
    wetDays: overWinter('wet'),
    frozenDays: overWinter('frozen'),
    drainageWinterMm: overWinter('drain'),
    winterTemperatureC: overWinter('warmth').replace('SUM', 'AVERAGE'),
    ...slurry(share('herdFactor')),
  };
  const reads = new Set<string>();
  const last = { ...spreadAndLabour(share('labourPricePerHour')) };
  for (const formula of [...Object.values(made), ...Object.values(last)])
    for (const [, name] of formula.matchAll(/\[(\w+)\]/g)) reads.add(name);
  const givenNames = [...reads].filter((n) => !(n in made) && !(n in last));
  for (const name of [...givenNames, ...Object.keys(made), ...Object.keys(last)])
    line.at.set(name, line.at.size);
  const missing = givenNames.filter((name) => !columns[name]);
  if (missing.length > 0) throw new Error(`no column for ${missing.join(', ')}`);

  const rowLines: Cell[][] = [];
  for (let row = 0; row < rows; row++) {
    const here = (formula: string) => `=${line.fill(formula, row)}`;
    rowLines.push([
      ...givenNames.map((name) => value(name, row)),
      ...Object.values(made).map(here),
      ...Object.values(last).map(here),
    ]);
  }
  const engine = HyperFormula.buildFromSheets(
    { shared, days: dayLines, weeks: weekLines, rows: rowLines },
    { licenseKey: 'gpl-v3', useArrayArithmetic: true, precisionRounding: 14, maxRows: 100_000 },
  );
  const formulas = [dayLines, weekLines, rowLines].flat(2).filter((c) => typeof c === 'string').length;
  const rowSheet = engine.getSheetId('rows') as number;
  const sharedSheet = engine.getSheetId('shared') as number;
  const address = (sheet: number, col: number, row: number): SimpleCellAddress => ({ sheet, col, row });
  return {
    cells: formulas,
    set: (name, next) => {
      engine.setCellContents(address(sharedSheet, 0, SHARED.indexOf(name)), next);
    },
    read: (name, row) => {
      const got = engine.getCellValue(address(rowSheet, line.at.get(name) ?? -1, row));
      if (typeof got !== 'number') throw new Error(`${name} in row ${row}: ${JSON.stringify(got)}`);
      return got;
    },
  };
}

function herd(factor: string): Record<string, string> {
  const head = (g: number) => `[group${g}HeadCount]*${factor}`;
  const gain = (g: number) => `[group${g}GainKgPerDay]*[winterDays]`;
  return {
    headCount: both(head),
    liveWeightKg: both((g) => `${head(g)}*([group${g}WeightKg]+${gain(g)}/2)`),
    livestockUnits: both((g) => `${head(g)}*[group${g}LivestockUnits]`),
    gainKg: both((g) => `${head(g)}*${gain(g)}`),
  };
}

/** Need, appetite and feed eaten, group by group; `born` is the energy of a calf for each kg of it. */
function feeding(head: (g: number) => string, born: (g: number) => number): Record<string, string> {
  const out: Record<string, string> = {
    rem: '1.123-0.4092*[digestibility]+0.1126*[digestibility]^2-0.254/[digestibility]',
    reg: 'MAX(1.164-0.516*[digestibility]+0.1308*[digestibility]^2-0.374/[digestibility],[rem]/4)',
  };
  for (const g of [1, 2]) {
    const of = (field: string) => `[group${g}${field}]`;
    out[`weight${g}`] = `MAX(0,${of('WeightKg')}+${of('GainKgPerDay')}*[winterDays]/2)`;
    out[`metabolic${g}`] = `[weight${g}]^0.75`;
    out[`perKg${g}`] =
      `IF(${of('MilkKgPerDay')}>0,[lactatingMaintenanceMjPerKg],${of('MaintenanceMjPerKg')})`;
    out[`rest${g}`] = `([perKg${g}]+[coldMaintenanceMjPerKg])*[metabolic${g}]`;
    out[`calf${g}`] =
      `(1-[pregnancyEnergyForm])*[pregnancyEnergyFraction]*[rest${g}]+[pregnancyEnergyForm]*[calfBirthWeightKg]*${born(g)}`;
    out[`upkeep${g}`] =
      `[rest${g}]*(1+[activityPastureFraction]*[paddockShare])+[perKg${g}]*[metabolic${g}]*([coldNeedFraction]+[mudShare]*[mudNeedFraction])+${of('PregnantShare')}*[calf${g}]+${of('MilkKgPerDay')}*(1.47+0.4*[milkFatPercent])`;
    out[`growth${g}`] =
      `IF(${of('GainKgPerDay')}>0,22.02*([weight${g}]/(${of('GrowthSexFactor')}*${of('MatureWeightKg')}))^0.75*${of('GainKgPerDay')}^1.097,0)`;
    out[`need${g}`] = `([upkeep${g}]/[rem]+[growth${g}]/[reg])/[digestibility]/18.45`;
    out[`most${g}`] =
      `${of('IntakeFraction')}*[weight${g}]*[appetiteFactor]+[intakePerMilkKg]*${of('MilkKgPerDay')}`;
    out[`taken${g}`] =
      `(1-${of('AppetiteShare')})*MIN([need${g}],[most${g}])+${of('AppetiteShare')}*[most${g}]`;
  }
  out.dryMatterEatenKg = `${both((g) => `${head(g)}*[taken${g}]`)}*[winterDays]`;
  return out;
}

function intakeAndExcretion(factor: string, calving: (group: number) => number): Record<string, string> {
  const head = (g: number) => `[group${g}HeadCount]*${factor}`;
  const born = (g: number) => gestationMj(1, calving(g), calving(g));
  const ofFeeds = (field: string) => both((f) => `[feed${f}Share]*[feed${f}${field}]`);
  const left = (eaten: string, gain: string, milk: string, calf: string) =>
    `${eaten}-MIN([gainKg]*${gain}+[milkOutKg]*${milk}+[grownCalves]*${calf},${eaten}*[retentionLimitFraction])`;
  return {
    protein: ofFeeds('CrudeProteinFraction'),
    phosphorusOfDiet: ofFeeds('PhosphorusFraction'),
    potassiumOfDiet: ofFeeds('PotassiumFraction'),
    digestibility: ofFeeds('DigestibilityFraction'),
    carbonOfDiet: ofFeeds('CarbonFraction'),
    fresh: both((f) => `IF([feed${f}Share]>0,[feed${f}Share]/[feed${f}DryMatterFraction],0)`),
    ...feeding(head, born),
    dryMatterOfferedKg: '[dryMatterEatenKg]/(1-MIN([feedWasteFraction],0.99))',
    dryMatterWastedKg: '[dryMatterOfferedKg]-[dryMatterEatenKg]',
    feedTonnes: '[dryMatterOfferedKg]*[fresh]/1000',
    nitrogenEatenKg: '[dryMatterEatenKg]*[protein]/6.25',
    phosphorusEatenKg: '[dryMatterEatenKg]*[phosphorusOfDiet]',
    potassiumEatenKg: '[dryMatterEatenKg]*[potassiumOfDiet]',
    nitrogenWastedKg: '[dryMatterWastedKg]*[protein]/6.25',
    carbonWastedKg: '[dryMatterWastedKg]*[carbonOfDiet]',
    waterWastedKg: '[dryMatterWastedKg]*MAX(0,[fresh]-1)',
    milkOutKg: `MAX(0,${both((g) => `${head(g)}*[winterDays]*[group${g}MilkKgPerDay]`)}-${both((g) => `${head(g)}*[winterDays]*[group${g}MilkDrunkKgPerDay]`)})`,
    grownCalves: `IF([conceptusGrowthDays]>0,${both((g) => `${head(g)}*[group${g}PregnantShare]`)}*MIN(1,[winterDays]/[conceptusGrowthDays]),0)`,
    nitrogenExcretedKg: left('[nitrogenEatenKg]', '[gainNitrogenKgPerKg]', '[milkNitrogenKgPerKg]', '[calfNitrogenKg]'),
    phosphorusExcretedKg: left('[phosphorusEatenKg]', '[gainPhosphorusKgPerKg]', '[milkPhosphorusKgPerKg]', '[calfPhosphorusKg]'),
    potassiumExcretedKg: left('[potassiumEatenKg]', '[gainPotassiumKgPerKg]', '[milkPotassiumKgPerKg]', '[calfPotassiumKg]'),
    tanExcretedKg: 'MIN(MAX([urineTanFraction]*MAX(0,[nitrogenExcretedKg]-[faecalNitrogenKgPerKg]*[dryMatterEatenKg]),[tanLowestFraction]*[nitrogenExcretedKg]),[tanHighestFraction]*[nitrogenExcretedKg])',
    dung: '[dryMatterEatenKg]*(1-[digestibility])',
    dungWater: '[dung]*[faecesMoistureFraction]/(1-[faecesMoistureFraction])',
    waterBalance: 'MAX([dungWater],[dryMatterEatenKg]*([waterIntakeKgPerKg]+[metabolicWaterKgPerKg])-[liveWeightKg]/100*[winterDays]*[skinLungWaterKgPer100KgDay]-[milkOutKg]*[milkWaterFraction]-MAX(0,[gainKg])*[gainWaterFraction])',
    waterExcretedKg: '(1-[urineWaterForm])*[waterBalance]+[urineWaterForm]*([dungWater]+[potassiumExcretedKg]*[urinePotassiumFraction]/[urinePotassiumKgPerKg]*(1-[urineDryMatterFraction]))',
    urineSolids: '([waterExcretedKg]-[dungWater])*[urineDryMatterFraction]/(1-[urineDryMatterFraction])',
    dryMatterExcretedKg: '[dung]+[urineSolids]',
    carbonExcretedKg: '[dung]*[faecesCarbonFraction]+[urineSolids]*[urineCarbonFraction]',
  }; // biome-ignore format: one list
}

function bedding(): Record<string, string> {
  const dm = (m: number) => `[material${m}Share]/[shares]*(1-[material${m}MoistureFraction])`;
  const mix = (of: (m: number) => string) =>
    `IF([shares]>0,${both((m) => `IF([material${m}Share]>0,${of(m)},0)`)},0)`;
  const each = (field: string) => mix((m) => `${dm(m)}*[material${m}${field}]`);
  return {
    shares: 'MAX(0,[material1Share])+MAX(0,[material2Share])',
    bedM2: '[shedLengthM]*MAX(0,[shedDepthM]-[stanceDepthM])',
    loose: mix((m) => `[material${m}Share]/[shares]/[material${m}LooseDensityKgPerM3]`),
    dry: mix(dm),
    startMaterialKg: 'IF(AND([bedShare]>0,[loose]>0),[startDepthM]*[bedM2]/[loose],0)',
    materialKg: '[startMaterialKg]+IF(AND([bedShare]>0,[shares]>0),[beddingDailyKgPer100Kg]/100*[liveWeightKg]*[winterDays],0)',
    beddingTonnes: '[materialKg]/1000',
    dryMatterMaterialKg: '[materialKg]*[dry]',
    startDryMatterKg: '[startMaterialKg]*[dry]',
    waterMaterialKg: '[materialKg]*(1-[dry])',
    nitrogenMaterialKg: `[materialKg]*${each('NitrogenFraction')}`,
    carbonMaterialKg: `[materialKg]*${each('CarbonFraction')}`,
    degradableCarbonMaterialKg: `[materialKg]*${mix((m) => `${dm(m)}*[material${m}CarbonFraction]*[material${m}DegradableFraction]`)}`,
    degradableMaterialFraction: `IF([dry]>0,${each('DegradableFraction')}/[dry],0)`,
    litterAmmoniaFactor: `IF([dry]>0,${each('AmmoniaFactor')}/[dry],1)`,
    immobilisationKgPerKg: `IF([dry]>0,${mix((m) => `${dm(m)}*MIN([material${m}ImmobilisationKgPerKg],MAX(0,[material${m}CarbonFraction]*[material${m}AvailableCarbonFraction]*[microbeYieldFraction]/[microbeCarbonNitrogen]-[material${m}NitrogenFraction]*[material${m}AvailableCarbonFraction]))`)}/[dry],0)`,
  }; // biome-ignore format: one list
}

function placement(): Record<string, string> {
  return {
    day: '1/([pastureShare]+[slatsShare]+[bedShare]+[yardShare])',
    paddockShare: '[pastureShare]*[day]',
    slurryShare: '[slatsShare]*[day]+[yardShare]*[day]*(1-[yardToPackShare])',
    packShare: '[bedShare]*[day]+[yardShare]*[day]*[yardToPackShare]',
    yardAmmoniaKg: '[tanExcretedKg]*[yardShare]*[day]*MIN(1,[yardAmmoniaTanFraction]*[warmth])',
    slatsTanKg: '[tanExcretedKg]*[slatsShare]*[day]',
    paddockNitrogenInKg: '([nitrogenExcretedKg]+[nitrogenWastedKg])*[paddockShare]',
    slurryTanInKg: '[tanExcretedKg]*[slurryShare]-[yardAmmoniaKg]*(1-[yardToPackShare])',
    packTanInKg: '[tanExcretedKg]*[packShare]-[yardAmmoniaKg]*[yardToPackShare]',
    slurryNitrogenInKg: '([nitrogenExcretedKg]+[nitrogenWastedKg])*[slurryShare]-[yardAmmoniaKg]*(1-[yardToPackShare])',
    packNitrogenInKg: '([nitrogenExcretedKg]+[nitrogenWastedKg])*[packShare]-[yardAmmoniaKg]*[yardToPackShare]+[nitrogenMaterialKg]',
    packCarbonInKg: '([carbonExcretedKg]+[carbonWastedKg])*[packShare]+[carbonMaterialKg]',
    slurryDryMatterInKg: '([dryMatterExcretedKg]+[dryMatterWastedKg])*[slurryShare]',
    packDryMatterInKg: '([dryMatterExcretedKg]+[dryMatterWastedKg])*[packShare]+[dryMatterMaterialKg]',
    slurryWaterInKg: '([waterExcretedKg]+[waterWastedKg])*[slurryShare]',
    packWaterInKg: '([waterExcretedKg]+[waterWastedKg])*[packShare]+[waterMaterialKg]',
    packNitrogenWastedKg: '[nitrogenWastedKg]*[packShare]',
    packDryMatterWastedKg: '[dryMatterWastedKg]*[packShare]',
  }; // biome-ignore format: one list
}

function slurry(factor: string): Record<string, string> {
  return {
    rule: both((g) => `[group${g}HeadCount]*${factor}*[group${g}StoreM3PerWeek]*[winterDays]/7`),
    washM3: 'IF([slurryShare]>0,[washLitresPerDay]*[winterDays]/1000,0)',
    rainM3: 'IF([slurryShare]>0,([openStoreM2]+[openYardM2]*[yardRunoffFraction])*[rainMm]/1000,0)',
    slurryM3: '([slurryDryMatterInKg]*(1-[storeDryMatterLossFraction])+[slurryWaterInKg])/[slurryDensityKgPerM3]+[washM3]+[rainM3]',
    storeNeededM3: '([rule]*[slurryShare]+[washM3]+[rainM3]*[wetYearRainFactor])*(1+[storeBufferFraction])',
  }; // biome-ignore format: one list
}

function spreadAndLabour(price: string): Record<string, string> {
  return {
    feedingHours: '[feedTonnes]*[feedingHoursPerTonne]',
    checkingHours: '[winterDays]/60*([headCount]*[checkMinutesPerHeadDay]+[siteMinutesPerDay])',
    beddingHours: '[beddingTonnes]/[bedSpreadTonnesPerHour]+IF([bedShare]>0,[winterDays]/60*([bedSpreadMinutesPerDay]+[bedStirredPerWeek]/7*[bedStirMinutesPerM2]*[bedM2]),0)',
    slurryHours: '[slurryM3]*[agitateHoursPerM3]+[slurryM3]/[slurrySpreadM3PerHour]',
    costOfHours: `([feedingHours]+[checkingHours]+[beddingHours]+[slurryHours]*(1-[contractorShare]))*${price}`,
  }; // biome-ignore format: one list
}

/** Results of the sheet that the model has under the same name. */
export const IN_SHEET: readonly string[] = [
  'headCount', 'liveWeightKg', 'rainMm', 'wetDays', 'frozenDays', 'drainageWinterMm', 'winterTemperatureC',
  'dryMatterEatenKg', 'nitrogenExcretedKg', 'tanExcretedKg', 'phosphorusExcretedKg',
  'potassiumExcretedKg', 'waterExcretedKg', 'carbonExcretedKg', 'beddingTonnes', 'yardAmmoniaKg',
  'paddockNitrogenInKg', 'slurryM3',
  'storeNeededM3', 'packDryMatterInKg', 'packNitrogenInKg', 'packWaterInKg', 'feedingHours', 'checkingHours',
  'beddingHours',
]; // biome-ignore format: one list
