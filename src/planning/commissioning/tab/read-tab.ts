import { isError, showCell, type CellValue, type Scalar, type SheetPlan, type SheetSnapshot, type WorkbookSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import {
  answersOf, entriesOf, foundFields, isFilled, readResult, results, sealFields, snagFields, snagNumber, stepFields, withoutSpaces,
  type FoundText, type SealLine, type Snag, type StepRecord,
} from "../record";
import { readGridHead } from "./grid-rows";
import { readGridRule, readRule, readWanted, unpacked } from "./rule-cell";
import { cellNumber } from "./sheet-columns";
import { foundColumns, orphanPrefix, sealColumns, slotColumns, slotsPrefix, stepColumns, tabColumnKeys, tabColumns, tags, type TabColumn } from "./tab-columns";
import { tabFaults } from "./tab-faults";
import { snagColumnsOf } from "./snag-columns";
import { columnsInOrder, headersOf, type TabLayout } from "./tab-layout";
import { findMarker, readMark, stateColumn } from "./tab-mark";
import type { TabPlaces, TabReading } from "./tab-reading";
import { typedElsewhere } from "./typed-elsewhere";

/** Reads every commissioning tab of a workbook, in tab order; sheets that were not asked for are passed over. */
export function readTabs(workbook: WorkbookSnapshot): TabReading[] {
  return workbook.sheets.flatMap((sheet) => readTab(sheet) ?? []);
}

/** More ids for snags than any tab gives: what is said beyond was typed over. */
const mostSnagIds = 1_000_000;

/** Rows below the marker among which the headers are looked for. */
const headerWithin = 20;

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

/** Reads a tab but for what stands outside its records. */
function readRecords(sheet: SheetSnapshot): TabReading | null {
  const marker = findMarker(sheet);
  if (marker === null) return null;
  const headerRow = findHeader(sheet, marker.row);
  if (headerRow === null) return null;
  const header = readHeader(sheet.values[headerRow]!);
  const reader = new RowReader(sheet, header);
  const places = findBlocks(reader, headerRow, header, sheet.values.length);
  const { snagIds, ...mark } = readMark(sheet, marker, header.columns);
  const { freeIds, ...rows } = readRows(reader, headerRow, places, sheet.values.length);
  reader.take(marker.row, stateColumn);
  return {
    ...mark,
    sheet: sheet.name,
    title: canonicalText(sheet.values[marker.row]?.[header.columns.no ?? 0]),
    visible: sheet.visible,
    attachments: sheet.attachments,
    markRow: marker.row,
    headerRow,
    places,
    faults: tabFaults({ sheet, jobId: mark.jobId, headerRow, places, steps: rows.steps }),
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

/** What a row of headers says. */
type Header = Pick<TabPlaces, "layout" | "columns">;

/** Reads a row of headers as the layout of which it has most; the one without grids where it has none of their columns. */
function readHeader(header: readonly CellValue[]): Header {
  const read = (["lists", "today", "earlier"] as const).map((layout) => readHeaderAs(layout, header));
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
  for (let row = headerRow + 1; row < snagsRow; row += 1) if (reader.text(row, "key") === tags.grid) for (const [stepId, text] of reader.gridHead(row)) words.set(stepId, text);
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
    else if (key !== "" && !key.startsWith("#")) steps.push(reader.step(row, key));
  }
  return { steps: steps.map((step) => withAnswers(step, snags)), snags, orphans, seals, elsewhere, freeIds };
}

/** Finds the highest number that a snag has had: an id that the build gave and that stands in no blank row any more was one's. */
function usedSnagIds(given: number, snags: readonly Snag[], free: ReadonlySet<number>): number {
  let used = Math.min(Math.max(given, 0), mostSnagIds);
  while (free.has(used)) used -= 1;
  return snags.reduce((most, { id }) => Math.max(most, snagNumber(id) ?? 0), used);
}

/** Says of a step what its Result must be, whatever its cell shows. */
function withAnswers(step: StepRecord, snags: readonly Snag[]): StepRecord {
  const { result, settled } = answersOf(step, snags);
  return { ...step, result: result === "" ? null : result, settled: settled === 1 };
}

/** What the code of a seal looks like. */
const sealCode = /^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/;

/** What the hidden key of a step looks like. */
const stepKey = /^[^/]+\/[^/]+\//;

class RowReader {
  readonly remarks: string[] = [];
  readonly entries = new Set<number>();

  constructor(
    private readonly sheet: SheetSnapshot,
    private readonly header: Header,
  ) {}

  text(row: number, column: TabColumn | null): string {
    return canonicalText(this.cell(row, column));
  }

  step(row: number, key: string): StepRecord {
    const plannedUnit = this.text(row, "plannedUnit");
    const typed = entriesOf(stepFields, (field) => this.typed(row, stepColumns[field]));
    const isPlannedUnit = typed.unit !== null && canonicalText(typed.unit) === plannedUnit;
    const rule = readRule(this.text(row, "rule"));
    return {
      key,
      slot: null,
      no: this.text(row, "no"),
      stepId: this.text(row, "stepId"),
      step: this.text(row, "step"),
      subject: this.text(row, "subject"),
      expected: this.text(row, "expected"),
      plannedUnit,
      expectedBefore: this.text(row, "expectedBefore"),
      result: readResult(this.text(row, "result")),
      ...rule,
      wanted: readWanted(rule.kind, this.cell(row, "low"), this.cell(row, "high")),
      errors: stepFields.filter((field) => isError(this.cell(row, stepColumns[field]))),
      seenUnit: showCell(this.cell(row, "unit")),
      typed: isPlannedUnit ? { ...typed, unit: null } : typed,
      settled: false,
      minutes: Number(this.cell(row, "minutes")) || 0,
      carried: this.text(row, "carried"),
      row,
    };
  }

  /** Reads what each step of a grid says from the row above it. */
  gridHead(row: number): (readonly [stepId: string, words: string])[] {
    return readGridHead(this.text(row, "step"), unpacked(this.text(row, "rule")));
  }

  /** Reads the row of a grid as the records that stand side by side in it; the note is that of the first. */
  slots(row: number, rowKey: string, words: ReadonlyMap<string, string>): StepRecord[] {
    const listed = unpacked(rowKey.slice(slotsPrefix.length)).slice(0, slotColumns.length);
    const { signKey, slots } = readGridRule(this.text(row, "rule"));
    const [units, carried] = (["plannedUnit", "carried"] as const).map((column) => unpacked(this.text(row, column)));
    const firstPlace = listed.findIndex((key) => key !== null);
    return listed.flatMap((key, place): StepRecord[] => {
      if (key === null) return [];
      const isFirst = place === firstPlace;
      const columns = slotColumns[place]!;
      const stepId = isFirst ? this.text(row, "stepId") : (slots[place]?.stepId ?? "");
      const rule = slots[place]?.rule ?? readRule("");
      const plannedUnit = units?.[place] ?? "";
      const found = this.typed(row, columns.found);
      const note = isFirst ? this.typed(row, "note") : null;
      return [withAnswers({
        key,
        slot: { place, rowKey, signKey },
        no: this.text(row, "no"),
        stepId,
        step: words.get(slots[place]?.stepId ?? stepId) ?? "",
        subject: this.text(row, "subject"),
        expected: this.text(row, columns.expected),
        plannedUnit,
        expectedBefore: "",
        result: null,
        ...rule,
        wanted: readWanted(rule.kind, this.cell(row, columns.low), this.cell(row, columns.high)),
        errors: [...(isError(this.cell(row, columns.found)) ? ["found" as const] : []), ...(isFirst && isError(this.cell(row, "note")) ? ["note" as const] : [])],
        seenUnit: plannedUnit,
        typed: { ...entriesOf(stepFields, () => null), found, note },
        settled: false,
        minutes: isFirst ? Number(this.cell(row, "minutes")) || 0 : 0,
        carried: carried?.[place] ?? "",
        row,
      }, [])];
    });
  }

  /** Reads a row for snags; none where it is blank. Which step it is about follows from its number: a formula may not have been computed. */
  snag(row: number, steps: readonly StepRecord[]): Snag[] {
    const columns = snagColumnsOf(this.header.layout);
    const typed = entriesOf(snagFields, (field) => this.typed(row, columns[field]));
    if (!isFilled(typed)) return [];
    const isNumber = typeof typed.about === "number";
    const ofRow = isNumber ? steps.filter(({ no }) => no === canonicalText(typed.about)) : [];
    // Of the row of a grid it is about the first slot that is not as expected.
    const about = ofRow.find(({ slot, result }) => slot !== null && result !== null && result !== results.asExpected) ?? ofRow[0];
    return [{
      id: this.snagId(row),
      // A number that no step has is what somebody typed in place of the step that is gone.
      key: about?.key ?? (isNumber ? "" : (stepKey.exec(this.text(row, columns.key))?.input ?? "")),
      stepId: about?.stepId ?? this.text(row, columns.stepId),
      typed,
      errors: snagFields.filter((field) => isError(this.cell(row, columns[field]))),
      carried: this.text(row, "carried"),
      row,
    }];
  }

  /** Reads the id in a row for snags, whether one stands there or not. */
  snagId(row: number): string {
    const text = this.text(row, snagColumnsOf(this.header.layout).id);
    return snagNumber(text) === null ? "" : text;
  }

  seal(row: number): SealLine[] {
    const typed = entriesOf(sealFields, (field) => this.typed(row, sealColumns[field]));
    this.take(row, "digest");
    return isFilled(typed) ? [{ typed, row }] : [];
  }

  /** Tells whether a row holds the code of a seal. */
  hasCode(row: number): boolean {
    return sealCode.test(this.text(row, sealColumns.code));
  }

  /** Reads a text that an earlier build put into its block. */
  found(row: number): FoundText[] {
    const typed = entriesOf(foundFields, (field) => this.typed(row, foundColumns[field]));
    return [{ typed, carried: this.text(row, "carried"), row }];
  }

  private index(column: TabColumn | null): number | undefined {
    return column === null ? undefined : this.header.columns[column];
  }

  private cell(row: number, column: TabColumn | null): CellValue {
    const index = this.index(column);
    return index === undefined ? null : (this.sheet.values[row]?.[index] ?? null);
  }

  private hasFormula(row: number, column: TabColumn): boolean {
    const index = this.index(column);
    return index !== undefined && (this.sheet.formulas[row]?.[index] ?? null) !== null;
  }

  /** Notes that a cell holds an entry, so that nobody takes it for a text that stands where it should not. */
  take(row: number, column: TabColumn): void {
    const index = this.index(column);
    if (index !== undefined) this.entries.add(cellNumber(row, index));
  }

  /** Takes what was typed: a formula by its result, an error by its text. */
  private typed(row: number, column: TabColumn): Scalar {
    this.take(row, column);
    const cell = this.cell(row, column);
    if (this.hasFormula(row, column)) this.remark(row, column, "held a formula. Its result was kept; type the value instead.");
    if (cell === null || cell === "") return null;
    if (typeof cell === "object") {
      this.remark(row, column, `shows ${cell.error}. That text was kept; type what was found.`);
      return cell.error;
    }
    return withoutSpaces(cell) === "" ? null : cell;
  }

  private remark(row: number, column: TabColumn, what: string): void {
    this.remarks.push(`Row ${row + 1} of ${this.sheet.name}: ${headersOf(this.header.layout)[column]} ${what}`);
  }
}
