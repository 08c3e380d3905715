import { invalid } from "../text";
import { layoutDrives, type Layout } from "./layout";
import type { Scheme } from "./scheme";

/** Computes the usable share of all drives of a layout, spares and drives outside a group counted. */
export function usableShare({ members, data, redundancy, drives }: Layout): number {
  return (members * data) / ((data + redundancy) * drives);
}

/**
 * Computes the usable share of raw capacity, drives that fill no group counted.
 *
 * `drives` null: the share of one group or stripe; schemes of one group, whose share depends on the drives, are refused.
 */
export function schemeEfficiency(scheme: Scheme, drives: number | null): number {
  if (drives !== null) return usableShare(layoutDrives(scheme, drives));
  if (scheme.redundancy === 0) return 1;
  if (scheme.data === null || scheme.redundancy === null) {
    throw invalid("drives", null, `drives is blank or 0, and the share of ${scheme.name} depends on it. Write the number of drives, such as 12.`);
  }
  return scheme.data / (scheme.data + scheme.redundancy);
}
