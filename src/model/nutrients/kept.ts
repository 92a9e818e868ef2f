/**
 * What is kept, of the herd's own. All that is lost is counted against what the animals dropped and the feed they
 * wasted, since that is what gives off ammonia, leaches and runs off; what came in with bedding is counted whole,
 * beside it, so that buying straw never looks like keeping. Carbon is the exception: what is breathed off a bed
 * cannot be told apart, so bedding takes its share of what is left.
 */
import { quantity } from '../engine/quantity.ts';

const kg = (label: string, formula: string, when?: string) =>
  quantity(label, 'kg', formula, when === undefined ? {} : { when });

const ALL_LOSSES = 'all losses are counted against it, at most the whole of it';

const own = <const Element extends string>(element: Element) =>
  kg(`${element} dropped by the animals and in wasted feed`, `${element} excreted + in wasted feed`).sum([
    `${element}ExcretedKg`,
    `${element}WastedKg`,
  ]);

const remaining = <const Element extends string, const Field extends string>(
  element: Element,
  field: Field,
) =>
  kg(
    `${element} still there`,
    'in the soil and plants of paddock and spreading ground after the drainage season, of animals, wasted feed and bedding alike',
  ).sum([`paddock${field}KeptKg`, `soil${field}KeptKg`]);

const keptOf = <const Element extends string>(element: Element) =>
  kg(
    `${element} kept`,
    `${element} dropped by the animals and in wasted feed − ${element} lost; ${ALL_LOSSES}`,
  ).of([`${element}InKg`, `${element}LostKg`], (i, dropped, gone) => Math.max(0, dropped[i] - gone[i]));

const brought = <const Element extends string, const Field extends string>(element: Element, field: Field) =>
  kg(
    `${element} brought in with bedding`,
    `${element} of bedding and of what is mixed into the heap; where more is lost than the animals dropped, less by the rest`,
    'packShare',
  ).of(
    [`${element}MaterialKg`, `heap${field}AddedKg`, `${element}LostKg`, `${element}InKg`],
    (i, bedding, added, gone, dropped) =>
      Math.max(0, bedding[i] + added[i] - Math.max(0, gone[i] - dropped[i])),
  );

export const kept = {
  nitrogenInKg: own('nitrogen'),
  phosphorusInKg: own('phosphorus'),
  potassiumInKg: own('potassium'),
  nitrogenRemainingKg: remaining('nitrogen', 'Nitrogen'),
  phosphorusRemainingKg: remaining('phosphorus', 'Phosphorus'),
  potassiumRemainingKg: remaining('potassium', 'Potassium'),
  nitrogenKeptKg: keptOf('nitrogen'),
  phosphorusKeptKg: keptOf('phosphorus'),
  potassiumKeptKg: keptOf('potassium'),
  nitrogenBroughtKg: brought('nitrogen', 'Nitrogen'),
  phosphorusBroughtKg: brought('phosphorus', 'Phosphorus'),
  potassiumBroughtKg: brought('potassium', 'Potassium'),

  nitrogenInCropKg: kg(
    'nitrogen in a crop or ready for it',
    'what the crop on spreading ground uses + what herbage of the paddock has taken, beyond its need too',
  ).sum(['groundNitrogenUsedKg', 'paddockNitrogenInCropKg']),
  nitrogenAtRiskKg: kg(
    'nitrogen still at risk',
    'mineral nitrogen on spreading ground after drainage that no crop of the first year uses + mineral nitrogen of the paddock after the second winter: the next drainage may take it',
  ).of(
    ['soilMineralKg', 'groundNitrogenUsedKg', 'paddockNitrogenAtRiskKg'],
    (i, soil, ground, paddock) => Math.max(0, soil[i] - ground[i]) + paddock[i],
  ),
  nitrogenBoundKg: kg(
    'nitrogen bound in soil or compost',
    'nitrogen still there − nitrogen in a crop or ready for it − nitrogen still at risk',
  ).minus('nitrogenRemainingKg', ['nitrogenInCropKg', 'nitrogenAtRiskKg']),

  carbonBroughtKg: kg(
    'carbon brought in with bedding',
    'carbon of the compost × (carbon of the bed × carbon of bedding ÷ carbon into the bed + mixed into the heap) ÷ carbon of the heap',
    'packShare',
  ).of(
    [
      'compostCarbonKg', 'packCarbonKg', 'carbonMaterialKg', 'packCarbonInKg', 'heapCarbonAddedKg', 'heapCarbonInKg',
    ], // biome-ignore format: one list
    (i, compost, pack, material, into, added, heap) =>
      into[i] > 0 && heap[i] > 0
        ? (compost[i] * ((pack[i] * material[i]) / into[i] + added[i])) / heap[i]
        : 0,
  ),
  carbonKeptKg: kg(
    'carbon brought to the soil',
    "on the paddock + on the spreading ground, of the herd's own: without bedding's share; part of it will be respired in the years after",
  ).of(
    ['paddockCarbonKeptKg', 'soilCarbonKeptKg', 'carbonBroughtKg'],
    (i, paddock, soil, bedding) => paddock[i] + soil[i] - bedding[i],
  ),
};
