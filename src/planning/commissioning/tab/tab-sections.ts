import { isBlank, type SheetSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import { rowsOfSteps, type StepRow } from "../record";
import { shownColumns, tabColumnKeys, tags } from "./tab-columns";
import type { TabReading } from "./tab-reading";

/** A section of a tab as a reader of it sees it. */
export interface TabSection {
  /** Heading of the visit that begins with it; "" where none does. */
  readonly visit: string;
  readonly title: string;
  readonly rows: readonly StepRow[];
}

/** Parts the steps of a tab by the headings above them; steps without a heading, as of a tab that was sorted, come in a section without title. */
export function readSections(sheet: Pick<SheetSnapshot, "values">, tab: TabReading): TabSection[] {
  const rows = new Map(rowsOfSteps(tab.steps).map((stepRow) => [stepRow.row, stepRow]));
  const sections: { readonly visit: string; readonly title: string; readonly rows: StepRow[] }[] = [];
  let above: string[] = [];
  for (let row = tab.headerRow + 1; row < tab.places.snagsRow; row += 1) {
    const stepRow = rows.get(row);
    const heading = headingIn(sheet, tab, row);
    if (heading === "") above = [];
    else if (heading !== null) above.push(heading);
    if (stepRow === undefined) continue;
    // Of two headings in a row the first is that of the visit.
    if (above.length > 0 || sections.length === 0) sections.push({ visit: above.at(-2) ?? "", title: above.at(-1) ?? "", rows: [] });
    above = [];
    sections.at(-1)!.rows.push(stepRow);
  }
  return sections;
}

/** Reads the heading that a row is; "" where nothing stands in it, null where something else does. */
function headingIn({ values }: Pick<SheetSnapshot, "values">, { places: { columns } }: TabReading, row: number): string | null {
  const filled = tabColumnKeys.slice(0, shownColumns + 1).filter((key) => columns[key] !== undefined && !isBlank(values[row]?.[columns[key]]));
  if (filled.length === 0) return "";
  const cell = columns.no === undefined ? null : values[row]?.[columns.no];
  const tag = columns.key === undefined ? null : values[row]?.[columns.key];
  // Beside the words of its first steps, or, as tabs were built before, alone.
  return typeof cell === "string" && !isBlank(cell) && (filled.length === 1 || tag === tags.grid || tag === tags.words) ? canonicalText(cell) : null;
}
