/**
 * How bedding laid beyond or below the usual rate changes a bed's ammonia. A third more straw, strewn over the whole
 * bed, halved the ammonia of cattle yards and more gave no further gain (Gilhespy and others 2009); seven-day chambers
 * found nothing, so the cut is a row with a wide range. Below the usual rate the line is gentler: heaps of 2.5 against
 * 15 kg of straw a livestock unit and day lost 10.8 and 5.9 % of their nitrogen (Dewes 1999).
 *
 * `beyond` is rate ÷ usual rate − 1, `more` the surplus at which the whole `cut` is reached.
 */
export function strawFactor(beyond: number, cut: number, more: number, lackSlope: number): number {
  return beyond > 0 ? 1 - cut * Math.min(1, beyond / more) : 1 - lackSlope * beyond;
}
