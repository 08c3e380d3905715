import { fieldsOf, type Entries } from "./entries";

/** What stands in a line of the seals, each field with its label. */
export const sealLabels = {
  sealed: "Sealed",
  code: "Code",
  by: "By",
  reopened: "Reopened",
  reopenedBy: "Reopened by",
  reason: "Reason",
} as const;

export type SealField = keyof typeof sealLabels;

export const sealFields = fieldsOf(sealLabels);

/** One line of the seals: a sealing, and the reopening of it. */
export interface SealLine {
  readonly typed: Entries<SealField>;
  /** How many steps the tab had when it was sealed; null where that cannot be read. */
  readonly stepCount: number | null;
  /** Row of the sheet, from 0. */
  readonly row: number;
}
