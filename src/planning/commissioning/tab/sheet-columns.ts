import { columnLetters, isBlank, type SheetSnapshot } from "../../../sheet";
import { canonicalText, invalid, quote } from "../../text";
import { tabColumnKeys, tabColumns, type TabColumn } from "./tab-columns";
import type { TabPlaces, TabReading } from "./tab-reading";

/** A column of a sheet with a tab, ours or people's own. */
export interface SheetColumn {
  readonly column: number;
  /** Key of one of ours; null for one that people added. */
  readonly key: TabColumn | null;
  /** Tells it from the others wherever it stands: the key, or + and the header that people wrote. */
  readonly name: string;
  /** Names it in a sentence. */
  readonly label: string;
}

/** Lists the columns of a sheet from left to right: ours, and those of people's own that hold something. */
export function sheetColumns(sheet: SheetSnapshot, headerRow: number, columns: TabPlaces["columns"]): SheetColumn[] {
  const width = sheet.values.reduce((most, line) => Math.max(most, line.length), 0);
  const keys = new Map(tabColumnKeys.flatMap((key) => (columns[key] === undefined ? [] : [[columns[key], key] as const])));
  const taken = new Map<string, number>();
  return Array.from({ length: width }, (_, column) => column).flatMap((column): SheetColumn[] => {
    const key = keys.get(column) ?? null;
    if (key !== null) return [{ column, key, name: key, label: tabColumns[key].header }];
    // Empty ones have no name of their own, and what is new in one would be told of all.
    if (!sheet.values.some((line, row) => !isBlank(line[column]) || (sheet.formulas[row]?.[column] ?? null) !== null)) return [];
    const header = canonicalText(sheet.values[headerRow]?.[column]);
    const count = taken.get(header) ?? 0;
    taken.set(header, count + 1);
    return [{ column, key, name: `+${header}${count === 0 ? "" : ` ${count}`}`, label: header === "" ? `Column ${columnLetters(column)}` : header }];
  });
}

/** Finds the formula of a cell; null where it has none. A tick that another program stores as TRUE() is the tick. */
export function formulaAt({ values, formulas }: SheetSnapshot, row: number, column: number): string | null {
  const formula = formulas[row]?.[column] ?? null;
  return typeof values[row]?.[column] === "boolean" && formula !== null && /^=(TRUE|FALSE)(\(\))?$/i.test(formula) ? null : formula;
}

/** Numbers a cell of a sheet, so that a set can hold it. */
export function cellNumber(row: number, column: number): number {
  return row * 16_384 + column;
}

/** Finds a column of a tab; refuses a tab that has lost its header. */
export function columnOf(tab: Pick<TabReading, "sheet" | "places">, column: TabColumn): number {
  const found = tab.places.columns[column];
  if (found !== undefined) return found;
  const { header } = tabColumns[column];
  throw invalid("tab", header, `The header ${quote(header)} of ${quote(tab.sheet)} is gone. Undo that, or write it back over its column.`);
}
