import type { CellValue, SheetPlan, SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import { snagNumber, type FoundText, type SealLine, type Snag, type StepRecord } from "../record";
import { RowReader, withResult, type Header } from "./row-reader";
import { orphanPrefix, slotsPrefix, tabColumnKeys, tabColumns, tags, type TabColumn } from "./tab-columns";
import { tabFaults } from "./tab-faults";
import { columnsInOrder, headersOf, tabLayouts, type TabLayout } from "./tab-layout";
import { findMarker, headerWithin, readMark, sealCountColumn, stateColumn, tabStates } from "./tab-mark";
import type { TabPlaces, TabReading } from "./tab-reading";
import { typedElsewhere } from "./typed-elsewhere";

/** Reads every commissioning tab of a workbook, in tab order; sheets that were not asked for are passed over. */
export function readTabs(workbook: WorkbookSnapshot): TabReading[] {
  return workbook.sheets.flatMap((sheet) => readTab(sheet) ?? []);
}

/** More ids for snags than any tab gives: what is said beyond was typed over. */
const mostSnagIds = 1_000_000;

/**
 * Reads a commissioning tab; null where the sheet is none.
 *
 * It is found by its hidden marker, whatever it is called, and its columns by their headers, so that columns and rows that people
 * added, and rows they sorted, do no harm. Nothing is thrown: what cannot be taken as it stands is remarked on.
 */
export function readTab(sheet: SheetSnapshot): TabReading | null {
  const tab = readRecords(sheet);
  // What cannot be read as it was built cannot be held against it either: such a tab is built over by nobody, and stays. One of an earlier
  // release does not say what its build wrote; it stays too.
  return tab === null || tab.faults.length > 0 || tab.places.layout === "earlier" ? tab : { ...tab, elsewhere: [...tab.elsewhere, ...typedElsewhere(sheet, tab)] };
}

/** Tells whose tab a sheet is, without reading what stands on it; null where it is none. */
export function jobIdOf(sheet: SheetSnapshot): string | null {
  const head = readHead(sheet);
  return head === null ? null : readMark(sheet, head.marker, head.header.columns).jobId;
}

/** Finds the marker and the headers of a tab. */
function readHead(sheet: SheetSnapshot) {
  const marker = findMarker(sheet);
  const headerRow = marker === null ? null : findHeader(sheet, marker.row);
  return marker === null || headerRow === null ? null : { marker, headerRow, header: readHeader(sheet.values[headerRow]!) };
}

/** Reads a tab but for what stands outside its records. */
function readRecords(sheet: SheetSnapshot): TabReading | null {
  const head = readHead(sheet);
  if (head === null) return null;
  const { marker, headerRow, header } = head;
  const reader = new RowReader(sheet, header);
  const places = findBlocks(reader, headerRow, header, sheet.values.length);
  const { snagIds, sealCount, ...mark } = readMark(sheet, marker, header.columns);
  const { freeIds, ...rows } = readRows(reader, headerRow, places, sheet.values.length);
  // What was typed over these two is an entry of nobody's, and told as such.
  if (mark.whole || reader.text(marker.row, stateColumn) === tabStates.unfinished) reader.take(marker.row, stateColumn);
  if (/^\d+$/.test(reader.text(marker.row, sealCountColumn))) reader.take(marker.row, sealCountColumn);
  return {
    ...mark,
    sheet: sheet.name,
    title: canonicalText(sheet.values[marker.row]?.[header.columns.no ?? 0]),
    visible: sheet.visible,
    attachments: sheet.attachments,
    mayHoldNotes: sheet.mayHoldNotes === true,
    markRow: marker.row,
    headerRow,
    places,
    faults: tabFaults({ sheet, jobId: mark.jobId, headerRow, places, steps: rows.steps, lostSeals: sealCount - rows.seals.length }),
    ...rows,
    usedSnagIds: usedSnagIds(snagIds, rows.snags, freeIds),
    entries: reader.entries,
    remarks: reader.remarks,
  };
}

const headers: ReadonlySet<string> = new Set(tabColumnKeys.map((key) => tabColumns[key].header));

/** Headers that a row must have to be taken for theirs. */
const fewestHeaders = 2;

/** Finds the row of the headers: the one with most of them, as one of them may be gone. */
function findHeader(sheet: SheetSnapshot, markRow: number): number | null {
  const counts = sheet.values.slice(markRow + 1, markRow + headerWithin).map((line) => line.filter((cell) => typeof cell === "string" && headers.has(canonicalText(cell))).length);
  const most = Math.max(0, ...counts);
  return most < fewestHeaders ? null : markRow + 1 + counts.indexOf(most);
}

/** Reads a planned tab as it will stand on its sheet once it is in place, before any formula has a result. */
export function readPlannedTab(plan: SheetPlan): TabReading {
  const sheet = {
    name: plan.name, visible: true, protected: false, tables: [], attachments: 0,
    values: plan.rows.map((row) => row.map(({ value = null }) => value)),
    formulas: plan.rows.map((row) => row.map(() => null)),
  };
  return { ...readRecords(sheet)!, whole: true };
}

/** Reads a row of headers as the layout of which it has most; the one without grids where it has none of their columns. */
function readHeader(header: readonly CellValue[]): Header {
  const read = tabLayouts.map((layout) => readHeaderAs(layout, header));
  return read.reduce((best, one) => (Object.keys(one.columns).length > Object.keys(best.columns).length ? one : best));
}

function readHeaderAs(layout: TabLayout, header: readonly CellValue[]): Header {
  const headers = headersOf(layout);
  const columns: Partial<Record<TabColumn, number>> = {};
  header.forEach((cell, index) => {
    const text = canonicalText(cell);
    const key = columnsInOrder(layout).find((one) => headers[one] === text && columns[one] === undefined);
    if (key !== undefined) columns[key] = index;
  });
  return { layout, columns };
}

/** Finds where the blocks below the steps begin; one whose tag is gone begins with the block below it. */
function findBlocks(reader: RowReader, headerRow: number, { layout, columns }: Header, rows: number): TabPlaces {
  const tagRow = (tag: string): number => {
    for (let row = headerRow + 1; row < rows; row += 1) if (reader.text(row, "key") === tag) return row;
    return rows;
  };
  const sealsRow = tagRow(tags.seals);
  const orphansRow = Math.min(tagRow(tags.orphans), sealsRow);
  return { layout, columns, snagsRow: Math.min(tagRow(tags.snags), orphansRow), orphansRow, sealsRow };
}

interface ReadRows extends Pick<TabReading, "steps" | "snags" | "orphans" | "seals" | "elsewhere"> {
  /** Numbers of the ids that stand in blank rows for snags. */
  readonly freeIds: ReadonlySet<number>;
}

/** Reads every row below the headers by what its key says; rows without one belong to people, or to the block they stand in. */
function readRows(reader: RowReader, headerRow: number, { snagsRow, orphansRow, sealsRow }: TabPlaces, rows: number): ReadRows {
  const steps: StepRecord[] = [];
  const orphans: StepRecord[] = [];
  const snags: Snag[] = [];
  const seals: SealLine[] = [];
  const elsewhere: FoundText[] = [];
  const freeIds = new Set<number>();
  const words = new Map<string, string>();
  for (let row = headerRow + 1; row < snagsRow; row += 1) {
    const tag = reader.text(row, "key");
    // Of a grid by the ids of its steps, of a list by the keys of those that say the same.
    for (const [of, text] of tag === tags.grid ? reader.gridHead(row) : tag === tags.words ? reader.listHead(row) : []) words.set(of, text);
  }
  for (let row = headerRow + 1; row < rows; row += 1) {
    const key = reader.text(row, "key");
    if (key.startsWith(orphanPrefix)) orphans.push(reader.step(row, key.slice(orphanPrefix.length)));
    else if (key === tags.snag || (key === "" && row > snagsRow + 1 && row < orphansRow)) {
      const read = reader.snag(row, steps);
      snags.push(...read);
      if (read.length === 0) freeIds.add(snagNumber(reader.snagId(row)) ?? 0);
    } else if (key === tags.seal || (row > sealsRow + 1 && reader.hasCode(row))) seals.push(...reader.seal(row));
    else if (key.startsWith(slotsPrefix)) steps.push(...reader.slots(row, key, words));
    else if (key === tags.text) elsewhere.push(...reader.found(row));
    else if (key === tags.paper) elsewhere.push(...reader.paperLine(row));
    else if (key !== "" && !key.startsWith("#")) steps.push(reader.step(row, key, words));
  }
  return { steps: steps.map((step) => withResult(step, snags)), snags, orphans, seals, elsewhere, freeIds };
}

/** Finds the highest number that a snag has had: an id that the build gave and that stands in no blank row any more was one's. */
function usedSnagIds(given: number, snags: readonly Snag[], free: ReadonlySet<number>): number {
  let used = Math.min(Math.max(given, 0), mostSnagIds);
  while (free.has(used)) used -= 1;
  return snags.reduce((most, { id }) => Math.max(most, snagNumber(id) ?? 0), used);
}
