import { isBlank, showCell, type SheetSnapshot } from "../../../../sheet";
import { readTab, type TabReading } from "../../../commissioning/tab";
import type { PlanModel } from "../../../plan/model";
import { tableKeys } from "../../../plan/schema";
import type { Remark, Rule } from "../../finding";

export const storedSecret: Rule = {
  name: "stored-secret",
  family: "safety of secrets",
  weight: "stop",
  meaning: "A cell whose header or neighbour speaks of a password or the like holds nothing but a vault: reference to where it is kept.",
  check: (model) => {
    const planning = new Set(tableKeys.map((key) => model.table(key)?.sheet));
    return [
      ...tableKeys.flatMap((key) => secretsInTable(model, key)),
      ...model.workbook.sheets.filter(({ name }) => !planning.has(name)).flatMap((sheet) => {
        const tab = readTab(sheet);
        return tab === null ? secretsBesideLabels(sheet) : secretsOnTab(tab);
      }),
    ];
  },
};

// NOTE: a sentence never repeats what the cell holds.
const sentence = "This looks like a stored secret. Keep it in a vault and write vault: and where it lies there; then change it, for it was seen.";

/** Text columns whose words are read as labels of the column behind them. */
const labelled: Readonly<Record<string, readonly [label: string, value: string]>> = {
  prompts: ["prompt", "value"],
  settings: ["setting", "value"],
};

/**
 * Tells whether a label speaks of a secret.
 *
 * Community alone is an everyday word: it counts where it ends the label or a string or name follows, and PIN only as a word of its own.
 */
function speaksOfSecret(label: string): boolean {
  return /pass\s?-?(word|phrase|code|wd)|\bpwd\b|secret|\bpin\b(?!\s*(out|number of))|community(\s+(string|name))?\s*[:?]?$|key\s?-?phrase|\bpre-?shared\b/i.test(label);
}

function isKept(cell: unknown): boolean {
  return typeof cell === "string" && /^\s*vault:\s*\S/i.test(cell);
}

function secretsInTable(model: PlanModel, key: (typeof tableKeys)[number]): Remark[] {
  const table = model.table(key);
  const sheet = table === null ? null : model.sheet(table.sheet);
  if (table === null || sheet === null) return [];
  const headers = sheet.values[table.headerRow] ?? [];
  const columns: number[] = [];
  for (let column = table.firstColumn; column <= table.lastColumn; column += 1) {
    if (speaksOfSecret(showCell(headers[column]))) columns.push(column);
  }
  const [label, value] = (labelled[key] ?? []).map((name) => table.columns[name]);
  if (columns.length === 0 && label === undefined) return [];
  const remarks: Remark[] = [];
  for (let row = table.headerRow + 1; row <= table.lastRow; row += 1) {
    const line = sheet.values[row] ?? [];
    const suspects = label !== undefined && value !== undefined && speaksOfSecret(showCell(line[label])) ? [...columns, value] : columns;
    for (const column of suspects) {
      if (!isBlank(line[column]) && !isKept(line[column])) remarks.push({ sheet: sheet.name, row, column, sentence });
    }
  }
  return remarks;
}

/** Looks at the records of a commissioning tab that ask for an entry of the vault. */
function secretsOnTab({ sheet, steps, places }: TabReading): Remark[] {
  const column = places.columns.found;
  return column === undefined
    ? []
    : steps
        .filter(({ step, kind, typed }) => kind === "text" && /\bvault\b/i.test(step) && speaksOfSecret(step) && !isBlank(typed.found) && !isKept(typed.found))
        .map(({ row }) => ({ sheet, row, column, sentence }));
}

/** A label has at most so many words and ends in no full stop: sentences are no labels. */
const labelWords = 4;

/**
 * Looks at any other sheet for labels that speak of a secret: behind a label by itself stands its value; below one in a row of headers, its column.
 */
function secretsBesideLabels(sheet: SheetSnapshot): Remark[] {
  return sheet.values.flatMap((line, row) =>
    line.flatMap((cell, column): Remark[] => {
      if (typeof cell !== "string" || cell.length > 40 || !speaksOfSecret(cell) || isKept(cell)) return [];
      if (cell.trim().split(/\s+/).length > labelWords || /[.,]$/.test(cell.trim())) return [];
      const isHeader = line.filter((one) => !isBlank(one)).length > 2;
      const values = isHeader ? below(sheet, row, column) : [{ row, column: column + 1 }];
      return values
        .filter((place) => !isBlank(sheet.values[place.row]?.[place.column]) && !isKept(sheet.values[place.row]?.[place.column]))
        .map((place) => ({ sheet: sheet.name, ...place, sentence }));
    }),
  );
}

function below(sheet: SheetSnapshot, header: number, column: number): { readonly row: number; readonly column: number }[] {
  const places: { readonly row: number; readonly column: number }[] = [];
  for (let row = header + 1; row < sheet.values.length && sheet.values[row]!.some((cell) => !isBlank(cell)); row += 1) places.push({ row, column });
  return places;
}
