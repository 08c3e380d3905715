import type { Area } from "./area";
import { areaAddress } from "./cell-address";
import { formulaTokens } from "./formula-tokens";
import { foldSheetName, quoteSheetName } from "./sheet-name";

/** A table as formulas speak of it: its first row is the header, unless it has none, and its last ones may be totals. */
export interface TableOnSheet {
  readonly name: string;
  readonly sheet: string;
  readonly area: Area;
  readonly headerRows: number;
  readonly totalRows: number;
  /** Blank where nobody knows what a column is called. */
  readonly headers: readonly string[];
}

/** Parts of a table that a formula may ask for. */
interface Parts {
  readonly sections: readonly string[];
  /** First and last column by their headers; null for all. */
  readonly columns: readonly [first: string, last: string] | null;
  readonly ofThisRow: boolean;
}

/**
 * Writes the cells that a formula means by a table, its columns and its rows in their place, for an engine that knows no tables: `Arrays[Drives]`
 * becomes `Arrays!$K$2:$K$9`. What the table does not have becomes a place beyond its last column, which is `#REF!` and is looked at again when the
 * table changes. What is no table stays as it is.
 *
 * `ownRow` may write the cell of the formula's own row as the engine knows it. ECMA-376 part 1, section 18.17.2.7 (structured references).
 */
export function withCellsOfTables(formula: string, tableNamed: (name: string) => TableOnSheet | undefined, ownRow: OwnRow = () => null): string {
  const tokens = formulaTokens(formula);
  let [written, changes] = ["", false];
  for (let at = 0; at < tokens.length; at += 1) {
    const { kind, text } = tokens[at]!;
    const table = kind === "name" && tokens[at - 1]?.kind !== "sheet" ? tableNamed(text) : undefined;
    const next = tokens[at + 1];
    const inside = next?.kind === "bracket" ? next.text : "[]";
    if (table !== undefined && inside === next?.text) at += 1;
    written += table === undefined ? text : cellsOf(table, inside, ownRow);
    changes ||= table !== undefined;
  }
  return changes ? written : formula;
}

/** Writes the cell of a column, by its place in the table, in the row of the formula; null where it is to be looked up. */
export type OwnRow = (table: TableOnSheet, column: number) => string | null;

function cellsOf(table: TableOnSheet, bracket: string, ownRow: OwnRow): string {
  const { sections, columns, ofThisRow } = partsOf(bracket.slice(1, -1));
  const { area, headers } = table;
  const places = columns?.map((wanted) => headers.findIndex((header) => foldSheetName(header) === foldSheetName(wanted))) ?? [0, area.columns - 1];
  const rows = sections.map((section) => rowsOf(section, table));
  const [first, last] = [Math.min(...rows.map((one) => one?.[0] ?? NaN)), Math.max(...rows.map((one) => one?.[1] ?? NaN))];
  const on = (cells: Area) => `${quoteSheetName(table.sheet)}!${fixed(areaAddress(cells))}`;
  if (places.includes(-1) || !(last >= first)) return `INDEX(${on(area)},1,${area.columns + 1})`;
  const width = Math.abs(places[0]! - places[1]!) + 1;
  const cells = on({ row: area.row + first, column: area.column + Math.min(...places), rows: last - first + 1, columns: width });
  if (!ofThisRow) return cells;
  const known = width === 1 ? ownRow(table, places[0]!) : null;
  return known ?? `INDEX(${cells},ROW()-${area.row + first}${width > 1 ? ",0" : ""})`;
}

/** First and last row of a section, counted from the first of the table; null where the table has none, or the section is unknown. */
function rowsOf(section: string, { area: { rows }, headerRows, totalRows }: TableOnSheet): readonly [number, number] | null {
  switch (section.toLowerCase()) {
    case "#all":
      return [0, rows - 1];
    case "#headers":
      return headerRows === 0 ? null : [0, 0];
    case "#data":
      return [headerRows, rows - 1 - totalRows];
    case "#totals":
      return totalRows === 0 ? null : [rows - totalRows, rows - 1];
    default:
      return null;
  }
}

function partsOf(inside: string): Parts {
  const items = splitAtTop(inside, ",").map((item) => item.trim()).filter((item) => item !== "");
  // A single name needs no brackets of its own.
  const bare = items.length === 1 && !items[0]!.startsWith("[") && !items[0]!.startsWith("@");
  const isSection = (item: string) => nameIn(item).startsWith("#") && !item.startsWith("['") && !item.startsWith("'");
  const asked = bare ? [`[${items[0]!}]`] : items;
  const sections = asked.filter(isSection).map(nameIn);
  const at = asked.find((item) => item.startsWith("@"));
  const ofThisRow = at !== undefined || sections.some((section) => /^#this row$/i.test(section));
  const columns = at?.slice(1) ?? asked.find((item) => !isSection(item));
  const [from, to] = columns === undefined || columns === "" ? [] : splitAtTop(columns, ":").map((end) => unescaped(nameIn(end.trim())));
  return {
    sections: ofThisRow || sections.length === 0 ? ["#Data"] : sections,
    columns: from === undefined ? null : [from, to ?? from],
    ofThisRow,
  };
}

function nameIn(item: string): string {
  return item.startsWith("[") && item.endsWith("]") ? item.slice(1, -1) : item;
}

/** An apostrophe stands before a character that would mean something else. */
function unescaped(name: string): string {
  return name.replace(/'(.)/gsu, "$1");
}

/** Splits a text at a sign that stands in no brackets. */
function splitAtTop(text: string, sign: string): string[] {
  const parts = [""];
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const one = text[at]!;
    if (one === "'") {
      parts.push(`${parts.pop()!}${one}${text[at + 1] ?? ""}`);
      at += 1;
      continue;
    }
    depth += one === "[" ? 1 : one === "]" ? -1 : 0;
    if (one === sign && depth === 0) parts.push("");
    else parts.push(parts.pop()! + one);
  }
  return parts;
}

function fixed(address: string): string {
  return address.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
}
