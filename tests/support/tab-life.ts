import { buildJob, jobsOf, readCommissioningPlan, type AdjustReading, type JobBuild } from "../../src/planning/commissioning/build";
import { acceptReturned, compareReturned, snagFields } from "../../src/planning/commissioning/record";
import { isSpent, readPlannedTab, readTab, stateCell, tabStates, type TabReading } from "../../src/planning/commissioning/tab";
import { snagColumns } from "../../src/planning/commissioning/tab/snag-columns";
import { slotColumns } from "../../src/planning/commissioning/tab/tab-columns";
import { twinCells } from "../../src/planning/commissioning/tab/twin-cells";
import { Problem } from "../../src/planning/text";
import type { TableRows } from "../../src/planning/plan/schema";
import { showCell, type CellValue, type SheetPlan, type SheetSnapshot } from "../../src/sheet";
import { gridPlan, jobName, moment, planWorkbook } from "./commissioning-plan";
import { seededRandom } from "./seeded-random";

/** A sheet of a tab on which a person works. */
interface Sheet {
  readonly name: string;
  readonly visible: boolean;
  values: CellValue[][];
  formulas: (string | null)[][];
}

/** What the life of a tab has come to. */
export interface TabLife {
  /** Texts that were typed, by area, and those of them that no tab holds any more. */
  readonly typed: Readonly<Record<string, number>>;
  readonly lost: readonly string[];
  readonly builds: number;
  /** Builds and returned copies that were refused by name. */
  readonly refused: number;
  /** Texts that stand twice in the block for what was found elsewhere. */
  readonly doubled: number;
}

const small = gridPlan();

/** Changes of plan and procedure between two builds. */
const planEdits: readonly ((rows: TableRows) => TableRows)[] = [
  (rows) => rows,
  (rows) => ({ ...rows, arrays: rows.arrays!.slice(1), ports: rows.ports!.filter(({ array }) => array !== rows.arrays![0]!.array) }),
  (rows) => ({ ...rows, arrays: rows.arrays!.map((row) => ({ ...row, serial: `${String(row.serial)}X` })) }),
  (rows) => ({ ...rows, arrays: rows.arrays!.map((row) => ({ ...row, bottomUnit: Number(row.bottomUnit) + 1 })) }),
  (rows) => ({ ...rows, steps: rows.steps!.map((row) => ({ ...row, unit: row.unit === "TB" ? "TiB" : row.unit })) }),
  (rows) => ({ ...rows, steps: rows.steps!.filter(({ stepId }) => stepId !== "T-21" && stepId !== "T-01") }),
  (rows) => ({ ...rows, steps: [...rows.steps!].reverse() }),
  (rows) => ({ ...rows, steps: rows.steps!.map((row) => (row.stepId === "T-90" ? { ...row, do: `${String(row.do)} again`, sign: "one" } : row)) }),
  (rows) => ({ ...rows, procedures: rows.procedures!.map((row) => ({ ...row, shownAs: row.section === "Ports" && row.shownAs === "grid" ? "list" as const : row.shownAs ?? null })) }),
  (rows) => ({ ...rows, steps: rows.steps!.map((row) => (row.stepId === "T-22" ? { ...row, expect: "192.0.2.254" } : row)) }),
  (rows) => ({ ...rows, steps: rows.steps!.map((row) => (row.stepId === "T-11" || row.stepId === "T-90" ? { ...row, holdPoint: row.holdPoint === "yes" ? "no" as const : "yes" as const } : row)) }),
  (rows) => ({ ...rows, procedures: rows.procedures!.map((row, index) => ({ ...row, visit: row.visit === undefined ? `Visit to ${index % 3}` : null })) }),
  () => small,
];

/**
 * Lives through the builds of one tab, with everything that people do to a sheet in between, and counts what was lost.
 *
 * Every text that is typed has a number of its own, so that it is found wherever it stands. What is typed over, cleared or deleted with its row
 * by a person is not looked for any more. `chain` is how many builds follow each other.
 */
export function liveThrough(seed: number, chain: number): TabLife {
  return new Life(seed).run(chain);
}

class Life {
  private readonly random: () => number;
  private readonly typed: Record<string, number> = {};
  /** Area of each text that somebody must still find, by its mark. */
  private readonly alive = new Map<string, string>();
  private readonly copies: Sheet[] = [];
  private readonly lost: string[] = [];
  private earlier: Sheet[] = [];
  private rows: TableRows = small;
  private marks = 0;
  private builds = 0;
  private refused = 0;
  private doubled = 0;

  constructor(private readonly seed: number) {
    this.random = seededRandom(seed);
  }

  run(chain: number): TabLife {
    let sheet = this.onSheet(this.build([])!);
    for (let round = 0; round < chain; round += 1) {
      const actions = Math.floor(this.random() * 12);
      for (let index = 0; index < actions; index += 1) this.act(sheet);
      if (this.earlier.length > 0 && this.random() < 0.3) this.typeAnywhere(this.pick(this.earlier), "an earlier tab");
      if (this.random() < 0.4) this.copies.push(this.copyOf(sheet));
      // A step of a tab of one array would leave none: begin again.
      this.rows = this.rows.arrays!.length < 2 ? small : this.pick(planEdits)(this.rows);
      sheet = this.next(sheet);
    }
    return { typed: this.typed, lost: this.lost, builds: this.builds, refused: this.refused, doubled: this.doubled };
  }

  /** Builds the next tab over a sheet; where that is refused by name the person undoes what they did. */
  private next(sheet: Sheet): Sheet {
    const returned = this.copies.length > 0 && this.random() < 0.3 ? this.returnedCopy(sheet) : null;
    let built = this.build([this.computed(sheet), ...this.earlier.map(snapshotOf)], returned?.adjust);
    if (built === null && returned !== null) built = this.build([this.computed(sheet), ...this.earlier.map(snapshotOf)]);
    else for (const [mark, area] of returned?.marks ?? []) this.alive.set(mark, area);
    if (built === null) {
      this.refused += 1;
      return sheet;
    }
    const next = this.onSheet(built);
    const reading = readPlannedTab(built.tab);
    this.earlier = [...this.earlier.filter((one) => !isSpent(this.read(one), reading)), { ...sheet, name: `${jobName} before ${this.builds}`, visible: false }];
    this.tell(next, reading);
    return next;
  }

  private build(sheets: readonly SheetSnapshot[], adjust?: AdjustReading): JobBuild | null {
    try {
      const source = readCommissioningPlan({ sheets: [...planSheetsOf(this.rows), ...sheets] });
      const built = buildJob(source, jobsOf(source)[0]!, () => jobName, moment, adjust);
      this.builds += 1;
      return built;
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      return null;
    }
  }

  /** Looks for every text that must be there, in the new tab or, where it cannot be carried, on an earlier one. */
  private tell(next: Sheet, reading: TabReading): void {
    const shown = next.values.flat().flatMap((value) => (typeof value === "string" || typeof value === "number" ? [String(value)] : [])).join("\n");
    for (const [mark, area] of this.alive) {
      if (shown.includes(mark)) continue;
      this.lost.push(`seed ${this.seed}: ${mark} of ${area}`);
      this.alive.delete(mark);
    }
    const texts = reading.elsewhere.map(({ typed: { text, place, from } }) => [text, place, from].join("\n"));
    this.doubled += texts.length - new Set(texts).size;
  }

  /** Brings a copy of an earlier build back, with more typed into it. */
  private returnedCopy(ours: Sheet): { readonly adjust: AdjustReading; readonly marks: readonly (readonly [string, string])[] } {
    const copy = this.copyOf(this.pick(this.copies));
    const before = new Map(this.alive);
    for (let index = 0; index < 4; index += 1) this.act(copy);
    const marks = [...this.alive].filter(([mark]) => !before.has(mark)).map(([mark]) => [mark, "a returned copy"] as const);
    // Until they are brought back they stand in the copy alone, and so does what was typed over there.
    for (const [mark] of marks) this.alive.delete(mark);
    // What the copy has lost stands in ours still; but for a snag of ours that nobody touched, which theirs takes the place of.
    const snags = JSON.stringify(this.read(ours).snags.map(({ typed }) => typed));
    for (const [mark, area] of before) if (!this.alive.has(mark) && !snags.includes(mark)) this.alive.set(mark, area);
    const theirs = readTab(this.computed(copy));
    // What it says of hold points is shown, and stands in the copy alone.
    const shown = theirs === null || theirs.faults.length > 0 ? "" : heldTexts(this.read(ours), theirs);
    return {
      marks: theirs === null || theirs.faults.length > 0 ? [] : marks.filter(([mark]) => !shown.includes(mark)),
      adjust: (tab) => {
        if (theirs === null || theirs.faults.length > 0) return tab;
        const { items } = compareReturned(tab, theirs);
        return acceptReturned(tab, theirs, new Set(items.map(({ id }) => id)));
      },
    };
  }

  private act(sheet: Sheet): void {
    const actions: readonly (readonly [weight: number, run: () => void])[] = [
      [6, () => { this.typeRecord(sheet); }],
      [3, () => { this.typeSnag(sheet); }],
      [6, () => { this.typeAnywhere(sheet); }],
      [3, () => { this.typeOver(sheet); }],
      [1, () => { this.addColumn(sheet); }],
      [1, () => { this.addRow(sheet); }],
      [2, () => { this.copyRow(sheet); }],
      [1, () => { this.sortSteps(sheet); }],
      [1, () => { this.deleteRow(sheet); }],
      [1, () => { this.moveRow(sheet); }],
      [1, () => { this.clearCell(sheet); }],
    ];
    let drawn = this.random() * actions.reduce((sum, [weight]) => sum + weight, 0);
    for (const [weight, run] of actions) {
      drawn -= weight;
      if (drawn < 0) {
        run();
        return;
      }
    }
  }

  private typeRecord(sheet: Sheet): void {
    const tab = this.read(sheet);
    if (tab.steps.length === 0) return;
    const { row, slot } = this.pick(tab.steps);
    if (slot === null) {
      const column = this.pick(["found", "unit", "recheckedBy", "by", "witness", "done", "note"] as const);
      this.put(sheet, row, tab.places.columns[column], "a record");
      return;
    }
    const { found } = slotColumns[slot.place]!;
    const column = tab.places.columns[found]!;
    if (this.random() < 0.3) {
      // What is as expected stays in the grid.
      const before = sheet.values[row]?.[column] ?? null;
      this.write(sheet, row, column, this.pick(["Yes", "none", 8972, "192.0.2.1"]));
      this.forget(sheet, [before]);
    } else this.put(sheet, row, tab.places.columns[this.random() < 0.2 ? "note" : found], "a record in a grid");
  }

  private typeSnag(sheet: Sheet): void {
    const tab = this.read(sheet);
    const row = tab.places.snagsRow + 2 + Math.floor(this.random() * 15);
    if (row >= tab.places.orphansRow) return;
    const { columns } = tab.places;
    const about = columns[snagColumns.about];
    if (about !== undefined && this.random() < 0.5) {
      const before = sheet.values[row]?.[about] ?? null;
      this.write(sheet, row, about, this.random() < 0.8 ? Math.ceil(this.random() * 18) : "gone");
      this.forget(sheet, [before]);
    }
    this.put(sheet, row, columns[snagColumns[this.pick(snagFields)]], "a snag");
    if (this.random() < 0.3) this.put(sheet, row, this.pick([columns.unit, columns.by, columns.witness, columns.done]), "beside a snag");
  }

  /** Types into any cell of the sheet and around it. */
  private typeAnywhere(sheet: Sheet, area?: string): void {
    const tab = this.read(sheet);
    const row = Math.floor(this.random() * (sheet.values.length + 4));
    const column = Math.floor(this.random() * (width(sheet) + 3));
    const { headerRow, places: { snagsRow, orphansRow, sealsRow } } = tab;
    const where =
      row < headerRow ? "the title" : row === headerRow ? "the headers" : row < (tab.steps[0]?.row ?? snagsRow) - 1 ? "beside the summary" : row < snagsRow ? "among the steps"
      : row < orphansRow ? "among the snags" : row < sealsRow ? "in the kept blocks" : "among the seals and below";
    this.put(sheet, row, column, area ?? where);
  }

  private typeOver(sheet: Sheet): void {
    const tab = this.read(sheet);
    const column = this.pick(["result", "expected", "expectedBefore", "stepId", "step", "no", "subject", "low", "minutes", "carried", "compares"] as const);
    const row = this.pick([...tab.steps, ...tab.orphans, ...tab.snags]).row;
    const area = row > tab.places.snagsRow && row < tab.places.orphansRow ? "over a snag" : `over ${column}`;
    this.put(sheet, row, tab.places.columns[column], area, column === "result" && this.random() < 0.3);
  }

  private addColumn(sheet: Sheet): void {
    const tab = this.read(sheet);
    const at = Math.floor(this.random() * (width(sheet) + 1));
    for (const line of sheet.values) line.splice(at, 0, ...(line.length >= at ? [null] : []));
    for (const line of sheet.formulas) line.splice(at, 0, ...(line.length >= at ? [null] : []));
    if (this.random() < 0.7) this.put(sheet, tab.headerRow, at, "an own header");
    for (const { row } of tab.steps.slice(0, 3)) this.put(sheet, row, at, "an own column");
  }

  private addRow(sheet: Sheet): void {
    const at = Math.floor(this.random() * sheet.values.length);
    sheet.values.splice(at, 0, []);
    sheet.formulas.splice(at, 0, []);
    for (let index = 0; index < 3; index += 1) this.put(sheet, at, Math.floor(this.random() * width(sheet)), "an own row");
  }

  private copyRow(sheet: Sheet): void {
    const tab = this.read(sheet);
    const row = this.pick([...tab.steps, ...tab.snags, ...tab.elsewhere]).row;
    sheet.values.splice(row + 1, 0, [...(sheet.values[row] ?? [])]);
    sheet.formulas.splice(row + 1, 0, [...(sheet.formulas[row] ?? [])]);
    this.put(sheet, row + 1, this.pick([tab.places.columns.found, tab.places.columns.note, tab.places.columns.step]), "a copied row");
  }

  private sortSteps(sheet: Sheet): void {
    const rows = [...new Set(this.read(sheet).steps.map(({ row }) => row))];
    const order = [...rows].sort(() => this.random() - 0.5);
    const [values, formulas] = [sheet.values, sheet.formulas];
    sheet.values = values.map((line, row) => (rows.includes(row) ? values[order[rows.indexOf(row)]!]! : line));
    sheet.formulas = formulas.map((line, row) => (rows.includes(row) ? formulas[order[rows.indexOf(row)]!]! : line));
  }

  private deleteRow(sheet: Sheet): void {
    const tab = this.read(sheet);
    const row = this.pick([...tab.steps, ...tab.snags]).row;
    const gone = sheet.values.splice(row, 1);
    sheet.formulas.splice(row, 1);
    this.forget(sheet, gone.flat());
  }

  private moveRow(sheet: Sheet): void {
    const row = this.pick(this.read(sheet).steps).row;
    const to = Math.floor(this.random() * sheet.values.length);
    for (const grid of [sheet.values, sheet.formulas]) {
      const [line] = (grid as unknown[][]).splice(row, 1);
      (grid as unknown[][]).splice(to, 0, line!);
    }
  }

  private clearCell(sheet: Sheet): void {
    const [row, column] = [Math.floor(this.random() * sheet.values.length), Math.floor(this.random() * width(sheet))];
    const before = this.copyOf(sheet);
    this.write(sheet, row, column, null);
    if (this.isFaulty(sheet)) Object.assign(sheet, { values: before.values, formulas: before.formulas });
    else this.forget(sheet, [before.values[row]?.[column] ?? null]);
  }

  /** Types a text or number of its own; a person who breaks what the tab is read by is told so, and undoes it. */
  private put(sheet: Sheet, row: number, column: number | undefined, area: string, asFormula = false): void {
    if (column === undefined) return;
    this.marks += 1;
    const number = 7_000_000 + this.marks;
    const value = this.random() < 0.2 ? number : this.pick([`x${number}`, `=x${number}`, `a\nx${number}`, ` x${number} `, `Waived x${number}`]);
    const [line = [], formulaLine = []] = [sheet.values[row], sheet.formulas[row]];
    const before = { value: line[column] ?? null, formula: formulaLine[column] ?? null };
    this.write(sheet, row, column, value, asFormula ? `="x${number}"` : null);
    if ((row < 25 || column < 6 || column > 12) && this.isFaulty(sheet)) {
      this.refused += 1;
      this.write(sheet, row, column, before.value, before.formula);
      return;
    }
    this.forget(sheet, [before.value]);
    this.alive.set(String(number), area);
    this.typed[area] = (this.typed[area] ?? 0) + 1;
  }

  private write(sheet: Sheet, row: number, column: number, value: CellValue, formula: string | null = null): void {
    while (sheet.values.length <= row) sheet.values.push([]);
    while (sheet.formulas.length <= row) sheet.formulas.push([]);
    const line = sheet.values[row]!;
    while (line.length <= column) line.push(null);
    line[column] = value;
    const formulaLine = sheet.formulas[row]!;
    while (formulaLine.length <= column) formulaLine.push(null);
    formulaLine[column] = formula;
  }

  /** Stops looking for the texts of cells that a person has cleared or typed over, unless they stand on the sheet still. */
  private forget(sheet: Sheet, cells: readonly CellValue[]): void {
    const gone = cells.flatMap((cell) => /7\d{6}/g.exec(showCell(cell))?.[0] ?? []);
    if (gone.length === 0) return;
    // The place beside a text that was found elsewhere may quote it, and goes with its row.
    const places = new Set(readTab(snapshotOf(sheet))?.elsewhere.map(({ typed }) => typed.place));
    const rest = sheet.values.flat().map(showCell).filter((text) => !places.has(text)).join("\n");
    for (const mark of gone) if (!rest.includes(mark)) this.alive.delete(mark);
  }

  private isFaulty(sheet: Sheet): boolean {
    const tab = readTab(snapshotOf(sheet));
    return tab === null || tab.faults.length > 0 || !tab.whole || tab.jobId !== "J0001" || tab.born !== moment.instant || tab.build === 0;
  }

  private read(sheet: Sheet): TabReading {
    return readTab(snapshotOf(sheet))!;
  }

  /** Puts a planned tab onto a sheet, computed and whole. */
  private onSheet({ tab }: { readonly tab: SheetPlan }): Sheet {
    const values: CellValue[][] = tab.rows.map((row) => row.map(({ value = null, formula }) => (formula === undefined ? value : null)));
    const formulas = tab.rows.map((row) => row.map(({ formula = null }) => formula));
    values[stateCell.row]![stateCell.column] = tabStates.whole;
    return { name: jobName, visible: true, values, formulas };
  }

  /** Shows in every formula of ours what it must, as a spreadsheet program does. */
  private computed(sheet: Sheet): SheetSnapshot {
    const snapshot = snapshotOf(sheet);
    const tab = readTab(snapshot);
    if (tab === null) return snapshot;
    const values = sheet.values.map((line) => [...line]);
    for (const { row, column, value } of twinCells(snapshot, tab)) {
      const formula = sheet.formulas[row]?.[column] ?? null;
      if (formula !== null && !formula.startsWith('="x')) values[row]![column] = value;
    }
    return { ...snapshot, values };
  }

  private copyOf(sheet: Sheet): Sheet {
    return { ...sheet, values: sheet.values.map((line) => [...line]), formulas: sheet.formulas.map((line) => [...line]) };
  }

  private pick<Value>(list: readonly Value[]): Value {
    return list[Math.floor(this.random() * list.length)]!;
  }
}

function heldTexts(ours: TabReading, theirs: TabReading): string {
  try {
    return compareReturned(ours, theirs).holdPoints.map((item) => item.theirs).join("\n");
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return "";
  }
}

/** Lays a plan out once, however often it is built from. */
const planned = new WeakMap<TableRows, readonly SheetSnapshot[]>();
function planSheetsOf(rows: TableRows): readonly SheetSnapshot[] {
  const sheets = planned.get(rows) ?? planWorkbook(rows).sheets;
  planned.set(rows, sheets);
  return sheets;
}

function width({ values }: Sheet): number {
  return values.reduce((most, line) => Math.max(most, line.length), 0);
}

function snapshotOf({ name, visible, values, formulas }: Sheet): SheetSnapshot {
  return { name, visible, values, formulas, protected: false, tables: [], attachments: 0 };
}
