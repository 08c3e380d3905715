import type { Scalar } from "../../../sheet";
import type { SealColumn, SnagColumn, TypedColumn } from "../tab";

/** What people typed into the row of a step; null where nothing was. A unit is null while it is the planned one. */
export type TypedCells = Readonly<Record<TypedColumn, Scalar>>;

/** The row of a step as it was read from a tab. */
export interface StepRecord {
  readonly key: string;
  readonly no: string;
  readonly stepId: string;
  readonly step: string;
  readonly subject: string;
  readonly expected: string;
  readonly plannedUnit: string;
  readonly was: string;
  readonly result: string;
  /** False where somebody typed over the formula of the result. */
  readonly isComputed: boolean;
  readonly required: boolean;
  readonly sign: string;
  readonly kind: string;
  readonly typed: TypedCells;
  readonly settled: boolean;
  readonly minutes: number;
  /** Fingerprint of the record that the build put here; "" where it put none. */
  readonly carried: string;
  readonly digest: string;
  /** Row of the sheet, from 0. */
  readonly row: number;
}

/** A snag as it was read from a tab. */
export interface SnagRecord {
  /** Key of the step it is about; "" where it is about none. */
  readonly key: string;
  readonly stepId: string;
  readonly typed: Readonly<Record<SnagColumn, Scalar>>;
  readonly carried: string;
  readonly digest: string;
  readonly row: number;
}

/** One line of the seals: a sealing, and the reopening of it. */
export interface SealLine {
  readonly typed: Readonly<Record<SealColumn, Scalar>>;
  readonly digest: string;
  readonly row: number;
}

/** What identifies a tab, whatever it is called. */
export interface TabMark {
  readonly jobId: string;
  readonly build: number;
  /** When the job's tab was first built, which tells plans apart that use the same ids. */
  readonly born: string;
  /** False while its build has not come to its end. */
  readonly whole: boolean;
}

/** Where the blocks of a tab stand on its sheet, rows and columns from 0. */
export interface TabPlaces {
  readonly columns: Readonly<Record<string, number>>;
  readonly headerRow: number;
  readonly stateCell: { readonly row: number; readonly column: number };
  readonly snagsRow: number;
  readonly keptRow: number;
  readonly sealsRow: number;
  readonly lastRow: number;
}

/** A commissioning tab as it was read from its sheet. */
export interface TabReading extends TabMark {
  readonly sheet: string;
  readonly title: string;
  readonly visible: boolean;
  readonly attachments: number;
  readonly places: TabPlaces;
  readonly steps: readonly StepRecord[];
  readonly snags: readonly SnagRecord[];
  readonly kept: readonly StepRecord[];
  readonly seals: readonly SealLine[];
  /** Rows that people added among the steps, from 0. */
  readonly ownRows: readonly number[];
  /** Headers of columns that people added. */
  readonly ownColumns: readonly string[];
  /** Sentences about cells that could not be taken as they are. */
  readonly remarks: readonly string[];
}

/** Tells whether a tab is sealed and has not been reopened since. */
export function isClosed({ seals }: Pick<TabReading, "seals">): boolean {
  const last = seals.at(-1);
  return last !== undefined && last.typed.stepId !== null && last.typed.step !== null && last.typed.expected === null;
}
