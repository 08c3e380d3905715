import type { Layout } from "./layout";
import type { Scheme } from "./scheme";

/**
 * Counts the operations on drives that one small write takes.
 *
 * Copies: one write each. Parity: read and write the data and each of m parities, 2·(m + 1), which is 4 for single and 6 for double
 * parity (Chen, Lee, Gibson, Katz, Patterson, ACM Computing Surveys 26(2), 1994). No redundancy: one write. Without a layout, a mirror
 * is taken as two drives.
 */
export function writeCost(scheme: Scheme, layout: Layout | null = null): number {
  const redundancy = layout?.redundancy ?? scheme.redundancy ?? 1;
  if (scheme.mirrored || redundancy === 0) return redundancy + 1;
  return 2 * (redundancy + 1);
}
