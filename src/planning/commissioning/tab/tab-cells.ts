import type { Cell, Scalar } from "../../../sheet";
import { shownColumns, tabColumnKeys, type TabColumn } from "./tab-columns";
import type { TabStyle } from "./tab-styles";

/** The cells of one row of a tab by column; columns that are not named stay empty. */
export type TabCells = Partial<Record<TabColumn, Cell>>;

/** Lays out a row in the order of the columns. A blank keeps its style only. */
export function rowOf(cells: TabCells): Cell[] {
  return tabColumnKeys.map((key) => withoutBlank(cells[key] ?? {}));
}

function withoutBlank(cell: Cell): Cell {
  return cell.formula === undefined && (cell.value === null || cell.value === "") ? { style: cell.style } : cell;
}

/** Makes a cell in a style of the tab. */
export function styled(value: Scalar, style: TabStyle): Cell {
  return { value, style };
}

/** Makes a cell of a hidden column; an empty one where there is nothing to say. */
export function hidden(value: Scalar): Cell {
  return value === null || value === "" ? {} : styled(value, typeof value === "string" ? "hiddenText" : "hidden");
}

/** Lays out the title of a block over the whole width; a tag in the key column lets it be found again. */
export function titleRow(title: string, tag: string | null = null, style: TabStyle = "section"): Cell[] {
  return rowOf({ ...inShownColumns(style), no: styled(title, style), key: hidden(tag) });
}

/** Lays out the labels above a block. */
export function labelRow(labels: Partial<Record<TabColumn, string>>): Cell[] {
  const cells = inShownColumns("label");
  for (const [key, label] of Object.entries(labels)) cells[key as TabColumn] = styled(label, "label");
  return rowOf(cells);
}

/** Gives every column that people see the same style. */
export function inShownColumns(style: TabStyle): TabCells {
  return Object.fromEntries(tabColumnKeys.slice(0, shownColumns).map((key) => [key, { style }]));
}
