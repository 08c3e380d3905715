/** Greatest count of halvings: more than a double has digits. */
const halvings = 60;

/**
 * Computes the t within which Student's distribution of `freedom` degrees, a whole number from 1, has the share `within` of it, both sides counted.
 *
 * The finite series for whole degrees of Abramowitz and Stegun, 26.7.3 and 26.7.4, in the angle atan(t / sqrt(freedom)), is turned around by halving.
 */
export function studentT(freedom: number, within: number): number {
  let [low, high] = [0, Math.PI / 2];
  for (let step = 0; step < halvings; step += 1) {
    const middle = (low + high) / 2;
    if (shareWithin(middle, freedom) < within) low = middle;
    else high = middle;
  }
  return Math.tan((low + high) / 2) * Math.sqrt(freedom);
}

function shareWithin(angle: number, freedom: number): number {
  const cosine = Math.cos(angle);
  const isOdd = freedom % 2 === 1;
  let [term, sum] = isOdd ? [cosine, freedom > 1 ? cosine : 0] : [1, 1];
  for (let power = isOdd ? 3 : 2; power <= freedom - 2; power += 2) {
    term *= ((power - 1) / power) * cosine * cosine;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}
