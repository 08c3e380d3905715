import { canonicalText } from "../../text";
import type { Scalar } from "../../../sheet";
import type { Sign } from "../job";
import type { RecordKind } from "../../plan/schema";
import type { Wanted } from "../procedure";
import { fieldsOf, type Entries } from "./entries";
import type { Result } from "./result";

/** What people type into the row of a step, each field with its label. Fingerprints are made in this order. */
export const stepLabels = {
  found: "Found",
  unit: "Unit",
  recheckedBy: "Rechecked by",
  by: "By",
  witness: "Witness",
  done: "Done",
  note: "Note",
} as const;

export type StepField = keyof typeof stepLabels;

export const stepFields = fieldsOf(stepLabels);

/** What a record of a grid shares with the others of its row. By, Witness and Done stand in the row that signs for the grid. */
export interface Slot {
  /** Which pair of columns is its own, from 0. */
  readonly place: number;
  /** What stands in the hidden key of the row. */
  readonly rowKey: string;
  /** Key of the step that signs for the grid; "" where no name signs. */
  readonly signKey: string;
  /** What heads its columns where subjects stand side by side, as an array; else "". */
  readonly head: string;
}

/** The record of a step as it was read from a tab. */
export interface StepRecord {
  readonly key: string;
  /** Where it stands in the row of a grid, of which the first record has the note; null where the row is its own. */
  readonly slot: Slot | null;
  readonly no: string;
  readonly stepId: string;
  /** What the step says, caution and maker's guide included. */
  readonly step: string;
  readonly subject: string;
  readonly expected: string;
  readonly plannedUnit: string;
  /** Expectation under which the record was made, where it has changed since. */
  readonly expectedBefore: string;
  /** What Result must be, whatever its cell shows; null where it must be blank. Of a record whose step is gone: what it was. */
  readonly result: Result | null;
  readonly required: boolean;
  readonly sign: Sign;
  /** True where nothing further may happen before it is done and signed. */
  readonly holdPoint: boolean;
  readonly kind: RecordKind;
  /** What was typed is compared with this; null where anything of the kind will do. */
  readonly wanted: Wanted | null;
  /** What people typed. A unit is null while it is the planned one. */
  readonly typed: Entries<StepField>;
  /** Fields whose cell shows an error; its text stands in `typed`. */
  readonly errors: readonly StepField[];
  /** What stands in the cell of the unit, planned or seen. */
  readonly seenUnit: string;
  readonly settled: boolean;
  readonly minutes: number;
  /** Fingerprint of the record that the build put here; "" where it put none. */
  readonly carried: string;
  /** Row of the sheet, from 0. */
  readonly row: number;
}

/** Writes what stands in a field as one text; a day as an ISO date. */
export function stepText(field: StepField, value: Scalar, kind: RecordKind): string {
  return canonicalText(value, field === "done" || (field === "found" && kind === "date"));
}
