import { isBlank, showCell, type CellValue, type SheetSnapshot } from "../../../../sheet";
import { readTab, type TabReading } from "../../../commissioning/tab";
import { oncePer, type PlanModel } from "../../../plan/model";
import type { ReadTable } from "../../../plan/read";
import { tableKeys } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";
import { holdsSecret, isKeptInVault, isMixed, isPlainName } from "../../secret-text";
import { speaksOfSecret } from "../../secret-words";

export const storedSecret = {
  name: "stored-secret",
  family: "safety of secrets",
  weight: "stop",
  meaning:
    "No cell of the workbook holds a password, PIN, token or key: one whose header or neighbour speaks of it, in English or some thirty other languages, " +
    "or that says it itself, holds nothing but its place in a vault, such as vault:site/device.",
  check: (model: PlanModel) => {
    const planning = new Map<string, ReadTable[]>();
    for (const key of tableKeys) {
      const table = model.table(key);
      if (table !== null) planning.set(table.sheet, [...(planning.get(table.sheet) ?? []), table]);
    }
    const judged = oncePer(holdsSecret);
    const holds = (text: string): boolean => text !== "" && !isPlainName(text) && judged(text);
    return model.workbook.sheets.flatMap((sheet) => {
      const tables = planning.get(sheet.name) ?? [];
      const tab = tables.length === 0 ? readTab(sheet) : null;
      const isLooked = tab === null ? () => true : shownOn(tab);
      const places = [
        ...tables.flatMap((table) => suspectsInTable(model, sheet, table)),
        ...(tab === null ? suspectsBesideLabels(sheet, tables) : suspectsOnTab(tab)),
        ...placesIn(sheet, (cell, column) => typeof cell === "string" && isLooked(column) && holds(cell)),
      ];
      return [...new Map(places.map(({ row, column }) => [`${row} ${column}`, { sheet: sheet.name, row, column, sentence }])).values()].sort(
        (a, b) => a.row - b.row || a.column - b.column,
      ) satisfies Remark[];
    });
  },
} satisfies Rule;

// NOTE: a sentence never repeats what the cell holds.
const sentence = "This looks like a stored secret. Keep it in a vault, write its place there, such as vault:site/device, and change it, for it was seen.";

interface Place {
  readonly row: number;
  readonly column: number;
}

/** Text columns whose words are read as labels of the columns behind them. */
const labelled: Readonly<Record<string, readonly [label: string, value: string]>> = {
  prompts: ["prompt", "value"],
  settings: ["setting", "value"],
};

function isSuspect(cell: CellValue | undefined): boolean {
  return !isBlank(cell) && !isKeptInVault(cell);
}

function placesIn({ values }: SheetSnapshot, isOne: (cell: CellValue, column: number) => boolean): Place[] {
  const places: Place[] = [];
  for (const [row, line] of values.entries()) {
    for (let column = 0; column < line.length; column += 1) if (isOne(line[column]!, column)) places.push({ row, column });
  }
  return places;
}

/** Looks at a planning table: below headers that speak of a secret, behind the words that label another column, and at what secret steps expect. */
function suspectsInTable(model: PlanModel, sheet: SheetSnapshot, table: ReadTable): Place[] {
  const headers = sheet.values[table.headerRow] ?? [];
  const columns: number[] = [];
  for (let column = table.firstColumn; column <= table.lastColumn; column += 1) if (speaksOfSecret(showCell(headers[column]))) columns.push(column);
  const [label, value] = (labelled[table.key] ?? []).map((name) => table.columns[name]);
  const places: Place[] = [];
  for (let row = table.headerRow + 1; row <= table.lastRow; row += 1) {
    const line = sheet.values[row] ?? [];
    const suspects = label !== undefined && value !== undefined && speaksOfSecret(showCell(line[label])) ? [...columns, value] : columns;
    for (const column of suspects) if (isSuspect(line[column])) places.push({ row, column });
  }
  if (table.key !== "steps") return places;
  const { expect, makersGuide } = model.plan.steps?.columns ?? {};
  const steps = model.rows("steps").filter((step) => speaksOfSecret(step.do));
  return [
    ...places,
    ...steps.flatMap(({ row, expect: text }) => (expect !== undefined && isBareSecret(text) ? [{ row, column: expect }] : [])),
    ...steps.flatMap(({ row, makersGuide: text }) => (makersGuide !== undefined && isBareSecret(text) ? [{ row, column: makersGuide }] : [])),
  ];
}

/** Tells whether a cell beside a sentence about secrets is one itself: a single word that mixes letters and other marks. */
function isBareSecret(cell: CellValue | undefined): boolean {
  return typeof cell === "string" && /^\s*\S+\s*$/.test(cell) && isMixed(cell.trim()) && !isKeptInVault(cell);
}

/** Looks at the steps of a commissioning tab that speak of secrets: where the entry of a vault is asked for nothing else may stand. */
function suspectsOnTab({ steps, places: { columns } }: TabReading): Place[] {
  return steps.flatMap(({ row, step, subject, kind, expected, typed }) => {
    // What a console asks stands under For: there the step itself says nothing of a secret.
    const isAsked = kind === "text" && speaksOfSecret(subject);
    if (!isAsked && !speaksOfSecret(step)) return [];
    const asksForVault = isAsked || (kind === "text" && /\bvault\b/i.test(step));
    const suspects: [number | undefined, boolean][] = [
      [columns.found, (asksForVault && isSuspect(typed.found)) || isBareSecret(typed.found)],
      [columns.note, isBareSecret(typed.note)],
      [columns.expected, isBareSecret(expected)],
    ];
    return suspects.flatMap(([column, is]) => (column !== undefined && is ? [{ row, column }] : []));
  });
}

/** Tells which columns of a tab people see: the others repeat what stands in these. */
function shownOn({ places: { columns } }: TabReading): (column: number) => boolean {
  const hidden = new Set([columns.key, columns.built, columns.digest]);
  return (column) => !hidden.has(column);
}

/** A label has at most so many words and signs, and ends in no full stop: sentences are no labels. */
const labelWords = 8;
const labelLength = 60;

/**
 * Looks, beside planning tables and on any other sheet, for labels that speak of a secret: behind a label by itself stands its value, next to it
 * or further on; below one in a row of headers, and below one with nothing behind it, its column.
 */
function suspectsBesideLabels(sheet: SheetSnapshot, tables: readonly ReadTable[]): Place[] {
  const isInTable = (row: number): boolean => tables.some(({ headerRow, lastRow }) => row >= headerRow && row <= lastRow);
  const beside = sheet.values.flatMap((line, row) => (isInTable(row) ? [] : [{ line, row }]));
  return beside.flatMap(({ line, row }) =>
    line.flatMap((cell, column): Place[] => {
      if (typeof cell !== "string" || !isLabel(cell)) return [];
      const behind = line.findIndex((one, at) => at > column && !isBlank(one));
      const isHeader = line.filter((one) => !isBlank(one)).length > 2 || (behind < 0 && line.some((one, at) => at < column && !isBlank(one)));
      if (isHeader) return below(sheet, row, column);
      if (behind >= 0) return isSuspect(line[behind]) && !isLabel(showCell(line[behind])) ? [{ row, column: behind }] : below(sheet, row, column);
      return typeof sheet.values[row + 1]?.[column] === "string" && /^\s*\S+\s*$/.test(showCell(sheet.values[row + 1]![column])) ? below(sheet, row, column).slice(0, 1) : [];
    }),
  );
}

function isLabel(text: string): boolean {
  const label = text.trim();
  return label.length <= labelLength && label.split(/\s+/).length <= labelWords && !/[.,]$/.test(label) && speaksOfSecret(label) && !holdsSecret(label) && !isKeptInVault(label);
}

function below(sheet: SheetSnapshot, header: number, column: number): Place[] {
  const places: Place[] = [];
  for (let row = header + 1; row < sheet.values.length && sheet.values[row]!.some((cell) => !isBlank(cell)); row += 1) {
    if (isSuspect(sheet.values[row]![column])) places.push({ row, column });
  }
  return places;
}
