import { buildTabs } from "../../src/actions/build-tabs";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";
import type { SnagField } from "../../src/planning/commissioning/record";
import type { TabReading } from "../../src/planning/commissioning/tab";
import { snagColumns } from "../../src/planning/commissioning/tab/snag-columns";
import { slotColumns } from "../../src/planning/commissioning/tab/tab-columns";
import type { TableRow, TableRows } from "../../src/planning/plan/schema";
import type { Cell, Scalar, SheetSnapshot } from "../../src/sheet";
import type { Edit } from "../../src/workbook/port";
import { addPlan, jobName, moment, smallPlan, step } from "./commissioning-plan";
import { columnOf, tabInSight } from "./tab-on-sheet";

/** Makes numbers from 0 to below 1 that a seed gives again (a linear congruence, Numerical Recipes). */
function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const kinds: readonly Partial<TableRow<"steps">>[] = [
  {},
  { record: "number", expect: "48", tolerance: 2 },
  { record: "number", expect: "8972" },
  { record: "number" },
  { record: "date", expect: "2026-05-31" },
  { record: "date" },
  { record: "choice:Complete|Incomplete", expect: "Complete" },
  { record: "text" },
  { record: "serial", expect: "N-0001" },
  { record: "text", expect: "Straße 4" },
  { record: "size", expect: "12 TiB", unit: "TB", tolerancePercent: 1 },
  { record: "size", unit: "TB" },
  { record: "address", expect: "fd00::10:1" },
  { record: "address", expect: "192.0.2.1" },
  { record: "address" },
];

/** What people type: right, wrong, nearly right, and what no program may read in its own way. */
const found: readonly Scalar[] = [
  null, null, 0, 1, 48, 50, 50.1, -3, 12, 13.2, 13_194_139_533_312, 8972, 46_173, 46_173.75, 46_174, 0.1, 1e21, true, false, "", " ", "\u00a0", "Yes", "yes", "NO", "x", "TRUE",
  "Waived", "waived", "Not applicable", "Waived ", "48", " 48", "48.0", "4,8", "48%", "8972", "8972 ", "1e3", "2026-05-31", "31.5.2026", "many", "N-0001", "n-0001", "N-0001 ", "N -0001",
  "straße 4", "STRASSE 4", "Complete", "complete", "*", "N*", "?", "~accepted", "fd00::10:1", "FD00::10:1", "fd00::0010:1", "fd00:0:0:0:0:0:10:1", "fd00:0000:0000:0000:0000:0000:0010:0001",
  "192.0.2.1", "192.0.02.1", "192.0.0.1", " 192.0.2.1", "=1+1", "'48", "４８", "\ud800", "1E+3", "TRUE ", "wahr",
];
const names: readonly Scalar[] = [null, "AB", "ab", "*", "A B", "CD", " ", 7, "\u00a0"];
const columns: Readonly<Record<string, readonly Scalar[]>> = {
  found,
  unit: [null, "TB", "TiB", "tib", "bytes", "GB", " TB", 5],
  expectedBefore: [null, null, null, "47"],
  recheckedBy: [null, "Yes", " "],
  by: names,
  witness: names,
  note: [null, "why", " "],
};
const snagCells: Readonly<Record<Exclude<SnagField, "about">, readonly Scalar[]>> = {
  foundWrong: [null, "Dent"],
  mender: [null, "EF"],
  byWhen: [null, 46_180],
  foundAgain: found,
  closed: [null, "Closed", "closed", "Accepted", "Accepted", "Open", " "],
  by: names,
  note: [null, "why"],
};

/** How many records are filled at a time, where nothing else is said. */
export const recordCount = 120;

const stepsOf = (count: number): TableRow<"steps">[] => Array.from({ length: count }, (_, index) =>
  step(`K-${index}`, "Start", { minutes: index % 7, sign: (["one", "two", "none"] as const)[index % 3], required: index % 4 === 0 ? "no" : "yes", ...kinds[index % kinds.length] }));

/** Sections that are shown as grids, of one step up to four: every kind but a size stands in one, once a drive. */
const inGrids = kinds.filter(({ record }) => record !== "size");
const grids = [1, 2, 3, 4, 3].map((width, index, widths) => {
  const before = widths.slice(0, index).reduce((sum, one) => sum + one, 0);
  return { section: `Grid ${index}`, kinds: inGrids.slice(before, before + width) };
});
const drives = 3;

/** Records that stand in the grids of a random tab, with the step that signs for each. */
const gridRecords = inGrids.length * drives + grids.length;

/** A plan of so many steps in a list and in grids. */
function randomPlan(count: number): TableRows {
  const { arrays, procedures, ...rest } = smallPlan();
  return {
    ...rest,
    arrays: arrays!.slice(0, 1).map((row) => ({ ...row, scheme: "RAID 5", drives })),
    procedures: [...procedures!, ...grids.map(({ section }) => ({ procedure: "Try out", section, forEach: "drive", shownAs: "grid" } as const))],
    steps: [
      ...stepsOf(count - gridRecords),
      ...grids.flatMap((grid, index) => grid.kinds.map((kind, place) => step(`G-${index}${place}`, grid.section, { required: place === 1 ? "no" : "yes", ...kind }))),
    ],
  };
}
/** Day number of 9999-12-31, the last one of the calendar of sheets. */
const lastDay = 2_958_465;
const snagRows = 13;
const errorFormula = "=1/0";

/** Opens a workbook on the engine with a tab of steps of every kind, in which nothing is typed yet. */
export async function openRandomTab(count = recordCount): Promise<HeadlessWorkbook> {
  const workbook = await openHeadless();
  await addPlan(workbook.port, randomPlan(count));
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) {
    if (!outcome.built || outcome.steps !== count) throw new Error(outcome.sentence);
  }
  return workbook;
}

/** Reads the tab of a workbook, and its sheet. */
export async function readRandomTab({ port }: HeadlessWorkbook): Promise<{ readonly sheet: SheetSnapshot; readonly tab: TabReading }> {
  const tab = await tabInSight(port);
  return { tab, sheet: (await port.read([tab.sheet])).sheets.find(({ name }) => name === tab.sheet)! };
}

/** Fills every row of a tab at random; now and then a cell shows an error. */
export async function fillAtRandom(workbook: HeadlessWorkbook, seed: number): Promise<void> {
  const random = seededRandom(seed);
  const pick = <Value>(list: readonly Value[]): Value => list[Math.floor(random() * list.length)]!;
  const { tab } = await readRandomTab(workbook);
  // A number typed into a cell of text format is a text.
  const cell = (column: string, value: Scalar, isText: boolean, mayFail = column !== "expectedBefore"): Cell => {
    if (random() < 0.01 && mayFail) return { formula: errorFormula };
    return { value: isText && typeof value === "number" ? String(value) : value };
  };
  const rowEdit = (row: number, cells: Readonly<Record<string, Cell>>): Edit => {
    const line = new Array<Cell | null>(columnOf(tab, "note") + 1).fill(null);
    for (const [column, one] of Object.entries(cells)) line[columnOf(tab, column)] = one;
    return { kind: "write", sheet: tab.sheet, row, column: 0, cells: [line] };
  };
  const edits = tab.steps.map(({ row, plannedUnit, kind, slot }) => {
    const isNumeric = (column: string): boolean => column === "found" && ["number", "size", "date"].includes(kind);
    // A file can keep neither a day beyond the calendar nor an error in a cell of days.
    const isDay = (column: string): boolean => column === "found" && kind === "date";
    const isKept = (value: Scalar): boolean => typeof value !== "number" || value <= lastDay;
    if (slot !== null) {
      const value = pick(isDay("found") ? found.filter(isKept) : found);
      return rowEdit(row, { [slotColumns[slot.place]!.found]: cell("found", value, !isNumeric("found"), !isDay("found")) });
    }
    return rowEdit(row, Object.fromEntries(Object.entries(columns).map(([column, values]): [string, Cell] => {
      const value = column === "unit" && random() < 0.5 ? plannedUnit : pick(isDay(column) ? values.filter(isKept) : values);
      return [column, cell(column, value, !isNumeric(column), column !== "expectedBefore" && !isDay(column))];
    })));
  });
  for (let index = 0; index < snagRows; index += 1) {
    const row = tab.places.snagsRow + 2 + index;
    const about = pick<Scalar>([null, "gone", "3", 999, true, ...Array.from({ length: 12 }, () => Math.floor(random() * 20) + 1), tab.steps.length - Math.floor(random() * gridRecords)]);
    const typed = Object.entries(snagCells).map(([field, values]): [SnagField, Cell] =>
      [field as SnagField, cell(field, random() < 0.2 ? null : pick(values), field !== "byWhen" && field !== "foundAgain")]);
    const cells = [["about", cell("about", about, false)] as const, ...typed];
    edits.push(rowEdit(row, Object.fromEntries(cells.map(([field, one]) => [snagColumns[field], one]))));
  }
  await workbook.port.apply(edits);
}
