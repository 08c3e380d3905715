import type { Bytes } from "../quantity";

/** The chance of an event and of its opposite, each with all its digits: neither is one less the other. */
export interface Chance {
  readonly happens: number;
  readonly fails: number;
}

/**
 * Computes the chance of at least one unreadable bit while reading `bits` bits, each unreadable with probability `errorRate` on its own:
 * 1 - (1 - rate)^bits, by log1p and expm1 so that a rate of 1e-15 keeps its digits.
 */
export function readFault(bits: number, errorRate: number): Chance {
  if (errorRate === 0 || bits === 0) return { happens: 0, fails: 1 };
  const logarithm = bits * Math.log1p(-errorRate);
  return { happens: -Math.expm1(logarithm), fails: Math.exp(logarithm) };
}

/** Counts the bits in a size. */
export function bitsIn(size: Bytes): number {
  return Number(size * 8n);
}
