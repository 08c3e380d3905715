/** Returns the 95 % interval of a share after Wilson (1927): it stays between 0 and 1, and is not empty for a share of 0 or 1. */
export function wilsonInterval(hits: number, trials: number): [low: number, high: number] {
  const z = 1.959964;
  const share = hits / trials;
  const middle = share + (z * z) / (2 * trials);
  const reach = z * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  const scale = 1 + (z * z) / trials;
  return [(middle - reach) / scale, (middle + reach) / scale];
}
