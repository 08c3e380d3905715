import { isBlank, type CellValue, type SheetSnapshot } from "../../../sheet";
import { invalid, quote } from "../../text";
import type { StepRecord } from "../record";
import { columnsInOrder, headersOf } from "./tab-layout";
import type { TabPlaces, TabReading } from "./tab-reading";

/** What of a tab says whether it can be trusted to be read as it was built. */
interface ReadParts {
  readonly sheet: SheetSnapshot;
  readonly jobId: string;
  readonly headerRow: number;
  readonly places: TabPlaces;
  readonly steps: readonly StepRecord[];
}

/**
 * Lists in sentences what keeps a tab from being read as it was built: a column whose header is gone, stands twice or is out of its place, and
 * a row of a step whose hidden key is gone or another's. Columns and rows that people added are none of these.
 */
export function tabFaults(parts: ReadParts): string[] {
  return [...columnFaults(parts), ...keyFaults(parts)];
}

function columnFaults({ sheet, headerRow, places: { layout, columns } }: ReadParts): string[] {
  const faultOf = (header: string, what: string): string => `The header ${quote(header)} of ${quote(sheet.name)} ${what}. Undo that, or write it back over its column in row ${headerRow + 1}.`;
  let last = -1;
  return columnsInOrder(layout).flatMap((key) => {
    const header = headersOf(layout)[key];
    const column = columns[key];
    if (column === undefined) return [faultOf(header, "is gone")];
    const isInOrder = column > last;
    last = Math.max(last, column);
    return isInOrder ? [] : [faultOf(header, "is not where it was")];
  });
}

function keyFaults({ sheet, jobId, headerRow, places, steps }: ReadParts): string[] {
  const cell = (row: number, column: number | undefined): CellValue => (column === undefined ? null : (sheet.values[row]?.[column] ?? null));
  const faultOf = (row: number, what: string): string => `Row ${row + 1} of ${quote(sheet.name)} ${what}. Undo that, or move what was typed to another row and delete this one.`;
  const { key, rule } = places.columns;
  const lost = Array.from({ length: Math.max(places.snagsRow - headerRow - 1, 0) }, (_, index) => headerRow + 1 + index)
    .filter((row) => key !== undefined && isBlank(cell(row, key)) && typeof cell(row, places.columns.no) === "number" && !isBlank(cell(row, rule)));
  const foreign = steps.filter((step) => !step.key.startsWith(`${jobId}/${step.stepId}/`));
  return [...lost.map((row) => faultOf(row, "has lost its hidden key")), ...foreign.map(({ row }) => faultOf(row, "has a hidden key that is not that of its step"))];
}

/** Refuses a tab that cannot be read as it was built, before anything is written to it or taken from it. */
export function refuseFaulty({ sheet, faults }: Pick<TabReading, "sheet" | "faults">): void {
  const [first] = faults;
  if (first !== undefined) throw invalid("tab", sheet, first);
}
