/**
 * How figures of each kind are written for people: one way, wherever they stand.
 *
 * A figure is rounded to the nearest of at most two decimals, a rate of money to four, a power to whole watts; zeros at the end are left out: 85.5%, 240.87 TB, 9 A.
 */

/** Writes a share as a percentage of at most two decimals, such as 85.5%. */
export function formatPercent(share: number): string {
  return `${roundTo(2, share * 100)}%`;
}

/** Writes a rate by which an amount of money is worked out, to four decimals, such as 8.875%: whoever works it out again is to arrive at that amount. */
export function formatRate(share: number): string {
  return `${roundTo(4, share * 100)}%`;
}

/** Counts a number of bytes in TB, to two decimals: for a cell whose header says the unit. */
export function terabytesOf(size: bigint): number {
  return roundTo(2, Number(size) / 1e12);
}

/** Writes a number of bytes in TB with at most two decimals, to the nearest, such as 240.87 TB. */
export function formatTerabytes(size: bigint): string {
  return `${terabytesOf(size)} TB`;
}

/** Rounds a current to two decimals: for a cell whose header says the unit. */
export function ampsOf(amperes: number): number {
  return roundTo(2, amperes);
}

/** Writes a current in amperes with at most two decimals, such as 12.8 A. */
export function formatAmps(amperes: number): string {
  return `${ampsOf(amperes)} A`;
}

/** Writes a power in whole watts, such as 1200 W. */
export function formatWatts(power: number): string {
  return `${roundTo(0, power)} W`;
}

/** Writes a mass in kilograms with at most two decimals, such as 25.5 kg. */
export function formatKilograms(mass: number): string {
  return `${roundTo(2, mass)} kg`;
}

/** Rounds to the nearest number of so many decimals, as `toFixed` does; never writes −0. */
export function roundTo(decimals: number, figure: number): number {
  return Number(figure.toFixed(decimals)) + 0;
}
