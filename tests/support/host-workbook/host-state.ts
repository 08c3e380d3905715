import type { Area } from "../../../src/sheet";
import type { HostObject } from "./host-object";
import type { Formulas, HostSheet } from "./host-sheet";
import { namesObject } from "./name-objects";
import { rangeObject } from "./range-objects";
import { tablesObject, worksheetsObject } from "./sheet-objects";

/** A name with what it stands for. */
export interface HostName {
  readonly name: string;
  readonly formula: string;
  readonly comment: string;
}

/** All that the workbook holds. */
export interface HostState {
  sheets: HostSheet[];
  /** Names people gave to ranges and formulas. */
  names: readonly HostName[];
  selected: { readonly sheet: HostSheet; readonly area: Area };
  readonly formulas: Formulas;
  /** True where no sheet may be added, deleted, moved, hidden or renamed. */
  protected: boolean;
  /** True where a cell that a formula spills into shows that formula. */
  readonly repeatsSpilled: boolean;
}

/** The object from which every request begins. */
export function workbookObject(state: HostState): HostObject {
  return {
    type: "Workbook",
    parts: {
      application: () => ({ type: "Application", calls: { suspendApiCalculationUntilNextSync: () => null, suspendScreenUpdatingUntilNextSync: () => null } }),
      protection: () => ({ type: "WorkbookProtection", reads: { protected: () => state.protected } }),
      worksheets: () => worksheetsObject(state),
      tables: () => tablesObject(state),
      names: () => namesObject(state),
      getSelectedRange: () => rangeObject(state, state.selected),
    },
  };
}
