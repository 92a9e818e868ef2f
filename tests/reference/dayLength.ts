/** Day length by the library's sunrise and sunset: what the sampled hours of sun must come to. */
import { getTimes } from 'suncalc';
import { solarNoonMs } from '../../src/model/works/sun.ts';

const HOUR_MS = 3_600_000;

/** Hours from sunrise to sunset on an ISO day: 0 in polar night, 24 in midnight sun. */
export function dayLengthHours(isoDay: string, latitudeDeg: number, longitudeDeg: number): number {
  const noon = solarNoonMs(isoDay, latitudeDeg, longitudeDeg);
  const { sunrise, sunset, alwaysUp } = getTimes(new Date(noon), latitudeDeg, longitudeDeg);
  if (sunrise && sunset) return (sunset.getTime() - sunrise.getTime()) / HOUR_MS;
  return alwaysUp ? 24 : 0;
}
