import type { CellValue } from "./cell-value";
import type { TablePlan } from "./sheet-plan";

/** A sheet as it was read, from cell A1 to the last one used. */
export interface SheetSnapshot {
  readonly name: string;
  readonly visible: boolean;
  readonly protected: boolean;
  readonly values: readonly (readonly CellValue[])[];
  /** The formula of each cell that has one of its own, else null; cells that a formula spills into have none. */
  readonly formulas: readonly (readonly (string | null)[])[];
  readonly tables: readonly TablePlan[];
  /** How many comments, notes, pictures, shapes and charts sit on the sheet: things that a rewritten sheet cannot carry along. */
  readonly attachments: number;
  /** True where the host does not tell how many notes there are: there may be some beside what `attachments` counts. */
  readonly mayHoldNotes?: boolean;
}

/** The sheets of a workbook in tab order. Sheets that were not asked for stand with empty `values`. */
export interface WorkbookSnapshot {
  readonly sheets: readonly SheetSnapshot[];
}
