import { cellAddress, cellArea, foldSheetName, isBeingComputed, isInArea, sameSheetName, type Area, type Scalar, type SheetSnapshot, type WorkbookSnapshot } from "../sheet";
import type { Edit, WorkbookPort } from "../workbook/port";
import { callsOurs, withOurNames } from "./bay-formula";
import { cellsEdit, type PlacedCell } from "./cells-edit";
import { readRegister, registerEdits, registerName, type RegisteredFormula } from "./formula-register";

/** Which formulas are meant: those of the whole workbook, of a sheet, or of an area of it. */
export type FormulaScope = "workbook" | { readonly sheet: string; readonly area?: Area };

/** What was turned, and which cells were left as they are, with the reason. */
export interface TurnReport {
  /** How many formulas. */
  readonly turned: number;
  readonly left: readonly { readonly sheet: string; readonly cell: string; readonly reason: string }[];
}

/**
 * Turns every formula of ours in `scope` into the values it shows now, so that the workbook can go to people without the add-in.
 *
 * The register is written before the cells, so that nothing is lost where the host fails in between; a formula in it is never dropped
 * by turning again. A formula that shows an error, or whose cells hold one, is left a formula. `release` is that of the add-in.
 */
export async function turnIntoValues(port: WorkbookPort, scope: FormulaScope, release: string): Promise<TurnReport> {
  const workbook = await port.read();
  const candidates = ourFormulas(workbook, scope);
  const areas = await port.spillAreas(candidates);
  // A host may show the formula of a spilled table in every cell of it: only the first is one.
  const spilled = candidates.flatMap(({ sheet, row, column }, index) => (areas[index] ? [{ sheet, row, column, area: areas[index] }] : []));
  const isSpilled = (cell: FoundFormula) =>
    spilled.some(({ sheet, row, column, area }) => sheet === cell.sheet && (row !== cell.row || column !== cell.column) && isInArea(cell, area));
  const found = candidates.flatMap((cell, index) => (isSpilled(cell) ? [] : [{ ...cell, area: areas[index] ?? cellArea(cell) }]));
  const left: TurnReport["left"][number][] = [];
  const turned: RegisteredFormula[] = [];
  const writes = new Map<string, PlacedCell[]>();
  for (const { sheet, row, column, formula, area } of found) {
    const read = workbook.sheets.find(({ name }) => name === sheet)!;
    const values = valuesOf(read, area);
    if (values === null) {
      const isUnfinished = isBeingComputed(read.values[row]?.[column]);
      const reason = isUnfinished ? "it is still being computed; try again once it shows a result" : "it shows an error; mend it or re-enter it first";
      left.push({ sheet, cell: cellAddress({ row, column }), reason });
      continue;
    }
    turned.push({ sheet, area, formula: withOurNames(formula), values, release });
    place(writes, sheet, area, (y, x) => (values[y]![x] === null ? {} : { value: values[y]![x] }));
  }
  if (turned.length > 0) {
    const again = new Set(turned.map(keyOf));
    const entries = [...readRegister(workbook).filter((entry) => !again.has(keyOf(entry))), ...turned];
    await port.apply([...registerEdits(workbook, entries), ...editsOf(writes)]);
  }
  return { turned: turned.length, left };
}

/**
 * Turns the values of the register back into their formulas.
 *
 * A formula comes back only where every cell it filled still holds the value it had; others stay in the register and are named. Where
 * the formula is back already its entry is dropped. The register goes with its last entry.
 */
export async function turnBack(port: WorkbookPort): Promise<TurnReport> {
  const workbook = await port.read();
  const entries = readRegister(workbook);
  const left: TurnReport["left"][number][] = [];
  const kept: RegisteredFormula[] = [];
  const writes = new Map<string, PlacedCell[]>();
  let turned = 0;
  for (const entry of entries) {
    const { area, formula } = entry;
    const sheet = workbook.sheets.find(({ name }) => sameSheetName(name, entry.sheet));
    if (sheet !== undefined && withOurNames(sheet.formulas[area.row]?.[area.column] ?? "") === formula) continue;
    const reason = sheet === undefined ? "its sheet is gone or renamed" : holdsStill(sheet, entry) ? null : "its cells were changed since";
    if (reason !== null || sheet === undefined) {
      kept.push(entry);
      left.push({ sheet: entry.sheet, cell: cellAddress(area), reason: reason ?? "" });
      continue;
    }
    turned += 1;
    place(writes, sheet.name, area, (y, x) => (y === 0 && x === 0 ? { formula } : {}));
  }
  // The formulas first: an entry that is still there when its formula is back does no harm.
  if (kept.length < entries.length) await port.apply([...editsOf(writes), ...registerEdits(workbook, kept)]);
  return { turned, left };
}

interface FoundFormula {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** Lists the formulas of ours in `scope`, sheet by sheet in the order in which they are read. */
export function ourFormulas({ sheets }: WorkbookSnapshot, scope: FormulaScope): FoundFormula[] {
  return sheets
    .filter(({ name }) => !sameSheetName(name, registerName) && (scope === "workbook" || sameSheetName(name, scope.sheet)))
    .flatMap(({ name, formulas }) =>
      formulas.flatMap((line, row) =>
        line.flatMap((formula, column) => {
          const within = scope === "workbook" || scope.area === undefined || isInArea({ row, column }, scope.area);
          return formula !== null && within && callsOurs(formula) ? [{ sheet: name, row, column, formula }] : [];
        }),
      ),
    );
}

function valuesOf(sheet: SheetSnapshot, { row, column, rows, columns }: Area): Scalar[][] | null {
  const values = Array.from({ length: rows }, (_, y) => Array.from({ length: columns }, (__, x) => sheet.values[row + y]?.[column + x] ?? null));
  if (values.some((line) => line.some((value) => value !== null && typeof value === "object"))) return null;
  return values.map((line) => line.map((value) => (value === "" ? null : (value as Scalar))));
}

function holdsStill(sheet: SheetSnapshot, { area, values }: RegisteredFormula): boolean {
  const now = valuesOf(sheet, area);
  const written = (y: number, x: number) => (sheet.formulas[area.row + y]?.[area.column + x] ?? null) === null;
  return now !== null && values.every((line, y) => line.every((value, x) => value === now[y]![x] && written(y, x)));
}

function place(lists: Map<string, PlacedCell[]>, sheet: string, { row, column, rows, columns }: Area, cell: (y: number, x: number) => PlacedCell["cell"]): void {
  const list = lists.get(sheet) ?? [];
  lists.set(sheet, list);
  for (let y = 0; y < rows; y += 1) {
    for (let x = 0; x < columns; x += 1) list.push({ row: row + y, column: column + x, cell: cell(y, x) });
  }
}

function keyOf({ sheet, area }: RegisteredFormula): string {
  return `${foldSheetName(sheet)}!${area.row},${area.column}`;
}

function editsOf(writes: ReadonlyMap<string, readonly PlacedCell[]>): Edit[] {
  return [...writes].map(([sheet, cells]) => cellsEdit(sheet, cells));
}
