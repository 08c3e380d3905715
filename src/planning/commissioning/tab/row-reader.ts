import { isError, showCell, type CellValue, type Scalar, type SheetSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import {
  answersOf, entriesOf, foundFields, isFilled, readResult, results, sealFields, snagFields, snagNumber, stepFields, withoutSpaces,
  type FoundText, type SealLine, type Snag, type StepRecord,
} from "../record";
import { readGridHead } from "./grid-rows";
import { readGridRule, readRule, readWanted, unpacked } from "./rule-cell";
import { cellNumber, formulaAt } from "./sheet-columns";
import { snagColumnsOf } from "./snag-columns";
import { foundColumns, sealColumns, slotColumns, slotsPrefix, stepColumns, type TabColumn } from "./tab-columns";
import { headersOf } from "./tab-layout";
import type { TabPlaces } from "./tab-reading";

/** What a row of headers says. */
export type Header = Pick<TabPlaces, "layout" | "columns">;

/** What the code of a seal looks like. */
const sealCode = /^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/;

/** What the hidden key of a step looks like. */
const stepKey = /^[^/]+\/[^/]+\//;

/** Reads the rows of a tab one by one, notes which cells are entries, and remarks on what cannot be taken as it stands. */
export class RowReader {
  readonly remarks: string[] = [];
  readonly entries = new Set<number>();

  constructor(
    private readonly sheet: SheetSnapshot,
    private readonly header: Header,
  ) {}

  text(row: number, column: TabColumn | null): string {
    return canonicalText(this.cell(row, column));
  }

  /** Reads the row of a step; `words` are what it says where that stands above it. */
  step(row: number, key: string, words: ReadonlyMap<string, string> = new Map()): StepRecord {
    const plannedUnit = this.text(row, "plannedUnit");
    const typed = entriesOf(stepFields, (field) => this.typed(row, stepColumns[field]));
    const isPlannedUnit = typed.unit !== null && canonicalText(typed.unit) === plannedUnit;
    const rule = readRule(this.text(row, "rule"));
    return {
      key,
      slot: null,
      no: this.text(row, "no"),
      stepId: this.text(row, "stepId"),
      step: words.get(key) ?? words.get(this.text(row, "stepId")) ?? this.text(row, "step"),
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

  /** Reads what steps of a list say from the row above them, by their keys. */
  listHead(row: number): (readonly [key: string, words: string])[] {
    const [stepId, ...keys] = unpacked(this.text(row, "rule"));
    const words = this.text(row, "step").slice((stepId ?? "").length + ": ".length);
    return keys.flatMap((key) => (key === null ? [] : [[key, words] as const]));
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
      const found = this.typed(row, columns.found, `Found ${slots[place]?.head ?? stepId}`);
      const note = isFirst ? this.typed(row, "note") : null;
      return [withResult({
        key,
        slot: { place, rowKey, signKey, head: slots[place]?.head ?? "" },
        no: this.text(row, "no"),
        stepId,
        step: words.get(slots[place]?.stepId ?? stepId) ?? "",
        subject: slots[place]?.subject ?? this.text(row, "subject"),
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

  /** Reads the line that says who typed a filled print into the tab, and where that went, as a text of its build; none where it is blank. */
  paperLine(row: number): FoundText[] {
    const text = this.typed(row, foundColumns.text);
    if (text === null) return [];
    return [{ typed: { from: this.text(row, foundColumns.from), text, place: this.text(row, foundColumns.place) }, carried: this.text(row, "carried"), row }];
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
    return index !== undefined && formulaAt(this.sheet, row, index) !== null;
  }

  /** Notes that a cell holds an entry, so that nobody takes it for a text that stands where it should not. */
  take(row: number, column: TabColumn): void {
    const index = this.index(column);
    if (index !== undefined) this.entries.add(cellNumber(row, index));
  }

  /** Takes what was typed: a formula by its result, an error by its text. */
  private typed(row: number, column: TabColumn, name: string = headersOf(this.header.layout)[column]): Scalar {
    this.take(row, column);
    const cell = this.cell(row, column);
    if (this.hasFormula(row, column)) this.remark(row, name, "held a formula. Its result was kept; type the value instead.");
    if (cell === null || cell === "") return null;
    if (typeof cell === "object") {
      this.remark(row, name, `shows ${cell.error}. That text was kept; type what was found.`);
      return cell.error;
    }
    return withoutSpaces(cell) === "" ? null : cell;
  }

  private remark(row: number, name: string, what: string): void {
    this.remarks.push(`Row ${row + 1} of ${this.sheet.name}: ${name} ${what}`);
  }
}

/** Says of a step what its Result must be, whatever its cell shows. */
export function withResult(step: StepRecord, snags: readonly Snag[]): StepRecord {
  const { result, settled } = answersOf(step, snags);
  return { ...step, result: result === "" ? null : result, settled: settled === 1 };
}
