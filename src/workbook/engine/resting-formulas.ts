import type { ICellData, IWorksheetData, Nullable, Worksheet } from "@univerjs/core";
import { areasMeet, parseAreas, type Area } from "../../sheet";
import { cellKind } from "./engine-values";
import { eachCell } from "./stored-sheet";

// Computing costs the engine a fifth of a millisecond and some kilobytes a formula, and most formulas of a new tab answer what is known
// before. Where nobody types, such a cell is a plain value to the engine, and its formula rests beside it until a cell it looks at is
// written.

/** Lays to rest the formulas of a sheet, not yet in the engine, whose results stand with them. */
export function restFormulas(sheet: Partial<IWorksheetData>): void {
  eachCell(sheet, (cell) => {
    if (!cell.f || cell.v === undefined) return;
    cell.custom = { ...cell.custom, resting: cell.f };
    delete cell.f;
  });
}

/**
 * Lays to rest all formulas of a sheet out of a file, if the program that saved it computed them. A formula without a result then answers
 * empty text, which a file cannot tell from no result; a sheet without any result was never computed, and its formulas stay live.
 */
export function restComputedFormulas(sheet: Partial<IWorksheetData>): void {
  const formulas: ICellData[] = [];
  eachCell(sheet, (cell) => {
    if (cell.f) formulas.push(cell);
  });
  if (formulas.every((cell) => cell.v === undefined)) return;
  for (const cell of formulas) if (cell.v === undefined) Object.assign(cell, { v: "", t: cellKind.text });
  restFormulas(sheet);
}

/** Reads the formula that rests beside a cell's value; null where none does. */
export function restingFormula(cell: Nullable<ICellData>): string | null {
  return (cell?.custom as { resting?: string } | null | undefined)?.resting ?? null;
}

/** Lists all cells of a sheet with resting formulas, each as one with a live formula, if any of these looks at one of the cells written; else nothing. */
export function wokenBy(written: Area, sheet: Worksheet): Record<number, Record<number, ICellData>> | null {
  const woken: Record<number, Record<number, ICellData>> = {};
  const formulas: string[] = [];
  sheet.getCellMatrix().forValue((row, column, cell) => {
    const formula = restingFormula(cell);
    if (formula === null) return;
    (woken[row] ??= {})[column] = { f: formula, custom: null };
    formulas.push(formula);
  });
  return formulas.some((formula) => referencesOf(formula).some((area) => areasMeet(area, written))) ? woken : null;
}

function referencesOf(formula: string): Area[] {
  return parseAreas((formula.match(/\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?/gi) ?? []).join(" "));
}
