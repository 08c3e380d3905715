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
  /** Row of the sheet, from 0. */
  readonly row: number;
}

/** Tells whether a seal was reopened: by day, name and reason. One of them alone is a note. */
export function isReopened({ typed: { reopened, reopenedBy, reason } }: SealLine): boolean {
  return reopened !== null && reopenedBy !== null && reason !== null;
}
