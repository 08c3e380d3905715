/**
 * Probability of being up, and of being down.
 *
 * Both are kept, though they add up to 1, and neither is ever got from the other where that would lose digits: an unavailability of 1e-12
 * keeps all of them.
 */
export interface Chance {
  readonly up: number;
  readonly down: number;
}

export const certain: Chance = { up: 1, down: 0 };
export const impossible: Chance = { up: 0, down: 1 };

/** Makes the chance of what is down for the share `down` of the time. */
export function chanceOf(down: number): Chance {
  return { up: 1 - down, down };
}

/** Joins two independent parts both of which are needed; the same to the last digit in either order. */
export function inSeries(one: Chance, other: Chance): Chance {
  return { up: one.up * other.up, down: eitherOf(one.down, other.down) };
}

/** Joins two independent parts of which one is enough; the same to the last digit in either order. */
export function inParallel(one: Chance, other: Chance): Chance {
  return { up: eitherOf(one.up, other.up), down: one.down * other.down };
}

/** Computes how likely at least one of two independent things is. The product is at most the smaller of the two, so no digits are lost. */
function eitherOf(one: number, other: number): number {
  return one + other - one * other;
}
