import { isClosed, type StepRecord } from "../planning/commissioning/record";
import { answersOfTab, readSections, readTab, readTabs, snagBlocks, stepBlocks, tabsInUse, type TabReading, type TabSection } from "../planning/commissioning/tab";
import { invalid, quote } from "../planning/text";
import { isInArea, type CellBlock, type Scalar, type SheetSnapshot } from "../sheet";
import { openDocumentPort } from "../workbook/document/document-port";
import { documentSnapshot } from "../workbook/document/document-snapshot";
import type { DocumentSheet } from "../workbook/document/workbook-document";
import type { Edit, WorkbookPort } from "../workbook/port";
import { readFile } from "../workbook/xlsx/read-workbook";
import { writeFile } from "../workbook/xlsx/write-workbook";

/** One cell into which somebody typed. */
export interface Entry {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: Scalar;
}

/** The tab of a job as it stands now. */
export interface JobTab {
  readonly sheet: SheetSnapshot;
  readonly tab: TabReading;
  readonly sections: readonly TabSection[];
  /** Why nothing can be typed into it, in a sentence that says what to do; null where it can. */
  readonly locked: string | null;
}

/** A workbook file with commissioning tabs, into whose cells people type one step at a time. Nothing here computes but the twin of the tabs. */
export class JobFile {
  private constructor(
    private readonly sheets: readonly DocumentSheet[],
    private readonly port: WorkbookPort,
    /** By the sheet of each tab in use, in their order, another one of the same job in sight; null where there is none. */
    private readonly copies: ReadonlyMap<string, string | null>,
  ) {}

  /** Names of the sheets that are tabs in use, in their order. */
  get jobs(): readonly string[] {
    return [...this.copies.keys()];
  }

  /** Opens the bytes of a file; refuses with a sentence what is no workbook, and one without a tab. */
  static open(bytes: Uint8Array): JobFile {
    const { document } = readFile(bytes);
    const copies = new Map(tabsInUse(readTabs(documentSnapshot(document))).map(({ tab, copies: [copy] }) => [tab.sheet, copy?.sheet ?? null]));
    if (copies.size === 0) throw invalid("file", "", "This workbook has no commissioning tab. Build the tab of the job in the pane, save the workbook, and choose that file.");
    return new JobFile(document.sheets, openDocumentPort(document).port, copies);
  }

  /** Reads the tab that stands on a sheet. */
  async read(name: string): Promise<JobTab> {
    const sheet = (await this.port.read([name])).sheets.find((one) => one.name === name);
    const tab = sheet === undefined ? null : readTab(sheet);
    if (sheet === undefined || tab === null) throw invalid("file", name, `${quote(name)} is no commissioning tab any more. Choose the file again.`);
    return { sheet, tab, sections: readSections(sheet, tab), locked: whyLocked(sheet, tab, this.copies.get(name) ?? null) };
  }

  async write(entries: readonly Entry[]): Promise<void> {
    await this.port.apply(editsOf(entries));
  }

  /** Lists what the cell of a step offers to be chosen, as the file says it; none where anything may be typed. */
  choices({ tab }: JobTab, step: StepRecord): readonly string[] {
    const place = stepBlocks(tab, step, { found: null })[0]!;
    const rules = this.sheets.find(({ name }) => name === tab.sheet)?.typingRules ?? [];
    const list = rules.find(({ type, areas }) => type === "list" && areas.some((area) => isInArea(place, area)))?.formulas[0];
    return list === undefined || list.startsWith("=") ? [] : list.split(",").map((choice) => choice.trim());
  }
}

/** Writes what was typed into a file and makes the file that is given back: its cells and what follows from them, and all else as it came. */
export async function fileWith(bytes: Uint8Array, entries: readonly Entry[]): Promise<Uint8Array> {
  const open = readFile(bytes);
  const { port, finish } = openDocumentPort(open.document, answersOfTab);
  await port.apply(editsOf(entries));
  return writeFile(open, open.document, finish());
}

/** Says in which cells entries about a step stand. */
export function stepEntries({ tab }: JobTab, step: StepRecord, entries: Parameters<typeof stepBlocks>[2]): Entry[] {
  return entriesOf(tab.sheet, stepBlocks(tab, step, entries));
}

/** Says in which cells entries about a snag stand; in the first blank row where `row` is null. */
export function snagEntries({ sheet, tab }: JobTab, row: number | null, entries: Parameters<typeof snagBlocks>[3]): Entry[] {
  return entriesOf(tab.sheet, snagBlocks(sheet, tab, row, entries));
}

function entriesOf(sheet: string, blocks: readonly CellBlock[]): Entry[] {
  return blocks.map(({ row, column, cells }) => ({ sheet, row, column, value: cells[0]?.[0]?.value ?? null }));
}

function editsOf(entries: readonly Entry[]): Edit[] {
  return entries.map(({ sheet, row, column, value }) => ({ kind: "write", sheet, row, column, cells: [[{ value }]] }));
}

function whyLocked(sheet: SheetSnapshot, tab: TabReading, copy: string | null): string | null {
  const [fault] = tab.faults;
  if (fault !== undefined) return fault;
  if (copy !== null) return `Tabs ${quote(tab.sheet)} and ${quote(copy)} of this file are of one job. Delete the one that is not meant, save the workbook, and choose that file.`;
  if (isClosed(tab)) return "This tab is closed and sealed: it can be read here, not written. Reopen it in the pane, with name and reason, and choose that file.";
  if (!tab.whole) return "The build of this tab has not come to its end. Build it again in the pane, save the workbook, and choose that file.";
  if (sheet.protected) return "This tab is protected against typing. Take the protection of the sheet away, save the workbook, and choose that file.";
  if (tab.places.layout === "earlier") return "This tab was built by an earlier release. Build it again in the pane: what was typed stays. Save the workbook, and choose that file.";
  return null;
}
