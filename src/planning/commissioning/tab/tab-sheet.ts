import type { Area, Cell, SheetPlan } from "../../../sheet";
import { sealFields, snagId, type CarriedRecords } from "../record";
import type { PlanModel } from "../../plan/model";
import type { ExpandedJob, JobStep } from "../job";
import { entryValidations, type PlacedStep } from "./entry-validations";
import { resultFormats } from "./result-formats";
import { foundRow, paperLineRow } from "./found-rows";
import { gridHeadRow, gridLabelRow, gridRow } from "./grid-rows";
import { sectionRows as planSection, type SectionRow } from "./section-rows";
import { snagRow, type NumberedStep } from "./snag-rows";
import { orphanRow, stepRow } from "./step-rows";
import { hidden, labelRow, rowOf, styled, titleRow, type TabCells } from "./tab-cells";
import { snagHeads } from "./snag-columns";
import { at, foundHeads, sealColumns, sealHeads, shownColumns, slotColumns, tabColumnKeys, tabColumns, tags, type SlotColumns } from "./tab-columns";
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
const spareSnags = 15;

/** Rows at the top that stay in sight, and the height of each in points; the last of them, the headers, stands again on every page. */
const headRows = 2;
const titleHeight = 32;

/** Height, in points, of a row that only parts two blocks. */
const gapHeight = 9;

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
  /** Sections that are better kept on one page: their first row, and the one below their last. */
  readonly whole: Map<number, number>;
  /** Rows that are read with the row below. */
  readonly heads: Set<number>;
  /** Rows with which a page begins: those of visits, and the first of what is cut out. */
  readonly freshRows: Set<number>;
  /** The steps with their rows. */
  readonly placed: PlacedStep[];
  /** Each step with its number, by its key. */
  readonly steps: Map<string, NumberedStep>;
}

/**
 * Lays out the commissioning tab of a job under a sheet name, marked as unfinished until it is put in place.
 *
 * Row 1 holds title and progress, row 2 the headers, which stand on every printed page. Below come the summary, the sections with their
 * steps, the pocket sheets, the snags, the records whose step is gone, what was found elsewhere, where the paper went, and the seals.
 */
export function tabSheet(name: string, source: TabSource): SheetPlan {
  const { expanded, stamp } = source;
  const blocks = placeBlocks(source);
  const tab: TabRows = { rows: [], merges: [], whole: new Map(), heads: new Set(), freshRows: new Set(), placed: [], steps: new Map() };
  addTop(tab, source, blocks);
  addSteps(tab, source, blocks);
  addPocketSheets(tab, source);
  addSnags(tab, source, blocks);
  addOrphans(tab, source);
  addElsewhere(tab, source);
  addPaperLine(tab, source);
  addSeals(tab, source);

  const { rows, merges, whole, heads, freshRows, placed } = tab;
  const { paper } = source.model.settings;
  const { stepRows, snagRows } = blocks;
  const stepAt = new Set(placed.map(({ row }) => row));
  const isWrittenIn = (row: number): boolean => stepAt.has(row) || (row >= snagRows.first && row <= snagRows.last);
  const mergesOf = new Map<number, Area[]>();
  for (const area of merges) mergesOf.set(area.row, [...(mergesOf.get(area.row) ?? []), area]);
  const blank = new Set(rows.flatMap((cells, row) => (cells.every(({ value = null, formula }) => value === null && formula === undefined) ? [row] : [])));
  const paperRows = rows.map((cells, row): PaperRow => ({ cells, merges: mergesOf.get(row) ?? [], least: isWrittenIn(row) ? writingHeight : 0 }));
  const columnWidths = columnWidthsOn(paper, paperRows);
  const heights = paperRows.map((row, index) => (index < headRows ? titleHeight : blank.has(index) ? gapHeight : rowHeight(row, columnWidths)));
  const title = escapeCode([expanded.job.job, expanded.places.site.site, `build ${stamp.build}`].join(" · "));
  const breaksBefore = pageBreaks(heights, { first: headRows, whole, heads, fresh: freshRows, blank }, paper);
  const plan: SheetPlan = {
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
  const reading = readPlannedTab(plan);
  return withAnswers(withBuilt(plan, reading), reading);
}

/** Keeps a text from being read as a code of the page header, where & begins one. */
function escapeCode(text: string): string {
  return text.replaceAll("&", "&&");
}

/** Works out where the blocks will stand, as the summary above them refers to their rows. */
function placeBlocks({ expanded, model, stamp, records }: TabSource): TabBlocks {
  const nowhere = { first: 0, last: 0 };
  const summaryLength = planSummary(expanded, model, stamp, progressFormulas(nowhere, nowhere, 0)).length;
  const stepCount = expanded.sections.reduce((sum, section) => sum + planSection(section, records).length, 0);
  const firstStep = headRows + summaryLength;
  const stepRows: RowSpan = { first: firstStep, last: firstStep + Math.max(stepCount, 1) - 1 };
  // Between two blocks stand a blank row, a title and a row of labels; the orphans have no labels. A block without rows says so in one.
  const pocketRows = pocketSheets(expanded, () => 0).reduce((sum, { rows }) => sum + rows.length + 2, 0);
  const firstSnag = stepRows.last + pocketRows + 4;
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

function addSteps({ rows, merges, whole, heads, freshRows, placed, steps }: TabRows, { expanded, records }: TabSource, { snagRows }: TabBlocks): void {
  let no = 0;
  const place = (step: JobStep, columns: SlotColumns | null): void => {
    steps.set(step.key, { no, step });
    placed.push({ row: rows.length, step, columns });
  };
  for (const section of expanded.sections) {
    const sectionPlan = planSection(section, records);
    for (const [from, to] of partsKeptWhole(sectionPlan, rows.length)) whole.set(from, to);
    for (const planned of sectionPlan) {
      if (planned.is !== "step" && planned.is !== "grid") heads.add(rows.length);
      switch (planned.is) {
        case "visit":
          // The first one goes on below the summary.
          if (no > 0) freshRows.add(rows.length);
          rows.push(titleRow(section.visit, null, "visit"));
          break;
        case "title":
          rows.push(titleRow(section.title));
          break;
        case "grid-head":
          merges.push({ row: rows.length, column: at.step, rows: 1, columns: shownColumns - at.step });
          rows.push(gridHeadRow(section.columns));
          break;
        case "grid-labels":
          rows.push(gridLabelRow(section.columns));
          break;
        case "list-head":
          rows.push(labelRow(listHeads));
          break;
        case "step":
          no += 1;
          place(planned.step, null);
          rows.push(stepRow(planned.step, records.steps.get(planned.step.key), { row: rows.length, no, snagRows }));
          break;
        case "grid":
          no += 1;
          planned.slots.forEach((slot, index) => {
            if (slot !== null) place(slot.step, slotColumns[index]!);
          });
          rows.push(gridRow(planned.slots, { row: rows.length, no, apart: planned.apart }));
      }
    }
  }
  if (expanded.sections.length === 0) rows.push(rowOf({ step: styled("No step of the procedure applies to this job.", "note") }));
  rows.push(rowOf({}));
}

/** Lists the parts of a section that need what stands above their rows: a grid, and the list below it. */
function partsKeptWhole(rows: readonly SectionRow[], start: number): [from: number, to: number][] {
  const heads = rows.map(({ is }) => is);
  if (!heads.includes("grid-head")) return [];
  const end = start + rows.length;
  const list = heads.indexOf("list-head");
  return list < 0 ? [[start, end]] : [[start, start + list], [start + list, end]];
}

/** Headers of a list below the rows of a grid. */
const listHeads = Object.fromEntries(tabColumnKeys.slice(0, shownColumns).map((key) => [key, tabColumns[key].header]));

/** Adds the sheets that are cut out of the print: each is kept whole, and what comes below them begins a page. */
function addPocketSheets({ rows, merges, whole, freshRows, steps }: TabRows, { expanded }: TabSource): void {
  const sheets = pocketSheets(expanded, ({ key }) => steps.get(key)!.no);
  if (sheets.length === 0) return;
  freshRows.add(rows.length);
  for (const sheet of sheets) {
    const first = rows.length;
    rows.push(titleRow(sheet.title));
    for (const row of sheet.rows) addSummaryRow({ rows, merges }, row);
    whole.set(first, rows.length);
    rows.push(rowOf({}));
  }
  freshRows.add(rows.length);
}

function addSnags({ rows, heads, steps }: TabRows, { records: { snags, usedSnagIds } }: TabSource, { stepRows, snagRows }: TabBlocks): void {
  heads.add(rows.length).add(rows.length + 1);
  rows.push(titleRow("Snags: what must be put right", tags.snags), labelRow(snagHeads));
  for (let index = 0; index < snags.length + spareSnags; index += 1) {
    const snag = snags[index];
    const id = snag?.id ?? snagId(usedSnagIds + 1 + index - snags.length);
    rows.push(snagRow(snag, { row: rows.length, id, stepRows, snagRows, steps }));
  }
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

function addSeals({ rows, heads }: TabRows, { records: { seals } }: TabSource): void {
  heads.add(rows.length);
  rows.push(titleRow("Seals: they show that something changed, not who changed it; the code on the signed page is the proof", tags.seals), labelRow(sealHeads));
  for (const { typed } of seals) {
    const cells: TabCells = { key: hidden(tags.seal) };
    for (const field of sealFields) cells[sealColumns[field]] = styled(typed[field], "text");
    rows.push(rowOf(cells));
  }
}
