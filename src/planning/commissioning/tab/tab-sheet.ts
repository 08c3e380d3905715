import type { Area, Cell, SheetPlan } from "../../../sheet";
import { sealFields, snagId, type CarriedRecords } from "../record";
import { groupBy, type PlanModel } from "../../plan/model";
import { stepWords, type ExpandedJob, type JobSection, type JobStep } from "../job";
import { entryValidations, type PlacedStep } from "./entry-validations";
import { resultFormats } from "./result-formats";
import { foundRow, paperLineRow } from "./found-rows";
import { gridHeadRow, gridKey, gridLabelRow, gridRow, wordsRow } from "./grid-rows";
import { sectionRows as planSection, type SectionRow, type StepRowPlan } from "./section-rows";
import { snagRow, type NumberedStep } from "./snag-rows";
import { orphanRow, stepRow } from "./step-rows";
import { hidden, inShownColumns, labelRow, rowOf, styled, titleRow, type TabCells } from "./tab-cells";
import { snagHeads } from "./snag-columns";
import { at, foundHeads, sealColumns, sealHeads, shownColumns, slotColumns, slotsPrefix, tabColumnKeys, tabColumns, tags, type SlotColumns } from "./tab-columns";
import { progressFormulas, type RowSpan } from "./tab-formulas";
import { pocketSheets } from "./pocket-sheets";
import { markCells, tabStates } from "./tab-mark";
import { columnWidthsOn, onPaper, pageBreaks, rowHeight, writingHeight, type PaperRow } from "./tab-paper";
import { tabStyles } from "./tab-styles";
import type { SummaryRow } from "./summary-row";
import { planSummary, type BuildStamp } from "./tab-summary";
import { readPlannedTab } from "./read-tab";
import { withAnswers } from "./with-answers";
import { withBuilt } from "./with-built";

/** Blank rows for snags behind those that are there. */
const spareSnags = 13;

/** Rows that are laid out for the next seals; more take rows as they come. */
const spareSeals = 1;

/** Rows at the top that stay in sight: the title, its height in points, and the headers, which stand again on every page. */
const headRows = 2;
const titleHeight = 26;

/** Height, in points, of a row that only parts two blocks. */
const gapHeight = 5;

/** What a tab is made of. */
export interface TabSource {
  readonly expanded: ExpandedJob;
  readonly model: PlanModel;
  readonly stamp: BuildStamp;
  readonly records: CarriedRecords;
}

/** Where the blocks of a tab stand; formulas above a block refer to it. */
interface TabBlocks {
  readonly stepRows: RowSpan;
  readonly snagRows: RowSpan;
  readonly firstSeal: number;
}

/** Rows of a tab while it is laid out from top to bottom. */
interface TabRows {
  readonly rows: Cell[][];
  readonly merges: Area[];
  /** What is cut out in one piece: the first row, and the one below the last. */
  readonly whole: Map<number, number>;
  /** Rows that are read with the row below. */
  readonly heads: Set<number>;
  /** The steps with their rows. */
  readonly placed: PlacedStep[];
  /** Rows in which people write by hand. */
  readonly written: Set<number>;
}

/** A section with its rows. */
interface PlannedSection {
  readonly section: JobSection;
  readonly rows: readonly SectionRow[];
}

/**
 * Lays out the commissioning tab of a job under a sheet name, marked as unfinished until it is put in place.
 *
 * Row 1 holds title and progress, row 2 the headers, which stand on every printed page. Below come the summary, the pocket sheets, the sections with
 * their steps, the snags, the records whose step is gone, what was found elsewhere, where the paper went, and the seals.
 */
export function tabSheet(name: string, source: TabSource): SheetPlan {
  let plan = layOut(name, source, new Set());
  // Where a page begins within a grid its labels stand again, which may move what comes below.
  for (let tries = 0, labelled: ReadonlySet<string> = new Set(); tries < mostLayouts; tries += 1) {
    const parted = partedGrids(plan);
    if (parted.size === labelled.size && [...parted].every((key) => labelled.has(key))) break;
    plan = layOut(name, source, parted);
    labelled = parted;
  }
  const reading = readPlannedTab(plan);
  return withAnswers(withBuilt(plan, reading), reading);
}

/** How often a tab is laid out again at most. */
const mostLayouts = 4;

/** Lists the rows of grids with which a page begins, or below whose labels alone, by their hidden keys. */
function partedGrids({ rows, print }: SheetPlan): Set<string> {
  const keyIn = (row: number): string => String(rows[row]?.[at.key]?.value ?? "");
  return new Set((print?.breaksBefore ?? []).map((row) => keyIn(row) || keyIn(row + 1)).filter((key) => key.startsWith(slotsPrefix)));
}

/** Lays out a tab, with the labels of a grid above the rows of these keys too. */
function layOut(name: string, source: TabSource, parted: ReadonlySet<string>): SheetPlan {
  const { expanded, stamp } = source;
  const sections = expanded.sections.map((section): PlannedSection => ({ section, rows: withLabels(planSection(section, source.records), parted) }));
  const steps = numberSteps(sections);
  const blocks = placeBlocks(source, sections);
  const tab: TabRows = { rows: [], merges: [], whole: new Map(), heads: new Set(), placed: [], written: new Set() };
  addTop(tab, source, blocks);
  addPocketSheets(tab, expanded, steps);
  addSteps(tab, sections, steps, source.records, blocks);
  addSnags(tab, source, steps, blocks);
  addOrphans(tab, source);
  addElsewhere(tab, source);
  addPaperLine(tab, source);
  addSeals(tab, source);

  const { rows, merges, whole, heads, placed, written } = tab;
  const { paper } = source.model.settings;
  const { stepRows, snagRows } = blocks;
  const mergesOf = groupBy(merges, ({ row }) => row);
  const blank = new Set(rows.flatMap((cells, row) => (cells.every(({ value = null, formula }) => value === null && formula === undefined) ? [row] : [])));
  const paperRows = rows.map((cells, row): PaperRow => ({ cells, merges: mergesOf.get(row) ?? [], least: written.has(row) ? writingHeight : 0 }));
  const columnWidths = columnWidthsOn(paper, paperRows);
  const heights = paperRows.map((row, index) => (index === 0 ? titleHeight : blank.has(index) && !written.has(index) ? gapHeight : rowHeight(row, columnWidths)));
  const title = escapeCode([expanded.job.job, expanded.places.site.site, `build ${stamp.build}`].join(" · "));
  const breaksBefore = pageBreaks(heights, { first: headRows, whole, heads, blank }, paper);
  return {
    name,
    rows,
    styles: tabStyles,
    columnWidths,
    rowHeights: Object.fromEntries(heights.entries()),
    hiddenColumns: tabColumnKeys.map((_, index) => index).filter((index) => index >= shownColumns),
    merges,
    freeze: { rows: headRows, columns: 3 },
    validations: entryValidations(placed, stepRows, snagRows),
    conditionalFormats: resultFormats(stepRows, snagRows),
    print: {
      ...onPaper(paper),
      titleRows: { row: headRows - 1, rows: 1 },
      header: `${title} · made ${escapeCode(stamp.madeAt)}`,
      // Programs count the pages of all that is printed: how many are those of this tab is known here alone.
      footer: `${title} · page &P of ${breaksBefore.length + 1} as built`,
      breaksBefore,
    },
    tabColor: "#2f5d50",
  };
}

/** Puts the labels of a grid above those of its rows that have one of these keys. */
function withLabels(rows: readonly SectionRow[], keys: ReadonlySet<string>): SectionRow[] {
  return rows.flatMap((row) => (row.is === "grid" && keys.has(gridKey(row.slots)) ? [{ is: "grid-labels" } as const, row] : [row]));
}

/** Keeps a text from being read as a code of the page header, where & begins one. */
function escapeCode(text: string): string {
  return text.replaceAll("&", "&&");
}

/** Numbers the rows of the steps from top to bottom. */
function numberSteps(sections: readonly PlannedSection[]): Map<string, NumberedStep> {
  const steps = new Map<string, NumberedStep>();
  const inRows = sections.flatMap(({ rows }) => rows.flatMap((row) => (row.is === "step" ? [[row.step]] : row.is === "grid" ? [row.slots.flatMap((slot) => slot?.step ?? [])] : [])));
  for (const [index, ofRow] of inRows.entries()) for (const step of ofRow) steps.set(step.key, { no: index + 1, step });
  return steps;
}

/** Works out where the blocks will stand, as the summary above them refers to their rows. */
function placeBlocks({ expanded, model, stamp, records }: TabSource, sections: readonly PlannedSection[]): TabBlocks {
  const nowhere = { first: 0, last: 0 };
  const summaryLength = planSummary(expanded, model, stamp, progressFormulas(nowhere, nowhere, 0)).length;
  const pocketLength = pocketSheets(expanded, () => 0).reduce((sum, rows) => sum + rows.length + 1, 0);
  const stepCount = sections.reduce((sum, { rows }) => sum + rows.length, 0);
  const firstStep = headRows + summaryLength + pocketLength;
  const stepRows: RowSpan = { first: firstStep, last: firstStep + Math.max(stepCount, 1) - 1 };
  // Between two blocks stand a blank row, a title and a row of labels; the orphans have no labels. A block without rows says so in one.
  const firstSnag = stepRows.last + 4;
  const snagRows: RowSpan = { first: firstSnag, last: firstSnag + records.snags.length + spareSnags - 1 };
  return { stepRows, snagRows, firstSeal: snagRows.last + Math.max(records.orphans.length, 1) + records.elsewhere.length + 12 };
}

function addTop({ rows, merges }: TabRows, { expanded, model, stamp, records }: TabSource, { stepRows, snagRows, firstSeal }: TabBlocks): void {
  const progress = progressFormulas(stepRows, snagRows, firstSeal);
  const title = rowOf({ no: styled(expanded.job.job, "title"), found: { formula: progress.line, style: "progress" } });
  const mark = markCells({ jobId: expanded.id, build: stamp.build, born: stamp.born, state: tabStates.unfinished, snagIds: records.usedSnagIds + spareSnags, seals: records.seals.length });
  rows.push(title.map((cell, column) => mark.get(column) ?? cell));
  merges.push({ row: 0, column: at.no, rows: 1, columns: at.found - at.no }, { row: 0, column: at.found, rows: 1, columns: shownColumns - at.found });
  rows.push(tabColumnKeys.map((key) => styled(tabColumns[key].header, "header")));
  for (const row of planSummary(expanded, model, stamp, progress)) addSummaryRow({ rows, merges }, row);
}

function addSummaryRow({ rows, merges }: Pick<TabRows, "rows" | "merges">, row: SummaryRow): void {
  for (const [from, to] of row.merges) merges.push({ row: rows.length, column: from, rows: 1, columns: to - from + 1 });
  rows.push(tabColumnKeys.map((_, index) => row.cells.get(index) ?? {}));
}

function addSteps(
  { rows, merges, heads, placed, written }: TabRows, sections: readonly PlannedSection[], steps: ReadonlyMap<string, NumberedStep>, records: CarriedRecords, { snagRows }: TabBlocks,
): void {
  const numberOf = ({ key }: JobStep): number => steps.get(key)!.no;
  const place = (step: JobStep, columns: SlotColumns | null): number => placed.push({ row: rows.length, step, columns });
  for (const { section, rows: sectionPlan } of sections) {
    for (const planned of sectionPlan) {
      if (planned.is !== "step" && planned.is !== "grid") heads.add(rows.length);
      switch (planned.is) {
        case "visit":
          rows.push(titleRow(section.visit, null, "visit"));
          break;
        case "grid-head":
          merges.push(...headMerges(rows.length, section.title));
          rows.push(gridHeadRow(section.title, section.columns));
          break;
        case "words": {
          const title = planned.steps[0] === section.steps[0] ? section.title : "";
          merges.push(...headMerges(rows.length, title));
          rows.push(wordsRow(title, planned.steps));
          break;
        }
        case "grid-labels":
          rows.push(gridLabelRow(section.columns));
          break;
        case "list-head":
          rows.push(labelRow(listHeads));
          break;
        case "step":
          place(planned.step, null);
          written.add(rows.length);
          rows.push(stepRow(planned.step, records.steps.get(planned.step.key), { row: rows.length, no: numberOf(planned.step), snagRows, says: saysInRow(planned, numberOf) }));
          break;
        case "grid":
          if (section.isPasted !== true) written.add(rows.length);
          planned.slots.forEach((slot, index) => {
            if (slot !== null) place(slot.step, slotColumns[index]!);
          });
          rows.push(gridRow(planned.slots, { row: rows.length, no: numberOf(planned.slots.find((slot) => slot !== null)!.step), apart: planned.apart }));
      }
    }
  }
  if (sections.length === 0) rows.push(rowOf({ step: styled("No step of the procedure applies to this job.", "note") }));
  rows.push(rowOf({}));
}

/** In a row of words the title of the section stands on the left, and the words over all columns behind. */
function headMerges(row: number, title: string): Area[] {
  const words = { row, column: at.step, rows: 1, columns: shownColumns - at.step };
  return title === "" ? [words] : [{ row, column: at.no, rows: 1, columns: at.step }, words];
}

/** Says in the row of a step what it says, or where that stands above. */
function saysInRow({ step, words }: StepRowPlan, numberOf: (step: JobStep) => number): string {
  if (words === "own") return stepWords(step);
  const first = words === "above" ? "" : `as No. ${numberOf(words)}`;
  const said = [step.holdPoint ? "hold point" : "", first].filter((text) => text !== "").join(", ");
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** Headers of a list below the rows of a grid. */
const listHeads = Object.fromEntries(tabColumnKeys.slice(0, shownColumns).map((key) => [key, tabColumns[key].header]));

/** Adds the sheets that are cut out of a print: those beside each other are kept whole. */
function addPocketSheets({ rows, merges, whole }: TabRows, expanded: ExpandedJob, steps: ReadonlyMap<string, NumberedStep>): void {
  for (const sheet of pocketSheets(expanded, ({ key }) => steps.get(key)!.no)) {
    const first = rows.length;
    for (const row of sheet) addSummaryRow({ rows, merges }, row);
    whole.set(first, rows.length);
    rows.push(rowOf({}));
  }
}

function addSnags({ rows, heads, whole, written }: TabRows, { records: { snags, usedSnagIds } }: TabSource, steps: ReadonlyMap<string, NumberedStep>, { stepRows, snagRows }: TabBlocks): void {
  const first = rows.length;
  heads.add(first).add(first + 1);
  rows.push(titleRow("Snags: what must be put right", tags.snags), labelRow(snagHeads));
  for (let index = 0; index < snags.length + spareSnags; index += 1) {
    const snag = snags[index];
    const id = snag?.id ?? snagId(usedSnagIds + 1 + index - snags.length);
    written.add(rows.length);
    rows.push(snagRow(snag, { row: rows.length, id, stepRows, snagRows, steps }));
  }
  // Its columns are not those whose headers stand on every page.
  whole.set(first, rows.length);
  rows.push(rowOf({}));
}

function addOrphans({ rows, heads }: TabRows, { records: { orphans } }: TabSource): void {
  heads.add(rows.length);
  rows.push(titleRow("Kept from earlier builds: records whose step is no longer here", tags.orphans));
  if (orphans.length === 0) rows.push(rowOf({ no: styled("Nothing kept.", "note") }));
  rows.push(...orphans.map(orphanRow), rowOf({}));
}

function addElsewhere({ rows, heads }: TabRows, { records: { elsewhere } }: TabSource): void {
  heads.add(rows.length);
  rows.push(titleRow("Found elsewhere: what was typed beside, between or over these rows on earlier builds", tags.texts));
  if (elsewhere.length > 0) {
    heads.add(rows.length);
    rows.push(labelRow(foundHeads));
  } else rows.push(rowOf({ no: styled("Nothing found.", "note") }));
  rows.push(...elsewhere.map(foundRow), rowOf({}));
}

/** Adds the line in which those who type a filled print into the tab say so; once filled it stands, with its build, among what was found elsewhere. */
function addPaperLine({ rows, heads }: TabRows, { stamp }: TabSource): void {
  heads.add(rows.length);
  rows.push(titleRow("Entered from paper by, on, scan kept at: where steps were filled in on a print of this build"));
  rows.push(paperLineRow(stamp.build), rowOf({}));
}

function addSeals({ rows, heads, written }: TabRows, { records: { seals } }: TabSource): void {
  heads.add(rows.length);
  rows.push(titleRow("Seals: they show that something changed, not who changed it; the code on the signed page is the proof", tags.seals), labelRow(sealHeads));
  for (const { typed } of seals) {
    const cells: TabCells = { key: hidden(tags.seal) };
    for (const field of sealFields) cells[sealColumns[field]] = styled(typed[field], "text");
    rows.push(rowOf(cells));
  }
  // Below stand the next ones.
  for (let spare = 0; spare < spareSeals; spare += 1) {
    written.add(rows.length);
    rows.push(rowOf(inShownColumns("sealed")));
  }
}
