import type { Area, Cell, ConditionalFormat, Scalar, SheetPlan } from "../../../sheet";
import { foundValidations } from "./found-validations";
import type { CarriedRecords } from "../record";
import { recordFingerprint, snagFingerprint } from "../record";
import type { PlanModel } from "../../plan/model";
import type { ExpandedJob, JobStep } from "../job";
import { tabMarker, unfinishedState } from "./read-tab";
import { pageBreaks, rowHeight } from "./tab-paper";
import { at, keptPrefix, letter, sealColumnKeys, sealColumns, shownColumns, snagColumnKeys, snagColumns, tabColumnKeys, tabColumns, tags, type TabColumn } from "./tab-columns";
import { progressFormulas, snagFormulas, stepFormulas, untouchedSnag, untouchedStep, type RowSpan } from "./tab-formulas";
import { tabStyles } from "./tab-styles";
import { planSummary, type BuildStamp } from "./tab-summary";
import type { StepRecord } from "../record";

/** Blank rows for snags behind those that are there. */
const spareSnags = 15;

/** What a tab is made of. */
export interface TabSource {
  readonly expanded: ExpandedJob;
  readonly model: PlanModel;
  readonly stamp: BuildStamp;
  readonly records: CarriedRecords;
}

/**
 * Plans the commissioning tab of a job under a sheet name, marked as unfinished until it is put in place.
 *
 * Row 1 holds title and progress, row 2 the headers; both stand on every printed page. Below come the summary, the sections with their
 * steps, the snags, the records kept from earlier builds, and the seals.
 */
export function planTab(name: string, { expanded, model, stamp, records }: TabSource): SheetPlan {
  const summaryStart = 2;
  const noRows = { first: 0, last: 0 };
  const summaryLength = planSummary(expanded, model, stamp, progressFormulas(noRows, noRows, 0)).length;
  const stepCount = expanded.sections.reduce((sum, { steps }) => sum + steps.length + 1, 0);
  const stepRows: RowSpan = { first: summaryStart + summaryLength, last: summaryStart + summaryLength + Math.max(stepCount, 1) - 1 };
  const snagRows: RowSpan = { first: stepRows.last + 4, last: stepRows.last + 3 + records.snags.length + spareSnags };
  const firstSeal = snagRows.last + Math.max(records.kept.length, 1) + 6;
  const progress = progressFormulas(stepRows, snagRows, firstSeal);

  const rows: Cell[][] = [];
  const merges: Area[] = [];
  const push = (cells: Partial<Record<TabColumn, Cell>>): void => {
    rows.push(tabColumnKeys.map((key) => cells[key] ?? {}));
  };
  const title = `${expanded.job.job}`;
  push({
    no: { value: title, style: "title" },
    found: { formula: progress.line, style: "progress" },
    key: hidden(tabMarker), rule: hidden(expanded.id), low: hidden(stamp.build), high: hidden(stamp.born), plannedUnit: hidden(unfinishedState),
  });
  merges.push({ row: 0, column: at.no, rows: 1, columns: at.found - at.no }, { row: 0, column: at.found, rows: 1, columns: shownColumns - at.found });
  rows.push(tabColumnKeys.map((key) => ({ value: tabColumns[key].header, style: "header" })));
  for (const summaryRow of planSummary(expanded, model, stamp, progress)) {
    const cells: Cell[] = tabColumnKeys.map((_, index) => summaryRow.cells.get(index) ?? {});
    for (const [from, to] of summaryRow.merges) merges.push({ row: rows.length, column: from, rows: 1, columns: to - from + 1 });
    rows.push(cells);
  }

  const sectionRows: number[] = [];
  const numbers = new Map<string, number>();
  const stepAt = new Map<number, JobStep>();
  const asked: number[] = [];
  for (const section of expanded.sections) {
    sectionRows.push(rows.length);
    rows.push(band(section.title));
    for (const step of section.steps) {
      numbers.set(step.key, numbers.size + 1);
      stepAt.set(rows.length, step);
      if ((records.steps.get(step.key)?.was ?? "") !== "") asked.push(rows.length);
      rows.push(stepRow(rows.length, step, numbers.size, records, snagRows));
    }
  }
  if (expanded.sections.length === 0) push({ step: { value: "No step of the procedure applies to this job.", style: "note" } });
  push({});

  sectionRows.push(rows.length);
  rows.push(band("Snags: what must be put right", tags.snags));
  push(labels(snagColumns));
  for (let index = 0; index < records.snags.length + spareSnags; index += 1) {
    const snag = records.snags[index];
    const cells = inShownColumns("notAsked");
    for (const column of snagColumnKeys) cells[column] = { value: snag?.typed[column] ?? null, style: column === "expected" ? "typedDate" : "typedText" };
    const formulas = snagFormulas(rows.length, stepRows, snagRows);
    cells.no = { value: snag === undefined ? null : snagNumber(snag.key, snag.typed.no, numbers), style: "typedNumber" };
    for (const key of ["stepId", "rule", "low", "high", "plannedUnit"] as const) cells[key] = { formula: formulas[key], ...(snag === undefined && { value: untouchedSnag[key] }), style: key === "stepId" ? "stepId" : "hidden" };
    if (snag !== undefined && snag.key !== "" && !numbers.has(snag.key)) {
      cells.stepId = { value: snag.stepId, style: "stepId" };
      cells.plannedUnit = hidden(snag.key);
    }
    cells.key = hidden(tags.snag);
    if (snag !== undefined) cells.carried = hidden(snagFingerprint(snag.key, snag.typed));
    push(cells);
  }
  push({});

  sectionRows.push(rows.length);
  rows.push(band("Kept from earlier builds: records whose step is no longer here", tags.kept));
  if (records.kept.length === 0) push({ no: { value: "Nothing kept.", style: "note" } });
  for (const record of records.kept) rows.push(keptRow(record));
  push({});

  rows.push(band("Seals: they show that something changed, not who changed it; the code on the signed page is the proof", tags.seals));
  push(labels(sealColumns));
  for (const { typed } of records.seals) {
    push({ ...(Object.fromEntries(sealColumnKeys.map((column) => [column, { value: typed[column], style: "text" }])) as Partial<Record<TabColumn, Cell>>), key: hidden(tags.seal) });
  }

  const heights = Object.fromEntries(rows.map((cells, row) => [row, rowHeight(cells, merges.filter((area) => area.row === row))]));
  heights[0] = 30;
  heights[1] = 30;
  return {
    name,
    rows,
    styles: tabStyles,
    columnWidths: tabColumnKeys.map((key) => tabColumns[key].width),
    rowHeights: heights,
    hiddenColumns: tabColumnKeys.map((_, index) => index).filter((index) => index >= shownColumns),
    merges,
    freeze: { rows: 2, columns: 3 },
    validations: foundValidations(stepAt, asked, stepRows, snagRows),
    conditionalFormats: conditionalFormats(stepRows, snagRows),
    print: {
      orientation: "landscape",
      fitToWidth: true,
      titleRows: { row: 0, rows: 2 },
      header: `${escapeCode(title)} · build ${stamp.build} · made ${escapeCode(stamp.madeAt)}`,
      footer: `${escapeCode(title)} · build ${stamp.build} · page &P of &N`,
      breaksBefore: pageBreaks(rows.map((_, row) => heights[row]!), sectionRows),
    },
    tabColor: "#2f5d50",
  };
}

function stepRow(row: number, step: JobStep, no: number, records: CarriedRecords, snags: RowSpan): Cell[] {
  const { expectation } = step;
  const carried = records.steps.get(step.key);
  const formulas = stepFormulas(row, expectation, step.sign, snags);
  const isUntouched = (carried?.typed.found ?? null) === null && records.snags.length === 0;
  const computed = (key: keyof typeof formulas): Cell => ({ formula: formulas[key], ...(isUntouched && { value: untouchedStep[key] }), style: key === "result" ? "result" : "hidden" });
  const cells: Partial<Record<TabColumn, Cell>> = {
    no: { value: no, style: "no" },
    stepId: { value: step.stepId, style: "stepId" },
    step: { value: stepText(step), style: step.caution === "" ? "step" : "stepCaution" },
    subject: { value: step.subject, style: "text" },
    expected: { value: expectation.shown, style: "expected" },
    found: { value: carried?.typed.found ?? null, style: foundStyle(expectation.kind) },
    unit: { value: carried?.typed.unit ?? step.unit, style: expectation.kind === "size" ? "typedText" : "unitFixed" },
    result: computed("result"),
    was: { value: carried?.was ?? null, style: "was" },
    seenAgain: { value: carried?.typed.seenAgain ?? null, style: (carried?.was ?? "") === "" ? "notAsked" : "typedText" },
    by: { value: carried?.typed.by ?? null, style: "typedText" },
    second: { value: carried?.typed.second ?? null, style: step.sign === "two" ? "typedText" : "notAsked" },
    done: { value: carried?.typed.done ?? null, style: "typedDate" },
    note: { value: carried?.typed.note ?? null, style: "typedText" },
    key: hidden(step.key),
    rule: hidden(`${step.required ? "required" : "optional"} ${step.sign} ${expectation.kind}`),
    low: hidden(expectation.low),
    high: hidden(expectation.high),
    plannedUnit: hidden(step.unit),
    compares: computed("compares"),
    retest: computed("retest"),
    retestCompares: computed("retestCompares"),
    settled: computed("settled"),
    minutes: hidden(step.minutes),
    carried: hidden(carried?.carried ?? null),
    digest: { style: "hiddenText" },
  };
  return tabColumnKeys.map((key) => withoutBlank(cells[key] ?? {}));
}

function keptRow(record: StepRecord): Cell[] {
  const cells: Partial<Record<TabColumn, Cell>> = {
    stepId: { value: record.stepId, style: "stepId" },
    step: { value: record.step, style: "step" },
    subject: { value: record.subject, style: "text" },
    expected: { value: record.expected, style: "expected" },
    found: { value: record.typed.found, style: "text" },
    unit: { value: record.typed.unit ?? record.plannedUnit, style: "text" },
    result: { value: record.result, style: "text" },
    was: { value: record.was, style: "was" },
    seenAgain: { value: record.typed.seenAgain, style: "text" },
    by: { value: record.typed.by, style: "text" },
    second: { value: record.typed.second, style: "text" },
    done: { value: record.typed.done, style: typeof record.typed.done === "number" ? "typedDate" : "text" },
    note: { value: record.typed.note, style: "text" },
    key: hidden(`${keptPrefix}${record.key}`),
    rule: hidden(`${record.required ? "required" : "optional"} ${record.sign} ${record.kind}`),
    plannedUnit: hidden(record.plannedUnit),
    carried: hidden(recordFingerprint(record.key, record.typed)),
  };
  return tabColumnKeys.map((key) => withoutBlank(cells[key] ?? {}));
}

/** Writes what a step says: what gets hurt first, then what is to be done, then what the maker's guide says. */
function stepText({ caution, do: what, makersGuide, required }: JobStep): string {
  return [
    ...(caution === "" ? [] : [`CAUTION: ${caution}`]),
    required ? what : `If wanted: ${what}`,
    ...(makersGuide === "" ? [] : [`Maker's guide: ${makersGuide}`]),
  ].join("\n");
}

function foundStyle(kind: string): string {
  return kind === "number" || kind === "size" ? "typedNumber" : kind === "date" ? "typedDate" : "typedText";
}

/** Says which row a snag is about in the new numbering; text where that step is gone, so that it never points at another one. */
function snagNumber(key: string, typed: Scalar, numbers: ReadonlyMap<string, number>): Scalar {
  if (key === "") return typeof typed === "number" ? `${typed}?` : typed;
  return numbers.get(key) ?? "gone";
}

function band(title: string, tag: string | null = null): Cell[] {
  return tabColumnKeys.map((key, index) => (index >= shownColumns ? (key === "key" && tag !== null ? hidden(tag) : {}) : index === 0 ? { value: title, style: "section" } : { style: "section" }));
}

function labels(texts: Partial<Record<TabColumn, string>>): Partial<Record<TabColumn, Cell>> {
  return { ...inShownColumns("label"), ...Object.fromEntries(Object.entries(texts).map(([key, value]) => [key, { value, style: "label" }])) };
}

function inShownColumns(style: string): Partial<Record<TabColumn, Cell>> {
  return Object.fromEntries(tabColumnKeys.slice(0, shownColumns).map((key) => [key, { style }]));
}

function hidden(value: Scalar): Cell {
  return value === null || value === "" ? {} : { value, style: typeof value === "string" ? "hiddenText" : "hidden" };
}

function withoutBlank(cell: Cell): Cell {
  return cell.formula === undefined && (cell.value === null || cell.value === "") ? { style: cell.style } : cell;
}

/** Keeps a text from being read as a code of the page header, where & begins one. */
function escapeCode(text: string): string {
  return text.replaceAll("&", "&&");
}

function conditionalFormats(steps: RowSpan, snags: RowSpan): ConditionalFormat[] {
  const area = (column: TabColumn, { first, last }: RowSpan): Area => ({ row: first, column: at[column], rows: last - first + 1, columns: 1 });
  const cell = (column: TabColumn, { first }: RowSpan = steps): string => `$${letter[column]}${first + 1}`;
  const when = (style: string, formula: string): ConditionalFormat => ({ area: area("result", steps), formula, style });
  const setAside = `OR(${cell("result")}="Waived",${cell("result")}="Not applicable")`;
  return [
    when("isExpected", `=${cell("result")}="As expected"`),
    when("isDiffering", `=${cell("result")}="Differs"`),
    when("isWaiting", `=OR(${cell("result")}="Check again",${cell("result")}="Needs a second name",${cell("result")}="Compare by eye")`),
    when("isSetAside", `=${setAside}`),
    { area: area("by", steps), formula: `=AND(${cell("result")}<>"",${cell("by")}="",LEFT(${cell("rule")},8)="required")`, style: "isMissing" },
    { area: area("note", steps), formula: `=AND(${setAside},${cell("note")}="",${cell("retest")}="")`, style: "isMissing" },
    { area: area("seenAgain", steps), formula: `=AND(${cell("was")}<>"",${cell("seenAgain")}="")`, style: "isMissing" },
    { area: area("result", snags), formula: `=${cell("high", snags)}=1`, style: "isWaiting" },
  ];
}
