import { cellAddress, parseCell, sameSheetName, type Area, type Cell, type Scalar, type SheetPlan, type SheetSnapshot, type WorkbookSnapshot } from "../sheet";
import type { Edit } from "../workbook/port";

/** Sheet that says which values were formulas of ours. */
export const registerName = "BAY register";

/** One formula that was turned into values: the cells it filled, row by row from its own cell on. */
export interface RegisteredFormula {
  readonly sheet: string;
  readonly area: Area;
  readonly formula: string;
  readonly values: readonly (readonly Scalar[])[];
  /** Release of the add-in that computed the values. */
  readonly release: string;
}

const headers = ["Sheet", "Cell", "Formula", "Value", "Release"];
const firstRow = 4;

/**
 * Reads the register: one row a cell; a row without a formula belongs to the one above it.
 *
 * Rows that people broke are passed over: the values they spoke of stand in the sheet all the same.
 */
export function readRegister({ sheets }: WorkbookSnapshot): RegisteredFormula[] {
  const register = sheets.find(({ name }) => sameSheetName(name, registerName));
  const found: { sheet: string; formula: string; release: string; cells: { row: number; column: number; value: Scalar }[] }[] = [];
  for (const line of register?.values.slice(firstRow) ?? []) {
    const [sheet, address, formula, value = null, release] = line;
    const place = typeof address === "string" ? parseCell(address) : null;
    if (typeof sheet !== "string" || place === null || (value !== null && typeof value === "object")) continue;
    if (typeof formula === "string" && formula.startsWith("=")) found.push({ sheet, formula, release: typeof release === "string" ? release : "", cells: [] });
    found.at(-1)?.cells.push({ ...place, value });
  }
  return found.flatMap(({ cells, ...one }) => {
    const first = cells[0]!;
    const last = cells.at(-1)!;
    const area = { row: first.row, column: first.column, rows: last.row - first.row + 1, columns: last.column - first.column + 1 };
    if (area.rows * area.columns !== cells.length) return [];
    return [{ ...one, area, values: Array.from({ length: area.rows }, (_, row) => cells.slice(row * area.columns, (row + 1) * area.columns).map(({ value }) => value)) }];
  });
}

/** Plans the edits that make the register say `entries`: adds its sheet, writes over it, or takes it away with the last entry. */
export function registerEdits({ sheets }: WorkbookSnapshot, entries: readonly RegisteredFormula[]): Edit[] {
  const before = sheets.find(({ name }) => sameSheetName(name, registerName));
  if (entries.length === 0) return before === undefined ? [] : [{ kind: "delete-sheet", sheet: before.name }];
  const rows = entries.flatMap(registerRows);
  if (before === undefined) return [{ kind: "add-sheet", plan: registerPlan(rows) }];
  return [{ kind: "write", sheet: before.name, row: firstRow, column: 0, cells: [...rows, ...surplus(before, rows.length)] }];
}

function registerRows({ sheet, area, formula, values, release }: RegisteredFormula): Cell[][] {
  return values.flatMap((line, y) =>
    line.map((value, x): Cell[] => [
      { value: sheet },
      { value: cellAddress({ row: area.row + y, column: area.column + x }) },
      y === 0 && x === 0 ? { value: formula } : {},
      value === null ? {} : { value },
      { value: release },
    ]),
  );
}

function surplus({ values }: SheetSnapshot, rows: number): Cell[][] {
  return Array.from({ length: Math.max(0, values.length - firstRow - rows) }, () => headers.map(() => ({})));
}

function registerPlan(rows: readonly (readonly Cell[])[]): SheetPlan {
  return {
    name: registerName,
    styles: { title: { bold: true, fontSize: 14 }, head: { bold: true, border: "bottom" } },
    columnWidths: [24, 10, 60, 24, 10],
    freeze: { rows: firstRow, columns: 0 },
    rows: [
      [{ value: "Formulas turned into values", style: "title" }],
      [{ value: "The pane turns them back from here. A cell whose value was changed since is left alone. Do not edit this sheet." }],
      [],
      headers.map((value) => ({ value, style: "head" })),
      ...rows,
    ],
  };
}
