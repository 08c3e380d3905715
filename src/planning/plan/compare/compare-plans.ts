import { foldName } from "../../text";
import { cellOf, textOf, type PlanTables, type ReadTable } from "../read";
import { columnsOf, nameColumn, tableKeys, tables, type TableKey } from "../schema";

/** A cell of a row that stands in both plans and says something else in each. */
export interface CellDifference {
  readonly header: string;
  /** Column of the sheet of the newer plan, from 0; null where its table has no such column. */
  readonly column: number | null;
  readonly before: string;
  readonly now: string;
}

/** A row that is new, that is gone, or that says something else. */
export interface RowDifference {
  readonly kind: "added" | "gone" | "changed";
  /** What names the row, such as `mill-1, 0, 1`. */
  readonly row: string;
  /** Where it stands in the newer plan, from 0; null where it is gone. */
  readonly at: { readonly sheet: string; readonly row: number } | null;
  readonly cells: readonly CellDifference[];
}

/** What is different in the rows of one table. */
export interface PlanDifferences {
  readonly table: string;
  readonly rows: readonly RowDifference[];
}

type Line = ReadTable["rows"][number];

/**
 * By what a row is found again, table by table: the first list that finds its row counts. Tables that are not here go by their name column.
 * Rows of one name are taken in their order, so that a second one is never lost.
 */
const identities: Readonly<Partial<Record<TableKey, readonly (readonly string[])[]>>> = {
  arrays: [["id"], ["array"]],
  jobs: [["id"], ["job"]],
  links: [["from", "to"]],
  ports: [["array", "controller", "port", "network"], ["array", "controller", "port"]],
  hostPorts: [["host", "card", "network"], ["host", "card"]],
  modelPorts: [["model", "controller", "port"]],
  driveSets: [["array", "set"]],
  access: [["volume", "to"]],
  shelves: [["array", "shelf"]],
  drives: [["array", "shelf", "bay", "serial"], ["array", "shelf", "bay"]],
  procedures: [["procedure", "section"]],
  prompts: [["model", "order"], ["model", "prompt"]],
};

/**
 * Lists what is different in a plan against an earlier one, table by table and row by row, the user's own columns included.
 *
 * Columns of formulas are left out, as they follow from the others. A table that one of the plans lacks has no rows in it.
 */
export function comparePlans(before: PlanTables, now: PlanTables): PlanDifferences[] {
  return tableKeys
    .map((key) => ({ table: tables[key].name, rows: compareTable(key, before[key], now[key]) }))
    .filter(({ rows }) => rows.length > 0);
}

function compareTable(key: TableKey, before: ReadTable | null, now: ReadTable | null): RowDifference[] {
  const later = now?.rows ?? [];
  const { partners, left } = pair(key, before?.rows ?? [], later);
  const columns = comparedColumns(key, before?.rows[0], now);
  const standing = later.flatMap((row): RowDifference[] => {
    const [partner, at] = [partners.get(row), { sheet: now!.sheet, row: row.row }];
    if (partner === undefined) return [{ kind: "added", row: labelOf(key, row), at, cells: [] }];
    const cells = columns.flatMap(({ before: earlier, now: header, column }): CellDifference[] => {
      const [was, is] = [textUnder(partner, earlier), textUnder(row, header)];
      return was === is ? [] : [{ header: header ?? earlier!, column, before: was, now: is }];
    });
    return cells.length === 0 ? [] : [{ kind: "changed", row: labelOf(key, row), at, cells }];
  });
  return [...standing, ...left.map((row): RowDifference => ({ kind: "gone", row: labelOf(key, row), at: null, cells: [] }))];
}

/** Finds for rows of the newer plan those of the earlier one, and what is left of that. */
function pair(key: TableKey, before: readonly Line[], now: readonly Line[]): { readonly partners: ReadonlyMap<Line, Line>; readonly left: readonly Line[] } {
  const partners = new Map<Line, Line>();
  const left = new Set(before);
  for (const columns of identities[key] ?? [[nameColumn(key)]]) {
    const waiting = new Map<string, Line[]>();
    for (const row of left) {
      const identity = identityOf(row, columns);
      if (identity !== "") waiting.set(identity, [...(waiting.get(identity) ?? []), row]);
    }
    for (const row of now) {
      const found = partners.has(row) ? undefined : waiting.get(identityOf(row, columns))?.shift();
      if (found === undefined) continue;
      partners.set(row, found);
      left.delete(found);
    }
  }
  return { partners, left: [...left] };
}

/** Joins what a row is found by; "" where the first of it is blank. */
function identityOf(row: Line, columns: readonly string[]): string {
  const [first = "", ...rest] = columns.map((column) => foldName(shownIn(row, column)));
  return first === "" ? "" : [first, ...rest].join("\n");
}

/** Names a row by what people know it by, which are the last columns of the list. */
function labelOf(key: TableKey, row: Line): string {
  const columns = identities[key]?.at(-1) ?? [nameColumn(key)];
  return columns.map((column) => shownIn(row, column)).filter((text) => text !== "").join(", ");
}

function shownIn(row: Line, column: string): string {
  const cell = cellOf(row, column);
  return typeof cell === "number" ? String(cell) : textOf(row, column);
}

/** Pairs the headers of both plans, whatever their case; formulas are left out. */
function comparedColumns(key: TableKey, before: Line | undefined, now: ReadTable | null) {
  const formulas = new Set(columnsOf(key).flatMap(([, { kind, header }]) => (kind === "formula" ? [foldName(header)] : [])));
  const [earlier, later] = [headersOf(before), headersOf(now?.rows[0])];
  const ours = new Map(columnsOf(key).map(([name, { header }]) => [foldName(header), name]));
  return [...new Set([...later.keys(), ...earlier.keys()])]
    .filter((folded) => !formulas.has(folded))
    .map((folded) => ({ before: earlier.get(folded), now: later.get(folded), column: now?.columns[ours.get(folded) ?? ""] ?? null }));
}

function headersOf(row: Line | undefined): ReadonlyMap<string, string> {
  return new Map(Object.keys(row?.shown ?? {}).map((header) => [foldName(header), header]));
}

function textUnder({ shown }: Line, header: string | undefined): string {
  return header === undefined ? "" : (shown[header] ?? "").trim();
}
