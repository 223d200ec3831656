/**
 * The moisture that wood comes to in air.
 */

/** The temperature at which a climate's humidity is meant, °C: that of the Handbook's table. */
export const ROOM = 21;

/**
 * Equilibrium moisture of wood as a share of its dry weight, at a relative humidity (share of one) and a temperature in °C: Wood
 * Handbook, FPL-GTR-190 (2010), equation 4-5 (seen). Its makers say that it is off the table by 0.13 % on average and 0.9 % at most.
 */
export function equilibrium(humidity: number, celsius: number = ROOM): number {
  const [h, t] = [humidity, celsius];
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * h;
  const both = k1 * k2 * kh * kh;
  return ((1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * both) / (1 + k1 * kh + both))) / 100;
}
