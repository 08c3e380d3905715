/**
 * Probability of being up, and of being down.
 *
 * Both are kept, though they add up to 1, and neither is ever got by subtraction: an unavailability of 1e-12 keeps all its digits.
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

/** Joins independent parts all of which are needed. */
export function inSeries(...parts: readonly Chance[]): Chance {
  return parts.reduce((all, part) => ({ up: all.up * part.up, down: all.down + all.up * part.down }), certain);
}

/** Joins two independent parts of which one is enough. */
export function inParallel(one: Chance, other: Chance): Chance {
  return { up: one.up + one.down * other.up, down: one.down * other.down };
}
