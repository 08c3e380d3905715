import { isBlank, showCell, type CellValue, type Scalar } from "../../../sheet";
import { foldName, invalid, Problem, quote } from "../../text";
import { appendRows, appendValues, noChanges, type CellWrite, type Changes } from "../changes";
import type { PlanModel } from "../model";
import { cellOf, readCell, type ReadTable } from "../read";
import { columnsOf, nameColumn, tables, type Column, type ColumnKey, type TableKey, type TableRow } from "../schema";
import type { List, ListRow } from "./list";
import type { Match } from "./match-columns";
import { readingOf, readListCell } from "./read-as";

/** How a list goes into a table. */
export interface Import {
  readonly table: TableKey;
  readonly list: List;
  /** By the columns of the list. */
  readonly matches: readonly Match[];
  /** Columns of the table by which rows are found again; none where every row is a new one. */
  readonly keyColumns: readonly string[];
}

/** What a list would change, and what of it cannot be taken. */
export interface ImportPlan {
  readonly changes: Changes;
  readonly added: number;
  readonly updated: number;
  /** A sentence for each cell or row that is left out. */
  readonly refused: readonly string[];
}

/** Tables whose rows have no name of their own: what tells one from the other. */
const severalTogether: { readonly [Key in TableKey]?: readonly ColumnKey<Key>[] } = {
  ports: ["array", "controller", "port"], hostPorts: ["host", "card", "network"], drives: ["array", "shelf", "bay"], shelves: ["array", "shelf"], driveSets: ["array", "set"], links: ["from", "to"],
  modelPorts: ["model", "controller", "port"], access: ["volume", "to"], quote: ["item", "for"], prompts: ["model", "order"], procedures: ["procedure", "section"],
};

/** Columns that may be blank in what tells rows apart. */
const mayBeBlank: ReadonlySet<string> = new Set(["shelf", "card", "controller", "for"]);

/** Lists by what rows of a table can be found again, the best first; each a column, or several together. */
export function waysToFind(key: TableKey): (readonly string[])[] {
  const together = severalTogether[key];
  if (together !== undefined) return [together];
  return [[nameColumn(key)], ...(columnsOf(key).some(([name]) => name === "serial") ? [["serial"]] : [])];
}

/**
 * Plans what a list changes in a table: rows that are found again by the key get what the list says otherwise, others are added, none is deleted.
 *
 * What a cell cannot take is left out and told; so is a row without its key, one whose key stands twice, and a cell in which a formula stands. A
 * blank cell of the list changes nothing. How the columns went is written into Lists, where the workbook has that table.
 */
export function planImport(model: PlanModel, { table: key, list, matches, keyColumns }: Import): ImportPlan {
  const table = model.table(key);
  if (table === null) throw invalid(tables[key].name, null, `The workbook has no table ${tables[key].name}. Set it up first.`);
  const columns = new Map(columnsOf(key));
  const into = matches.flatMap(({ column, readAs }, at) => {
    const described = column === null ? undefined : columns.get(column);
    if (column === null || described === undefined || table.columns[column] === undefined) return [];
    return [{ at, name: column, column: described, readAs: readingOf(described, list.rows.map(({ cells }) => cells[at] ?? null), readAs) }];
  });
  const twice = into.find(({ name }, at) => into.findIndex((one) => one.name === name) < at);
  if (twice !== undefined) throw invalid(twice.column.header, null, `Two columns of the list go to ${twice.column.header}. Leave one of them out.`);
  const lacking = keyColumns.find((name) => !mayBeBlank.has(name) && !into.some((one) => one.name === name));
  if (lacking !== undefined) {
    throw invalid("key", null, `Rows are to be found by ${columns.get(lacking)?.header ?? lacking}, and no column of the list goes there. Choose one, or let all rows be new.`);
  }
  const refused: string[] = list.leftOut.map((row) => `Row ${row.number} looks like a total and is left out.`);
  const standing = rowsByKey(model, key, keyColumns);
  const writes: CellWrite[] = [];
  const added: Readonly<Record<string, Scalar>>[] = [];
  const seen = new Set<string>();
  let updated = 0;
  for (const row of list.rows) {
    const values = readRow(row, into, refused);
    const parts = keyColumns.map((name) => showCell(values.get(name)).trim());
    const name = keyColumns.length === 0 ? null : keyOf(parts);
    if (name !== null) {
      const stands = standing.get(name)?.length ?? 0;
      const twice = seen.has(name) ? "stood in the list before" : stands > 1 ? `stands twice in ${tables[key].name}` : null;
      const isBlankKey = keyColumns.some((column, at) => parts[at] === "" && !mayBeBlank.has(column));
      const problem = isBlankKey ? "has no key" : twice === null ? null : `has the key ${quote(parts.filter((part) => part !== "").join(" "))}, which ${twice}`;
      if (problem !== null) {
        refused.push(`Row ${row.number} ${problem}, and is left out.`);
        continue;
      }
      seen.add(name);
    }
    if (values.size === 0) continue;
    const [found] = name === null ? [] : (standing.get(name) ?? []);
    if (found === undefined) added.push(Object.fromEntries(values));
    else {
      const changed = [...values].flatMap(([column, value]) => changeOf(model, table, found, column, columns.get(column)!, value, row, refused) ?? []);
      writes.push(...changed);
      if (changed.length > 0) updated += 1;
    }
  }
  const appended = appendValues(model.workbook, table, key, added);
  const kept = writes.length + added.length === 0 ? noChanges : keptMatches(model, key, list, matches);
  return {
    changes: { writes: [...writes, ...appended.writes, ...kept.writes], growths: [...appended.growths, ...kept.growths] },
    added: added.length,
    updated,
    refused,
  };
}

interface Into {
  readonly at: number;
  readonly name: string;
  readonly column: Column;
  readonly readAs: string;
}

function readRow({ number, cells }: ListRow, into: readonly Into[], refused: string[]): Map<string, Scalar> {
  const values = new Map<string, Scalar>();
  for (const { at, name, column, readAs } of into) {
    try {
      const value = readListCell(cells[at] ?? null, name, column, readAs);
      if (value !== null) values.set(name, value);
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      refused.push(`Row ${number}: ${thrown.sentence}`);
    }
  }
  return values;
}

function keyOf(parts: readonly string[]): string {
  return parts.map(foldName).join("\n");
}

function rowsByKey(model: PlanModel, key: TableKey, keyColumns: readonly string[]): ReadonlyMap<string, readonly { readonly row: number }[]> {
  const rows = new Map<string, { readonly row: number }[]>();
  if (keyColumns.length === 0) return rows;
  for (const row of model.rows(key)) {
    // As the cell shows it: bays and the order of prompts are numbers.
    const name = keyOf(keyColumns.map((column) => showCell(cellOf(row, column) as CellValue).trim()));
    rows.set(name, [...(rows.get(name) ?? []), row]);
  }
  return rows;
}

/** Changes one cell of a row that is there; null where it says so already. */
function changeOf(model: PlanModel, table: ReadTable, { row }: { readonly row: number }, name: string, column: Column, value: Scalar, { number }: ListRow, refused: string[]): CellWrite | null {
  const at = table.columns[name]!;
  const sheet = model.sheet(table.sheet);
  const now = sheet?.values[row]?.[at] ?? null;
  if (isSame(now, value, column)) return null;
  if ((sheet?.formulas[row]?.[at] ?? null) !== null) {
    refused.push(`Row ${number}: ${column.header} in row ${row + 1} of ${table.name} is a formula, which stays.`);
    return null;
  }
  return { sheet: table.sheet, row, column: at, before: now, value };
}

/** Tells whether two cells are read alike by their column: 8 TB is 8TB. */
function isSame(now: CellValue, value: Scalar, column: Column): boolean {
  // Sizes are read as whole bytes of any number.
  const read = (cell: CellValue) => JSON.stringify(readCell(cell, column), (_, part: unknown) => (typeof part === "bigint" ? String(part) : part));
  try {
    return read(now) === read(value);
  } catch (thrown) {
    if (thrown instanceof Problem) return false;
    throw thrown;
  }
}

/** Writes into Lists how the columns of a list went, where that is not known yet. */
function keptMatches(model: PlanModel, key: TableKey, { headers }: List, matches: readonly Match[]): Changes {
  const table = model.table("lists");
  if (table === null) return noChanges;
  const named = new Map(columnsOf(key));
  const rows = headers.map((header, at): TableRow<"lists"> => {
    const { column, readAs } = matches[at]!;
    return { header, table: tables[key].name, column: column === null ? null : named.get(column)!.header, readAs: readAs === "" ? null : readAs };
  });
  const known = new Map(model.rowsWith("lists", "table", tables[key].name).map((row) => [foldName(row.header), row]));
  const writes = rows.flatMap((row): CellWrite[] => {
    const found = known.get(foldName(showCell(row.header)));
    if (found === undefined) return [];
    return (["column", "readAs"] as const).flatMap((name) => {
      const write = model.write({ table: "lists", row: found.row, column: name }, row[name] ?? null);
      return write === null || showCell(write.before) === showCell(row[name]) || (isBlank(write.before) && isBlank(row[name])) ? [] : [write];
    });
  });
  const fresh = rows.filter((row) => !known.has(foldName(showCell(row.header))));
  const appended = appendRows(model.workbook, table, "lists", fresh);
  return { writes: [...writes, ...appended.writes], growths: appended.growths };
}
