/**
 * Value added tax by kind of purchase. A rate is the keeper's own for the kind, else the one rate the keeper gives for all
 * works or all of the winter, else that of the country in the tables. Whether it is a cost hangs on who gets it back.
 */
import { quantity } from '../engine/quantity.ts';

const rate = (label: string, kind: string, one: string) =>
  quantity(
    label,
    'fraction',
    `the keeper’s own rate for the kind, or else the one rate for all ${one}, or else that of the country in the tables`,
  ).of(
    [`vat${kind}Given`, one === 'works' ? 'vatWorksGiven' : 'vatWinterGiven', `vat${kind}Fraction`],
    (i, own, all, table) => (Number.isFinite(own[i]) ? own[i] : Number.isFinite(all[i]) ? all[i] : table[i]),
  );

/** Mean of rates by what each is on; the rate itself where all are the same. */
function meanRate(amounts: readonly number[], rates: readonly number[]): number {
  if (rates.every((one) => one === rates[0])) return rates[0];
  let [tax, all] = [0, 0];
  amounts.forEach((amount, k) => {
    tax += amount * rates[k];
    all += amount;
  });
  return all === 0 ? 0 : tax / all;
}

export const vat = {
  worksMaterialsVatRate: rate('value added tax on building materials', 'Materials', 'works'),
  worksServicesVatRate: rate('value added tax on services for the works', 'Services', 'works'),
  worksMachineryVatRate: rate('value added tax on equipment', 'Machinery', 'works'),
  worksFuelVatRate: rate('value added tax on fuel for the works', 'Fuel', 'works'),
  winterFeedVatRate: rate('value added tax on feed and straw', 'Feed', 'winter'),
  winterServicesVatRate: rate('value added tax on contractor, vet and other services', 'Services', 'winter'),
  winterMaterialsVatRate: rate('value added tax on what repairs take', 'Materials', 'winter'),
  winterFuelVatRate: rate('value added tax on fuel and running of own machines', 'Fuel', 'winter'),
  worksVatRate: quantity(
    'value added tax on the works, mean of all kinds',
    'fraction',
    'tax on each cash line of the bill and the engineer by its kind ÷ sum of those lines',
  ).of(
    [
      'capitalLinesCash', 'capitalLinesServices', 'capitalLinesMachinery', 'capitalLinesFuel', 'costEngineer',
      'worksMaterialsVatRate', 'worksServicesVatRate', 'worksMachineryVatRate', 'worksFuelVatRate',
    ], // biome-ignore format: one list
    (i, cash, services, machinery, fuel, engineer, onMaterials, onServices, onMachinery, onFuel) =>
      meanRate(
        [cash[i] - services[i] - machinery[i] - fuel[i], services[i] + engineer[i], machinery[i], fuel[i]],
        [onMaterials[i], onServices[i], onMachinery[i], onFuel[i]],
      ),
  ),
  worksVatFraction: quantity(
    'value added tax on the works that is not reclaimed',
    'fraction',
    'mean rate on the works, where the farm does not get it back; else none',
  ).product(['worksVatRate', 'vatKeptWorks']),
};
