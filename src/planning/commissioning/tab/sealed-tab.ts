import { isBlank, sheetSize, type CellValue, type SheetSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import { isReopened, type SealLine } from "../record";
import { cellToken, checkSeal, sealVersion, tokens, type RowCode, type SealCheck, type SealedRow } from "../seal";
import { readBuilt, readDigest, rowCodes } from "./coded-columns";
import { rowLabels, slotHeaders } from "./row-labels";
import { cellNumber, formulaAt, sheetColumns } from "./sheet-columns";
import { sealColumns, tags, type TabColumn } from "./tab-columns";
import { sealCountColumn } from "./tab-mark";
import type { TabReading } from "./tab-reading";
import { showsSame, twinCells } from "./twin-cells";

/**
 * Lists every row of a tab in which something stands, as a seal covers it: all cells but the digests that a sealing writes.
 *
 * Of `line`, the seal that is checked, what the sealing itself writes is left out; the count of the seals is an entry while it is right. A formula of ours counts for what it is while it shows what it
 * must or was not computed: other programs rewrite its text. In any other cell a formula counts with what it shows, so that it is no value.
 */
export function sealedRows(sheet: SheetSnapshot, tab: TabReading, line?: SealLine): SealedRow[] {
  const { columns } = tab.places;
  const labelOf = rowLabels(tab);
  const headers = slotHeaders(tab);
  const twin = new Map(twinCells(sheet, tab).map(({ row, column, value }) => [cellNumber(row, column), value]));
  const all = sheetColumns(sheet, tab.headerRow, columns);
  const ofTheSeal = new Set<TabColumn | null>(line === undefined ? [] : ["key", ...sealParts(line)]);
  return sheet.values.flatMap((values, row): SealedRow[] => {
    const built = columns.built === undefined ? null : readBuilt(values[columns.built]);
    const cells = all.flatMap(({ column, key, name }): [string, string][] => {
      const value = values[column] ?? null;
      const hasFormula = formulaAt(sheet, row, column) !== null;
      if (key === "digest" || (row === line?.row && !hasFormula && ofTheSeal.has(key))) return [];
      // It is written behind the line: a sealing that broke off in between has not counted itself.
      if (row === tab.markRow && key === sealCountColumn && !hasFormula && (value === tab.seals.length || value === tab.seals.length - 1)) return [[name, tokens.entry]];
      const right = twin.get(cellNumber(row, column));
      const isOurs = key !== null && hasFormula && (right !== undefined || built?.isFormula(key) === true);
      const showsRight = isOurs && (isBlank(value) || showsSame(value, right ?? (value === 0 ? 0 : "")));
      const token = showsRight ? tokens.formula : cellToken(value, hasFormula);
      return token === "" ? [] : [[name, token]];
    });
    // A formula that shows a digest is none.
    const digest = columns.digest === undefined || (sheet.formulas[row]?.[columns.digest] ?? null) !== null ? null : values[columns.digest];
    const sealed = row === tab.headerRow ? headerDigest(sheet, tab, line, cells) : row === line?.row ? null : readDigest(digest);
    return cells.length === 0 && sealed === null ? [] : [{ row, label: labelOf(row), headers: headers.get(row), cells: new Map(cells), sealed }];
  });
}

/** Reads what the row of the headers held when the tab was sealed: the seal has it, as the header of Digest stands in the way. Without it, it is as it was. */
function headerDigest(sheet: SheetSnapshot, { places: { columns } }: TabReading, line: SealLine | undefined, cells: readonly (readonly [string, string])[]): SealedRow["sealed"] {
  const scope = line === undefined || columns.digest === undefined ? null : readScope(sheet.values[line.row]?.[columns.digest]);
  const code = scope?.header ?? rowCodes.read(rowCodes.write(new Map(cells)));
  return code === null ? null : { sealedRow: headerSealed, code };
}

/** In place of the row in which the headers stood. */
const headerSealed = -1;

/** Columns of what a sealing writes into its line, and of what reopens it. */
function sealParts(line: SealLine): TabColumn[] {
  const { sealed, code, by, reopened, reopenedBy, reason } = sealColumns;
  return isReopened(line) ? [sealed, code, by, reopened, reopenedBy, reason] : [sealed, code, by];
}

/** Holds a tab against its last seal; null where it was never sealed. A seal without its line has left digests in the rows. */
export function checkTabSeal(sheet: SheetSnapshot, tab: TabReading): SealCheck | null {
  const line = tab.seals.at(-1);
  if (line === undefined) return hasDigests(sheet, tab) ? { code: "", reopened: false, holds: false, changed: [{ row: tab.places.sealsRow, column: 0, label: lineGone }] } : null;
  const { sealed, by, code } = line.typed;
  const { columns } = tab.places;
  const cell = (key: TabColumn): CellValue => (columns[key] === undefined ? null : (sheet.values[line.row]?.[columns[key]] ?? null));
  const hasFormula = columns.digest !== undefined && (sheet.formulas[line.row]?.[columns.digest] ?? null) !== null;
  const hasHidden = canonicalText(cell("key")) === tags.seal && !hasFormula;
  return checkSeal({
    rows: sealedRows(sheet, tab, line),
    note: { sealed: canonicalText(sealed), by: canonicalText(by) },
    code: canonicalText(code),
    isReopened: isReopened(line),
    scope: hasHidden ? readScope(cell("digest")) : null,
    row: line.row,
    columns: sheetColumns(sheet, tab.headerRow, columns),
  });
}

/** What digests without a seal say: either of the two, as a sealing writes its line last. */
const lineGone = "The line of the seal, which is gone, or whose sealing broke off";

function hasDigests({ values }: SheetSnapshot, { headerRow, places: { columns: { digest } } }: TabReading): boolean {
  return digest !== undefined && values.some((line, row) => row > headerRow && readDigest(line[digest]) !== null);
}

/** Writes version and rows of a seal and the codes of the headers, such as `1 1,3-12,14-40 AAAAABBBBB`, rows as the sheet counts them. */
export function scopeText(rows: readonly Pick<SealedRow, "row" | "cells">[], headerRow: number): string {
  const spans: [number, number][] = [];
  for (const { row } of rows) {
    const last = spans.at(-1);
    if (row === headerRow) continue;
    if (last?.[1] === row - 1) last[1] = row;
    else spans.push([row, row]);
  }
  const header = rows.find(({ row }) => row === headerRow);
  const listed = spans.map(([first, last]) => (first === last ? `${first + 1}` : `${first + 1}-${last + 1}`)).join(",");
  return `${sealVersion} ${listed} ${rowCodes.write(header?.cells ?? new Map())}`;
}

/** What stands under Digest in the line of a seal. */
interface SealScope {
  readonly version: string;
  /** Rows of the sheet that were sealed, from 0, but for that of the headers. */
  readonly rows: readonly number[];
  readonly header: RowCode | null;
}

function readScope(cell: CellValue | undefined): SealScope | null {
  const [, version, spans, codes] = /^(\d+) ([\d,-]+) (\S+)$/.exec(canonicalText(cell)) ?? [];
  if (version === undefined || spans === undefined || codes === undefined) return null;
  const rows = spans.split(",").flatMap((span) => {
    const [first = 0, last = first] = span.split("-").map(Number);
    return Array.from({ length: Math.min(Math.max(last - first + 1, 0), sheetSize.rows) }, (_, index) => first - 1 + index);
  });
  return { version, rows, header: rowCodes.read(codes) };
}
