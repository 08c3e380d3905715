import { cellAddress, isBlank, isError, isoDateOf, longestText, showCell, type CellValue, type Scalar, type SheetSnapshot } from "../../../sheet";
import type { FoundText } from "../record";
import { cellToken } from "../seal";
import { readBuilt, readDigest } from "./coded-columns";
import { isOurFormula } from "./our-formulas";
import { rowLabels, slotHeaders } from "./row-labels";
import { cellNumber, formulaAt, sheetColumns } from "./sheet-columns";
import type { TabColumn } from "./tab-columns";
import type { TabReading } from "./tab-reading";
import { showsSame, twinCells } from "./twin-cells";

/**
 * Lists what people typed where no build looks for it: every cell that is not as its row says the build wrote it, and that is no entry.
 *
 * In the place of a formula of ours it is one, or another that shows something else. What is gone from a cell is not told.
 */
export function typedElsewhere(sheet: SheetSnapshot, tab: TabReading): FoundText[] {
  const { columns } = tab.places;
  const labelOf = rowLabels(tab);
  const headers = slotHeaders(tab);
  const twin = new Map(twinCells(sheet, tab).map(({ row, column, value }) => [cellNumber(row, column), value]));
  const all = sheetColumns(sheet, tab.headerRow, columns);
  const found: FoundText[] = [];
  // Plain loops: a plan of a hundred jobs has a million cells to look at.
  for (const [row, line] of sheet.values.entries()) {
    const built = readBuilt(columns.built === undefined ? null : line[columns.built]);
    for (const { column, key, name, label } of all) {
      const value = line[column] ?? null;
      const formula = formulaAt(sheet, row, column);
      if ((isBlank(value) && formula === null) || tab.entries.has(cellNumber(row, column)) || isOurText(key, value)) continue;
      // A header of ours that is not as it was is a fault of the tab.
      if (key !== null && row === tab.headerRow) continue;
      const isBuilt =
        key !== null && built !== null &&
        (built.isFormula(key)
          ? isAsComputed(value, formula, twin.get(cellNumber(row, column)))
          : built.holds(name, cellToken(value, formula !== null)));
      if (isBuilt) continue;
      const place = `${short(headers.get(row)?.get(name) ?? label)} of ${short(labelOf(row))} (${cellAddress({ row, column })})`;
      found.push({ typed: { from: `Build ${tab.build}`, text: textOf(value, formula), place }, carried: "", row });
    }
  }
  return found;
}

/** Tells whether a text is one of those that we write for ourselves. */
function isOurText(key: TabColumn | null, value: CellValue): boolean {
  return (key === "built" && readBuilt(value) !== null) || (key === "digest" && readDigest(value) !== null);
}

/** Tells whether the cell of a formula holds it still, or at least shows what it must; a row for snags that nobody filled shows nothing or 0. */
function isAsComputed(value: CellValue, formula: string | null, right: Scalar | undefined): boolean {
  if (showsSame(value, right ?? (value === 0 ? 0 : ""))) return true;
  return formula !== null && (isBlank(value) || isError(value) || isOurFormula(formula));
}

/** Days from 2000 to 2099. How a number is shown is not read: among these it is as likely a day as a quantity, and is told as both. */
const [firstLikelyDay, lastLikelyDay] = [36_526, 73_050];

/** Writes what a cell shows, with the formula behind it. */
function textOf(value: CellValue, formula: string | null): string {
  const day = typeof value === "number" && value >= firstLikelyDay && value < lastLikelyDay + 1 ? isoDateOf(value) : null;
  const shown = day === null ? showCell(value) : `${showCell(value)}, as a day ${day}`;
  const both = formula === null ? shown : `${shown} (formula ${formula.slice(1)})`.trim();
  return both.length > longestText ? shown : both;
}

/** Most characters that one part of a place is told in. */
const longestPart = 80;

function short(text: string): string {
  return text.length > longestPart ? `${text.slice(0, longestPart - 1)}…` : text;
}
