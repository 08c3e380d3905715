import type { Bytes } from "../quantity";
import { logOfComplement } from "./complement";

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
  return chanceOfAny(meanFaults(bits, errorRate));
}

/** Computes the mean number of faults behind `readFault`, as if they came one by one: -bits · ln(1 - rate). Infinity for a rate of 1. */
export function meanFaults(bits: number, errorRate: number): number {
  return bits === 0 ? 0 : -bits * logOfComplement(errorRate);
}

/** Computes the chance that something of which `mean` come on average, independently of each other, comes at all: 1 - exp(-mean). */
export function chanceOfAny(mean: number): Chance {
  return { happens: -Math.expm1(-mean), fails: Math.exp(-mean) };
}

/** Counts the bits in a size. */
export function bitsIn(size: Bytes): number {
  return Number(size * 8n);
}
