import { cellAddress, isBeingComputed, isBlank, showCell, type CellValue, type SheetSnapshot } from "../../../sheet";
import { invalid, quote } from "../../text";
import { rowsOfSteps, type StepRecord } from "../record";
import { cellToken } from "../seal";
import { readBuilt } from "./coded-columns";
import type { TabColumn } from "./tab-columns";
import { columnsInOrder, headersOf } from "./tab-layout";
import type { TabPlaces, TabReading } from "./tab-reading";

/** What of a tab says whether it can be trusted to be read as it was built. */
interface ReadParts {
  readonly sheet: SheetSnapshot;
  readonly jobId: string;
  readonly headerRow: number;
  readonly places: TabPlaces;
  readonly steps: readonly StepRecord[];
  /** How many lines of seals it has lost. */
  readonly lostSeals: number;
}

/**
 * Lists in sentences what keeps a tab from being read as it was built: a column whose header is gone, stands twice or is out of its place, and
 * a row whose hidden key is gone or another's, a seal without its line, and a cell that will show something else. Columns and rows that people added are none of these.
 */
export function tabFaults(parts: ReadParts): string[] {
  return [...columnFaults(parts), ...keyFaults(parts), ...sealFaults(parts), ...unfinishedFaults(parts)];
}

function sealFaults({ sheet, lostSeals }: ReadParts): string[] {
  return lostSeals > 0 ? [`A line of the seals of ${quote(sheet.name)} is gone. Undo that, or write day, code and name back from the signed page.`] : [];
}

/** Finds the first cell that is still being computed: what it shows is nobody's entry, and no seal would hold over it. */
function unfinishedFaults({ sheet }: ReadParts): string[] {
  for (const [row, line] of sheet.values.entries()) {
    const column = line.findIndex(isBeingComputed);
    if (column < 0) continue;
    const shows = `Cell ${cellAddress({ row, column })} of ${quote(sheet.name)} shows ${showCell(line[column])}`;
    return [`${shows}: its formula is still being computed. Wait until it shows a result, or empty it.`];
  }
  return [];
}

function columnFaults({ sheet, headerRow, places: { layout, columns }, steps }: ReadParts): string[] {
  const faultOf = (header: string, what: string): string => `The header ${quote(header)} of ${quote(sheet.name)} ${what}. Undo that, or write it back over its column in row ${headerRow + 1}.`;
  let last = -1;
  // A tab with a grid has had their columns.
  const hasGrid = layout === "lists" && steps.some(({ slot }) => slot !== null);
  return columnsInOrder(hasGrid ? "grids" : layout).flatMap((key) => {
    const header = headersOf(layout)[key];
    const column = columns[key];
    if (column === undefined) return [faultOf(header, "is gone")];
    const isInOrder = column > last;
    last = Math.max(last, column);
    return isInOrder ? [] : [faultOf(header, "is not where it was")];
  });
}

/**
 * Finds the rows whose hidden key cannot be believed. A row says under Built what its key was, and of which number, step and subject: one of these
 * typed over is a text of somebody's, two of them say that the hidden cells are another row's. A row without is held against its own step id.
 */
function keyFaults({ sheet, jobId, headerRow, places: { columns, snagsRow }, steps }: ReadParts): string[] {
  const cell = (row: number, key: TabColumn): CellValue => (columns[key] === undefined ? null : (sheet.values[row]?.[columns[key]] ?? null));
  const stepAt = new Map(rowsOfSteps(steps).map(({ row, records }) => [row, records[0]!]));
  return sheet.values.flatMap((_, row): string[] => {
    if (row === headerRow || columns.key === undefined) return [];
    const built = readBuilt(cell(row, "built"));
    const isAsBuilt = (key: TabColumn): boolean => built?.holds(key, cellToken(cell(row, key), false)) === true;
    const step = stepAt.get(row);
    const isOfAnother =
      step !== undefined &&
      (built === null ? !step.key.startsWith(`${jobId}/${step.stepId}/`) : namingColumns.filter((key) => !isBlank(cell(row, key)) && !isAsBuilt(key)).length > 1);
    const hasLost = isBlank(cell(row, "key")) && (built === null ? row < snagsRow && typeof cell(row, "no") === "number" && !isBlank(cell(row, "rule")) : !isAsBuilt("key"));
    const what = hasLost ? "has lost its hidden key" : (built !== null && !isAsBuilt("key")) || isOfAnother ? "has a hidden key that is not that of its step" : "";
    return what === "" ? [] : [`Row ${row + 1} of ${quote(sheet.name)} ${what}. Undo that, or move what was typed to another row and delete this one.`];
  });
}

/** Columns that say which step a row is about. */
const namingColumns = ["no", "stepId", "subject"] as const satisfies readonly TabColumn[];

/** Refuses a tab that cannot be read as it was built, before anything is written to it or taken from it. */
export function refuseFaulty({ sheet, faults }: Pick<TabReading, "sheet" | "faults">): void {
  const [first] = faults;
  if (first !== undefined) throw invalid("tab", sheet, first);
}
