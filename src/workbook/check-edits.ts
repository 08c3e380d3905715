import { invalid, noAnswer, quote } from "../planning/text";
import { longestText, sameSheetName, sheetNameFault, sheetSize, type Cell, type Validation } from "../sheet";
import type { Edit } from "./port";

/** What must be known of a sheet before it is changed. */
export interface SheetState {
  readonly name: string;
  readonly visible: boolean;
  readonly protected: boolean;
}

/** Most characters of what a cell holds in the spreadsheet host, which files keep too. */
const limits = { text: longestText, formula: 8_192, list: 255 } as const;

/**
 * Refuses a list of edits that cannot be carried out whole, before the first of them is.
 *
 * Plays the list through on the names of the sheets: a name that cannot be one, that is taken or that is no sheet; a protected sheet;
 * the last visible sheet hidden or deleted; a text or formula over the host's length. With `sheets` null only what the edits
 * themselves show is checked. Returns the names in tab order as they will be afterwards.
 */
export function checkEdits(edits: readonly Edit[], sheets: readonly SheetState[] | null): string[] {
  const states = sheets === null ? null : sheets.map((one) => ({ ...one }));
  const stateOf = (name: string) => {
    const found = states?.find((one) => sameSheetName(one.name, name));
    if (states !== null && found === undefined) throw noAnswer("sheet", name, `There is no sheet ${quote(name)} any more. It may have been renamed or deleted.`);
    return found;
  };
  const refuseTaken = (name: string, except?: object) => {
    if (states?.some((one) => one !== except && sameSheetName(one.name, name)) === true) {
      throw invalid("name", name, `There is a sheet ${quote(name)} already. Rename or delete it, then try again.`);
    }
  };
  const refuseLast = (name: string) => {
    if (states !== null && !states.some((one) => one.visible && !sameSheetName(one.name, name))) {
      throw invalid("sheet", name, `${quote(name)} is the only sheet in sight. Add or unhide another one first.`);
    }
  };
  const refuseProtected = (name: string) => {
    if (stateOf(name)?.protected === true) throw invalid("sheet", name, `Sheet ${quote(name)} is protected. Unprotect it under Review, then try again.`);
  };
  for (const edit of edits) {
    switch (edit.kind) {
      case "add-sheet": {
        refuseName(edit.plan.name);
        refuseTaken(edit.plan.name);
        refuseCells(edit.plan.rows, edit.plan.name, 0, 0);
        edit.plan.validations?.forEach((one) => refuseLongList(one, edit.plan.name));
        if (edit.after !== undefined) stateOf(edit.after);
        const at = states?.findIndex((one) => edit.after !== undefined && sameSheetName(one.name, edit.after)) ?? -1;
        states?.splice(at < 0 ? states.length : at + 1, 0, { name: edit.plan.name, visible: true, protected: false });
        break;
      }
      case "write":
        refuseProtected(edit.sheet);
        refuseCells(edit.cells, edit.sheet, edit.row, edit.column);
        break;
      case "resize-table":
        refuseProtected(edit.sheet);
        break;
      case "rename-sheet": {
        refuseName(edit.name);
        const state = stateOf(edit.sheet);
        refuseTaken(edit.name, state);
        if (state !== undefined) state.name = edit.name;
        break;
      }
      case "show-sheet":
      case "hide-sheet": {
        const state = stateOf(edit.sheet);
        if (edit.kind === "hide-sheet") refuseLast(edit.sheet);
        if (state !== undefined) state.visible = edit.kind === "show-sheet";
        break;
      }
      case "delete-sheet": {
        const state = stateOf(edit.sheet);
        refuseLast(edit.sheet);
        if (states !== null && state !== undefined) states.splice(states.indexOf(state), 1);
        break;
      }
      case "select":
        stateOf(edit.sheet);
    }
  }
  return states?.map((one) => one.name) ?? [];
}

function refuseName(name: string): void {
  const fault = sheetNameFault(name);
  if (fault !== null) throw invalid("name", name, `The sheet name ${quote(name)} ${fault}. Choose another name.`);
}

function refuseCells(rows: readonly (readonly (Cell | null)[])[], sheet: string, row: number, column: number): void {
  if (row + rows.length > sheetSize.rows || rows.some((line) => column + line.length > sheetSize.columns)) {
    throw invalid("cells", rows.length, `What is to be written on ${quote(sheet)} reaches over the edge of the sheet. Write less, or further up.`);
  }
  rows.forEach((line, index) => {
    for (const cell of line) {
      const over =
        typeof cell?.value === "string" && cell.value.length > limits.text ? cell.value : (cell?.formula?.length ?? 0) > limits.formula ? cell?.formula : undefined;
      if (over !== undefined) {
        throw invalid("cells", over, `Row ${row + index + 1} of ${quote(sheet)} would hold ${over.length} characters in one cell. Shorten the text.`);
      }
    }
  });
}

function refuseLongList({ rule }: Validation, sheet: string): void {
  if (rule.kind !== "list") return;
  const comma = rule.items.find((item) => item.includes(","));
  if (comma !== undefined) throw invalid("list", comma, `The choice ${quote(comma)} on ${quote(sheet)} holds a comma. Write it without one.`);
  const length = rule.items.join(",").length;
  if (length > limits.list) {
    throw invalid("list", length, `A list of choices on ${quote(sheet)} has ${length} characters; ${limits.list} is the most. Shorten the choices.`);
  }
}
