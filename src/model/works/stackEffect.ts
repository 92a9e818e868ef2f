/**
 * Air that rises through a ridge on the animals' own heat: orifice equation and heat balance together, walls'
 * own loss left out (the theory of Bruce 1978).
 */

const GRAVITY = 9.81;

export interface Stack {
  /** Heat that warms the air, W. */
  readonly sensibleW: number;
  /** From the middle of the inlet to the ridge, m. */
  readonly heightM: number;
  /** Outside air, K. */
  readonly outsideK: number;
  /** Share of an opening that air really uses. */
  readonly discharge: number;
  /** Of air, kg per m³. */
  readonly densityKgPerM3: number;
  /** Of air, J per kg and kelvin. */
  readonly heatJPerKgK: number;
}

/** Inlet and outlet in series act as this one opening, m². */
export function effectiveOpeningM2(outletM2: number, inletM2: number): number {
  const sum = Math.hypot(outletM2, inletM2);
  return sum > 0 ? (outletM2 * inletM2) / sum : 0;
}

/** Draught factor 2·g·H·S / (T·ρ·c): the flow is its cube root times (Cd·A)^⅔. */
function drive(stack: Stack): number {
  const warm = stack.outsideK * stack.densityKgPerM3 * stack.heatJPerKgK;
  return (2 * GRAVITY * Math.max(0, stack.heightM) * Math.max(0, stack.sensibleW)) / warm;
}

/** Air through an effective opening, m³ per second. */
export function stackFlowM3PerS(openingM2: number, stack: Stack): number {
  return (stack.discharge * Math.max(0, openingM2)) ** (2 / 3) * drive(stack) ** (1 / 3);
}

/** How much warmer the house gets at that flow, K; null without flow. */
export function stackWarmingK(flowM3PerS: number, stack: Stack): number | null {
  return flowM3PerS > 0 ? stack.sensibleW / (stack.densityKgPerM3 * stack.heatJPerKgK * flowM3PerS) : null;
}

/** Effective opening a flow needs, m²; null where nothing drives it. */
export function openingForM2(flowM3PerS: number, stack: Stack): number | null {
  const force = drive(stack);
  return force > 0 ? flowM3PerS ** 1.5 / (stack.discharge * Math.sqrt(force)) : null;
}
