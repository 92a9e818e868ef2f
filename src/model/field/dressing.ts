/** Spreading compost: how much a limit allows and how thick it lies. Arithmetic. */

/** Tonnes per hectare that bring `limitKgPerHa` of an element held at `kgPerTonne`. */
export function dressingTonnesPerHa(limitKgPerHa: number, kgPerTonne: number): number {
  return limitKgPerHa / kgPerTonne;
}

/** Depth of a dressing in mm: tonnes per hectare over ten times the density in t/m³. */
export function dressingDepthMm(tonnesPerHa: number, densityKgPerM3: number): number {
  return tonnesPerHa / (10 * (densityKgPerM3 / 1000));
}
