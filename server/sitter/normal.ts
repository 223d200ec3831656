/**
 * The standard normal distribution, to about fifteen figures.
 */

/** Where the series gives way to the continued fraction. */
const TAIL = 3.5;
const TERMS = 60;

/** The share (0 to 1) below `z`: series and continued fraction of Abramowitz and Stegun 26.2.11 and 26.2.14, from memory. */
export function normalShareBelow(z: number): number {
  if (z < -TAIL) return upperTail(-z);
  if (z > TAIL) return 1 - upperTail(z);
  let term = z;
  let sum = z;
  const square = z * z;
  for (let odd = 3; odd < 2 * TERMS; odd += 2) {
    term *= square / odd;
    const before = sum;
    sum += term;
    if (sum === before) break;
  }
  return 0.5 + density(z) * sum;
}

/** The `z` with this share (0 to 1) below it; minus and plus infinity at the ends. */
export function normalQuantile(share: number): number {
  if (!(share > 0 && share < 1)) return share === 0 ? -Infinity : share === 1 ? Infinity : Number.NaN;
  if (share > 0.5) return -normalQuantile(1 - share);
  // Abramowitz and Stegun 26.2.23, from memory, is right to 4.5e-4; Halley's step triples the figures that are right.
  const t = Math.sqrt(-2 * Math.log(share));
  let z =
    (2.515517 + 0.802853 * t + 0.010328 * t * t) /
      (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t) -
    t;
  for (let step = 0; step < 2; step++) {
    const off = (normalShareBelow(z) - share) / density(z);
    z -= off / (1 + (z * off) / 2);
  }
  return z;
}

function upperTail(z: number): number {
  let fraction = z;
  for (let k = TERMS; k > 0; k--) fraction = z + k / fraction;
  return density(z) / fraction;
}

function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
