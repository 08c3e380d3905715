import type { Area, Cell, SheetPlan, WorkbookSnapshot } from "../sheet";
import type { SheetChoice } from "./sheet-choice";

/** One change of the workbook. Sheets are named as they are called at that point of the list of edits. Cells count from 0. */
export type Edit =
  /** Adds a sheet, behind the sheet `after` or at the end. */
  | { readonly kind: "add-sheet"; readonly plan: SheetPlan; readonly after?: string }
  /**
   * Writes a block whose top left cell is `row`, `column`; a null cell is left as it is, a cell with neither value nor formula is
   * emptied. Text is written as text. `style` is not used here: cells keep their format, text apart, which needs "@".
   */
  | { readonly kind: "write"; readonly sheet: string; readonly row: number; readonly column: number; readonly cells: readonly (readonly (Cell | null)[])[] }
  /** Makes a table cover `area`, its header row included; where the host has no tables nothing is done. */
  | { readonly kind: "resize-table"; readonly sheet: string; readonly table: string; readonly area: Area }
  | { readonly kind: "rename-sheet"; readonly sheet: string; readonly name: string }
  | { readonly kind: "show-sheet"; readonly sheet: string }
  | { readonly kind: "hide-sheet"; readonly sheet: string }
  | { readonly kind: "delete-sheet"; readonly sheet: string }
  /** Brings a sheet to the front and selects an area of it. */
  | { readonly kind: "select"; readonly sheet: string; readonly area: Area };

/** A place in the workbook that is selected. */
export interface Selection {
  readonly sheet: string;
  readonly area: Area;
}

/**
 * The workbook as everything of ours sees it: one narrow interface in sheet terms, with an adapter a host.
 *
 * Every method refuses with a `Problem` whose sentence says what the person can do: a protected sheet, a cell being edited, a sheet
 * that is gone, a name that cannot be one. Nothing else is thrown on purpose.
 */
export interface WorkbookPort {
  /**
   * Reads the chosen sheets, or all of them: whole, or only their values, which are a tenth of what a tab is. Then blank cells and formulas that
   * show nothing are alike, unless the workbook is at hand: it may answer whole. Names that are no sheet are passed over.
   * Cells that are still being computed are waited for, some seconds; then they stand as the error that they show, such as #BUSY!.
   *
   * Costs one sync for names, one for extents and tables where sheets are not chosen by name or have tables, and one for each piece of the cells
   * that the host answers at once: some 20,000, of values alone some 100,000; one or more before them where sheets are chosen by their heads.
   */
  read(sheets?: SheetChoice, only?: "values"): Promise<WorkbookSnapshot>;

  /**
   * Carries out the edits in order, in one sync; only what is over 5 MB goes in several, cut between edits or between rows. Where cells
   * or sheets are written one sync comes before it, and a further one for each 100,000 cells: it learns the names of sheets, which are protected
   * and which cells are text.
   *
   * Every name and text is checked before the first edit. Where the host itself fails in the middle the edits before that point
   * stand: the order of the list is the caller's way to keep the workbook whole at every point.
   */
  apply(edits: readonly Edit[]): Promise<void>;

  /** Tells, for each cell, into which area its formula spills; null where it does not spill. One sync to learn it. */
  spillAreas(cells: readonly { readonly sheet: string; readonly row: number; readonly column: number }[]): Promise<(Area | null)[]>;

  /** Tells what is selected. */
  selection(): Promise<Selection>;

  /**
   * Calls `listener` after each change of cells or sheets, here or elsewhere in a shared workbook, until the returned function is called.
   * Changes by `apply` count too. While a cell is being edited it waits.
   */
  watch(listener: () => void): Promise<() => void>;
}
