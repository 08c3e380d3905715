import { buildJob, jobsOf, readCommissioningPlan, type AdjustReading } from "../../../../src/planning/commissioning/build";
import { recordFingerprint, snagFingerprint, type JobRecords } from "../../../../src/planning/commissioning/record";
import { snagColumns, type SnagColumn } from "../../../../src/planning/commissioning/tab/snag-columns";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import { at, shownColumns, tabColumnKeys, tabColumns, type TabColumn } from "../../../../src/planning/commissioning/tab/tab-columns";
import { writingHeight } from "../../../../src/planning/commissioning/tab/tab-paper";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { Cell, SheetPlan } from "../../../../src/sheet";
import { moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";
import { sealLine, snagOf, stepRecord } from "../../../support/job-records";
import { lookFaults } from "../../../support/sheet-look";
import { tabSheet } from "../../../support/tab-workbook";

const rows: TableRows = {
  ...smallPlan(),
  jobs: [{ ...smallPlan().jobs![0]!, job: "Nuts & bolts" }],
  steps: [
    step("T-01", "Start", { caution: "Hot! Stay away.", makersGuide: "Page 4", sign: "two", required: "no" }),
    step("T-02", "Start", { record: "number", expect: "4", tolerance: 1, unit: "mm", minutes: 0 }),
    step("T-03", "Start", { record: "size", expect: "4 TB", unit: "TB" }),
    step("T-04", "Start", { record: "address", expect: "fd00::1", sign: "none" }),
    step("T-05", "Start", { record: "serial", expect: "n-1" }),
    step("T-06", "Start", { record: "date" }),
  ],
};

function tabWith(records: Partial<JobRecords> | null = null): SheetPlan {
  const plan = planWorkbook(rows);
  const build = (sheets: typeof plan.sheets, adjust?: AdjustReading): SheetPlan => {
    const source = readCommissioningPlan({ sheets });
    return buildJob(source, jobsOf(source)[0]!, () => "working name", moment, adjust).tab;
  };
  const first = build(plan.sheets);
  return records === null ? first : build([...plan.sheets, tabSheet(first, "Nuts & bolts")], (tab) => ({ ...tab, ...records }));
}

const first = tabWith();
const cell = (tab: SheetPlan, row: number, column: TabColumn): Cell => tab.rows[row]![at[column]]!;
const rowsTagged = (tab: SheetPlan, tag: string): number[] => tab.rows.flatMap((line, row) => (line[at.key]!.value === tag ? [row] : []));
const stepRowOf = (tab: SheetPlan, stepId: string): number => rowsTagged(tab, `J0001/${stepId}/site`)[0]!;
const shown = (tab: SheetPlan, row: number, ...columns: TabColumn[]) => columns.map((column) => cell(tab, row, column).value ?? null);
const styles = (tab: SheetPlan, row: number, ...columns: TabColumn[]) => columns.map((column) => cell(tab, row, column).style);

describe("a planned tab", () => {
  test("uses styles that it has, in columns that have a width", () => {
    expect(lookFaults(first).filter((fault) => !fault.endsWith("is faint"))).toEqual([]);
    expect(first.columnWidths).toHaveLength(tabColumnKeys.length);
    expect(first.columnWidths.every((width) => width !== null && width >= 4.4)).toBe(true);
    expect(first.tabColor).toBe("#2f5d50");
  });

  test("begins with title, progress and the hidden mark of an unfinished build", () => {
    expect(first.name).toBe("working name");
    expect(cell(first, 0, "no")).toEqual({ value: "Nuts & bolts", style: "title" });
    expect(cell(first, 0, "found")).toMatchObject({ formula: expect.stringContaining("steps done") as string, style: "progress" });
    // The marker, then job, build, first build, state, and how many ids were given to rows for snags.
    expect(first.rows[0]!.slice(at.key, at.key + 6).map(({ value }) => value)).toEqual(["Commissioning tab", "J0001", 1, moment.instant, "unfinished", 10]);
    expect(first.rows[1]!.map(({ value }) => value)).toEqual(Object.values(tabColumns).map(({ header }) => header));
    expect(first.merges!.slice(0, 2)).toEqual([{ row: 0, column: 0, rows: 1, columns: 6 }, { row: 0, column: 6, rows: 1, columns: 8 }]);
  });

  test("hides the columns of keys, stops its top two rows and first three columns, and prints the headers on every page", () => {
    expect(shownColumns).toBe(14);
    expect(first.hiddenColumns).toEqual([14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35]);
    expect(first.freeze).toEqual({ rows: 2, columns: 3 });
    expect([first.rowHeights![0], first.rowHeights![1]]).toEqual([26, 18]);
    expect(Object.keys(first.rowHeights!)).toHaveLength(first.rows.length);
    expect(first.print).toMatchObject({
      orientation: "landscape", fitToWidth: false, titleRows: { row: 1, rows: 1 }, paper: "A4", firstPage: 1,
      // In a page header & begins a code: doubled it is itself.
      header: "Nuts && bolts · North hall · build 1 · made 2026-03-02 09:15",
      footer: `Nuts && bolts · North hall · build 1 · page &P of ${first.print!.breaksBefore.length + 1} as built`,
    });
  });

  test("lies on the paper that Settings names", () => {
    const onLetter = planWorkbook({ ...rows, settings: [{ setting: "Paper", value: "letter" }] });
    const source = readCommissioningPlan(onLetter);
    const { tab } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
    expect(tab.print).toMatchObject({ paper: "Letter" });
    // Letter is 17.6 mm narrower than A4 when both lie across; the step gives it up.
    expect(tab.columnWidths[at.step]!).toBeLessThan(first.columnWidths[at.step]!);
  });

  test("says of a step what gets hurt, what is to be done and what the maker's guide says, in this order", () => {
    const row = stepRowOf(first, "T-01");
    expect(cell(first, row - 1, "step")).toEqual({ value: "T-01: CAUTION: Hot! Stay away.\nIf wanted: Do T-01\nMaker's guide: Page 4", style: "stepCaution" });
    expect(cell(first, row, "step")).toEqual({ style: "stepCaution" });
    expect(cell(first, stepRowOf(first, "T-02") - 1, "step")).toEqual({ value: "T-02: Do T-02", style: "gridHead" });
    expect(readPlannedTab(first).steps.slice(0, 2).map(({ step }) => step)).toEqual(["CAUTION: Hot! Stay away.\nIf wanted: Do T-01\nMaker's guide: Page 4", "Do T-02"]);
  });

  test("says at the rows of its steps what may be typed there, by what each records", () => {
    const rulesAt = (stepId: string, column: TabColumn) => {
      const row = stepRowOf(first, stepId);
      return first.validations!.filter(({ area }) => area.column === at[column] && area.row <= row && row < area.row + area.rows).map(({ rule }) => rule);
    };
    expect(rulesAt("T-01", "found")).toEqual([{ kind: "list", items: ["Yes", "No", "Not applicable", "Waived"] }]);
    expect(rulesAt("T-02", "found")).toEqual([{ kind: "number" }]);
    expect(rulesAt("T-03", "unit")).toEqual([{ kind: "list", items: ["TB", "TiB", "bytes"] }]);
    expect([rulesAt("T-02", "unit"), rulesAt("T-04", "found"), rulesAt("T-05", "found")]).toEqual([[], [], []]);
    expect(rulesAt("T-06", "found")).toEqual([{ kind: "date" }]);
  });

  test("numbers the steps, and shows what each expects and in which unit", () => {
    expect(["T-01", "T-02", "T-03"].map((id) => shown(first, stepRowOf(first, id), "no", "stepId", "subject", "expected", "unit", "minutes"))).toEqual([
      [1, "T-01", "North hall", null, null, 5],
      [2, "T-02", "North hall", "4 ±1", "mm", 0],
      [3, "T-03", "North hall", "4 TB", "TB", 5],
    ]);
  });

  test("hides in each row what its formulas compare with", () => {
    const compared = (id: string) => shown(first, stepRowOf(first, id), "rule", "low", "high", "plannedUnit");
    expect(compared("T-01")).toEqual(["optional two tick", null, null, null]);
    expect(compared("T-02")).toEqual(["required one number", 3, 5, "mm"]);
    expect(compared("T-03")).toEqual(["required one size", 4e12, 4e12, "TB"]);
    expect(compared("T-04")).toEqual(["required none address", "fd00::1", "fd00:0000:0000:0000:0000:0000:0000:0001", null]);
    expect(compared("T-05")).toEqual(["required one serial", "N-1", null, null]);
    expect(compared("T-06")).toEqual(["required one date", null, null, null]);
    expect(styles(first, stepRowOf(first, "T-02"), "rule", "low", "digest")).toEqual(["hiddenText", "hidden", "hiddenText"]);
  });

  test("shows in which cells something is to be typed, and how", () => {
    const typed = (id: string) => styles(first, stepRowOf(first, id), "found", "unit", "recheckedBy", "by", "witness", "done", "note");
    expect(typed("T-01")).toEqual(["typedText", "unitFixed", "notAsked", "typedText", "typedText", "typedDate", "typedText"]);
    expect(typed("T-02")).toEqual(["typedNumber", "unitFixed", "notAsked", "typedText", "notAsked", "typedDate", "typedText"]);
    expect(typed("T-03")).toEqual(["typedNumber", "typedText", "notAsked", "typedText", "notAsked", "typedDate", "typedText"]);
    expect(typed("T-06")[0]).toBe("typedDate");
  });

  test("writes beside each formula what it answers", () => {
    const answers = (tab: SheetPlan, id: string) => (["result", "compares", "retest", "retestCompares", "settled"] as const).map((column) => cell(tab, stepRowOf(tab, id), column).value);
    expect(answers(first, "T-02")).toEqual(["", "", "", "", 0]);
    const found = stepRecord({ key: "J0001/T-02/site", expected: "4 ±1", plannedUnit: "mm", typed: { found: 4 } });
    expect(answers(tabWith({ steps: [found] }), "T-02")).toEqual(["As expected", "yes", "", "", 0]);
    expect(answers(tabWith({ steps: [found] }), "T-03")).toEqual(["", "", "", "", 0]);
  });

  test("is high enough to be written in by hand, at every step and in every row for snags", () => {
    const written = [...["T-01", "T-02", "T-06"].map((id) => stepRowOf(first, id)), ...rowsTagged(first, "#snag")];
    for (const row of written) expect(first.rowHeights![row]).toBeGreaterThanOrEqual(writingHeight);
    expect(first.rowHeights![rowsTagged(first, "#snags")[0]!]).toBeLessThan(writingHeight);
  });

  test("says so where no step applies", () => {
    const source = readCommissioningPlan(planWorkbook({ ...rows, steps: [step("T-01", "Start", { when: "Site = Elsewhere" })] }));
    const { tab } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
    expect(tab.rows.flat().map(({ value }) => value)).toContain("No step of the procedure applies to this job.");
    expect(tab.conditionalFormats![0]!.area.rows).toBe(1);
  });
});

describe("a tab that is planned again", () => {
  const typed = { found: 4, unit: "cm", recheckedBy: null, by: "AB", witness: "CD", done: 46_083, note: "n" };
  const record = stepRecord({ key: "J0001/T-02/site", expected: "5", plannedUnit: "mm", typed });
  const orphan = stepRecord({ key: "J0001/T-99/site", no: "", stepId: "T-99", result: "Differs", plannedUnit: "TB", expectedBefore: "old", required: false, typed: { ...typed, unit: null } });
  const snags = [
    snagOf({ id: "S-2", key: "J0001/T-03/site", stepId: "T-03", typed: { about: 9, foundWrong: "Dent", mender: "EF", byWhen: 46_085, foundAgain: 5, closed: "Closed", by: "AB", note: "m" } }),
    snagOf({ id: "S-2", key: "J0001/T-99/site", stepId: "T-99", typed: { about: 8, foundAgain: 7 } }),
    snagOf({ typed: { about: 3 } }),
    snagOf({ typed: { about: "later" } }),
  ];
  const orphans = [orphan, { ...orphan, typed: { ...typed, done: "Friday" } }];
  const seals = [sealLine({ typed: { reopened: "2026-03-10", reopenedBy: "EF", reason: "why" } })];
  const tab = tabWith({ steps: [record], orphans, snags, usedSnagIds: 6, seals });

  test("carries what was typed, with its fingerprint, and asks to look again where the expectation has changed", () => {
    const row = stepRowOf(tab, "T-02");
    const expected = ["4 ±1", 4, "cm", "5", "AB", "CD", 46_083, "n", recordFingerprint(record)];
    expect(shown(tab, row, "expected", "found", "unit", "expectedBefore", "by", "witness", "done", "note", "carried")).toEqual(expected);
    expect(cell(tab, row, "recheckedBy")).toEqual({ style: "typedText" });
    expect(cell(tab, stepRowOf(tab, "T-03"), "carried")).toEqual({});
  });

  test("lists the snags with the numbers that their steps have now", () => {
    const places = rowsTagged(tab, "#snag");
    expect(places).toHaveLength(4 + 10);
    expect(places[0]).toBe(rowsTagged(tab, "#snags")[0]! + 2);
    const cells = (row: number, ...columns: SnagColumn[]) => columns.map((column) => cell(tab, row, snagColumns[column]));
    const fields = ["id", "about", "foundWrong", "mender", "byWhen", "foundAgain", "by", "closed", "note"] as const;
    expect(cells(places[0]!, ...fields).map(({ value }) => value)).toEqual(["S-2", 3, "Dent", "EF", 46_085, 5, "AB", "Closed", "m"]);
    expect(cells(places[0]!, ...fields, "stepId").map(({ style }) => style)).toEqual([
      "no", "typedNumber", "typedText", "typedText", "typedDate", "typedNumber", "typedText", "typedText", "typedText", "stepId",
    ]);
    expect(cell(tab, places[0]!, "carried").value).toBe(snagFingerprint(snags[0]!));
    expect(places.slice(1, 5).map((row) => cells(row, "about")[0]!.value)).toEqual(["gone", "3?", "later", undefined]);
    expect(styles(tab, places[0]!, "unit", "by", "witness", "done")).toEqual(["notAsked", "notAsked", "notAsked", "notAsked"]);
  });

  test("gives each snag an id of its own, the first of two the one it had, and blank rows those behind that nobody has had", () => {
    const ids = rowsTagged(tab, "#snag").map((row) => cell(tab, row, snagColumns.id).value);
    expect(ids).toEqual(["S-2", "S-7", "S-8", "S-9", ...Array.from({ length: 10 }, (_, index) => `S-${10 + index}`)]);
    expect(tab.rows[0]![at.key + 5]!.value).toBe(19);
  });

  test("takes what a retest found as the step records it: a number where it may be one, digits as text where they are a text", () => {
    const foundAgain = (stepId: string | null) => {
      const built = tabWith({ snags: [snagOf({ key: stepId === null ? "" : `J0001/${stepId}/site`, typed: { about: 9, foundAgain: 5 } })] });
      return cell(built, rowsTagged(built, "#snag")[0]!, snagColumns.foundAgain);
    };
    expect(foundAgain("T-02")).toEqual({ value: 5, style: "typedNumber" });
    expect(foundAgain("T-06")).toEqual({ value: 5, style: "typedDate" });
    expect(foundAgain("T-05")).toEqual({ value: "5", style: "typedText" });
    expect(foundAgain(null)).toEqual({ value: 5, style: "typedNumber" });
  });

  test("lets a snag find its step by formulas, but where the step is gone", () => {
    const [known, gone, , unnamed, blank] = rowsTagged(tab, "#snag").map((row) => tab.rows[row]!);
    const answers = (line: readonly Cell[]) => (["stepId", "place", "retest", "isOpen", "key"] as const).map((column) => line[at[snagColumns[column]]]!);
    expect(answers(known!).map(({ formula, value, style }) => [formula !== undefined, value, style])).toEqual([
      [true, "T-03", "stepId"], [true, "3#1", "hidden"], [true, 5, "hidden"], [true, 0, "hidden"], [true, "J0001/T-03/site", "hidden"],
    ]);
    expect([answers(gone!)[0], answers(gone!)[4]]).toEqual([{ value: "T-99", style: "stepId" }, { value: "J0001/T-99/site", style: "hiddenText" }]);
    expect(answers(unnamed!).every(({ formula }) => formula !== undefined)).toBe(true);
    expect(answers(blank!).map(({ value }) => value)).toEqual(["", "", "", 0, ""]);
  });

  test("lists the records whose step is gone, to be read", () => {
    const title = rowsTagged(tab, "#kept")[0]!;
    const row = title + 1;
    expect(shown(tab, row, "stepId", "step", "subject", "expected", "found", "unit", "result", "expectedBefore", "recheckedBy", "by", "witness", "done", "note")).toEqual([
      "T-99", "Do it", "array 1", "Done", 4, "TB", "Differs", "old", null, "AB", "CD", 46_083, "n",
    ]);
    expect(shown(tab, row, "no", "key", "rule", "plannedUnit", "carried")).toEqual([null, "kept:J0001/T-99/site", "optional one tick", "TB", recordFingerprint(orphan)]);
    expect([cell(tab, row, "done").style, cell(tab, row + 1, "done").style]).toEqual(["typedDate", "text"]);
    expect(tab.rows.flat().map(({ value }) => value)).not.toContain("Nothing kept.");
    expect(cell(first, rowsTagged(first, "#kept")[0]! + 1, "no")).toEqual({ value: "Nothing kept.", style: "note" });
  });

  test("keeps the lines of its seals", () => {
    const [row] = rowsTagged(tab, "#seal");
    expect(row).toBe(rowsTagged(tab, "#seals")[0]! + 2);
    expect(shown(tab, row!, "stepId", "step", "subject", "expected", "found", "note")).toEqual(["2026-03-09", "CODE", "AB", "2026-03-10", "EF", "why"]);
    expect(rowsTagged(first, "#seal")).toEqual([]);
  });

  test("labels snags and seals, and gives every block a title over its whole width", () => {
    const [snagTitle, orphanTitle, sealTitle] = ["#snags", "#kept", "#seals"].map((tag) => rowsTagged(tab, tag)[0]!);
    expect([snagTitle, orphanTitle, sealTitle].map((row) => cell(tab, row!, "no"))).toEqual([
      { value: "Snags: what must be put right", style: "section" },
      { value: "Kept from earlier builds: records whose step is no longer here", style: "section" },
      { value: "Seals: they show that something changed, not who changed it; the code on the signed page is the proof", style: "section" },
    ]);
    expect(tab.rows[snagTitle!]!.slice(0, shownColumns).map(({ style }) => style)).toEqual(new Array(shownColumns).fill("section"));
    const labels = (row: number) => tab.rows[row]!.slice(0, shownColumns).map(({ value = null }) => value);
    expect(labels(snagTitle! + 1)).toEqual(["Snag", "Row", "What was found", "Who puts it right", "By when", "Found again", "By", null, "Closed", "Step id", null, null, null, "Note"]);
    expect(labels(sealTitle! + 1)).toEqual([null, "Sealed", "Code", "By", null, "Reopened", "Reopened by", null, null, null, null, null, null, "Reason"]);
    expect(tab.rows[snagTitle! + 1]!.slice(0, shownColumns).every(({ style }) => style === "label")).toBe(true);
  });

  test("has its formulas refer to the rows where its blocks stand", () => {
    const place = (rows: number[]) => `$A$${rows[0]! + 1}:$A$${rows.at(-1)! + 1}`;
    const snagRows = rowsTagged(tab, "#snag");
    expect(cell(tab, snagRows[0]!, snagColumns.place).formula).toContain(`MATCH($B${snagRows[0]! + 1},$B${snagRows[0]! + 2}:$B$${snagRows.at(-1)! + 2},0)`);
    const firstStep = stepRowOf(tab, "T-01");
    expect(cell(tab, snagRows[0]!, snagColumns.stepId).formula).toContain(place([firstStep - 1, stepRowOf(tab, "T-06")]));
    const sealRow = rowsTagged(tab, "#seal")[0]!;
    const seal = tab.rows.flat().find(({ formula }) => formula?.includes("not sealed"));
    expect(seal!.formula).toContain(`COUNTA($D$${sealRow + 1}:$D$${sealRow + 40})`);
  });
});

describe("a hold point and a visit on a tab", () => {
  const held: TableRows = {
    ...rows,
    procedures: [{ ...rows.procedures![0]!, visit: "Set-up" }, ...rows.procedures!.slice(1).map((row, index) => ({ ...row, visit: index === 3 ? "Tests" : null }))],
    steps: [...rows.steps!.map((row) => (row.stepId === "T-01" || row.stepId === "T-03" ? { ...row, holdPoint: "yes" as const } : row)), step("T-90", "End")],
  };
  const source = readCommissioningPlan(planWorkbook(held));
  const tab = buildJob(source, jobsOf(source)[0]!, () => "working name", moment).tab;

  test("a hold point says so in its words, and its number and id stand white on dark, so that it stands out without colour", () => {
    expect(cell(tab, stepRowOf(tab, "T-01") - 1, "step").value).toMatch(/^T-01: HOLD POINT: nothing further until two have signed\. CAUTION: Hot!/);
    expect(cell(tab, stepRowOf(tab, "T-01"), "step").value).toBe("Hold point");
    expect(styles(tab, stepRowOf(tab, "T-01"), "no", "stepId", "step")).toEqual(["holdPoint", "holdPointId", "stepCaution"]);
    expect(styles(tab, stepRowOf(tab, "T-02"), "no", "stepId", "step")).toEqual(["no", "stepId", "step"]);
    expect(lookFaults(tab).filter((fault) => !fault.endsWith("is faint"))).toEqual([]);
  });

  test("a hold point is read back as one, from the last word of its hidden rule", () => {
    const read = readPlannedTab(tab);
    expect(read.steps.filter(({ holdPoint }) => holdPoint).map(({ stepId }) => stepId)).toEqual(["T-01", "T-03"]);
    expect(["T-01", "T-02", "T-03"].map((stepId) => cell(tab, stepRowOf(tab, stepId), "rule").value)).toEqual(["optional two tick hold", "required one number", "required one size hold"]);
    expect(read.faults).toEqual([]);
  });

  test("each visit begins with a heading above its first section", () => {
    const titles = tab.rows.flatMap((line, row) => (line[at.no]!.style === "visit" ? [[cell(tab, row, "no").value, cell(tab, row + 1, "no").value]] : []));
    expect(titles).toEqual([["Visit 1 of 2: Set-up", "Start"], ["Visit 2 of 2: Tests", "End"]]);
    expect(stepRowOf(tab, "T-90")).toBe(tab.rows.findIndex((line) => line[at.no]!.value === "Visit 2 of 2: Tests") + 2);
    expect(first.rows.some((line) => line[at.no]!.style === "visit")).toBe(false);
  });

  test("no formula counts a heading as a step", () => {
    const read = readPlannedTab(tab);
    expect(read.steps).toHaveLength(7);
    expect(read.elsewhere).toEqual([]);
  });

  test("a pocket sheet of each array and of the site lists them by their numbers, side by side above the steps, with no cell to fill in", () => {
    const small = smallPlan();
    const both = [step("T-01", "Start", { holdPoint: "yes", sign: "two", expect: "Agreed" }), step("T-10", "Arrays", { holdPoint: "yes" }), step("T-20", "Ports")];
    const pocketed = readCommissioningPlan(planWorkbook({ ...small, steps: both }));
    const plan = buildJob(pocketed, jobsOf(pocketed)[0]!, () => "new", moment).tab;
    const start = plan.rows.findIndex((line) => line[at.no]!.value === "Pocket sheet: n-1");
    const end = start + 4;
    const lines = plan.rows.slice(start, end).map((_, index) => shown(plan, start + index, "no", "result", "unit", "by"));
    const head = "Hold points; (2): two names sign";
    expect(lines).toEqual([
      ["Pocket sheet: n-1", "Pocket sheet: n-2", "Pocket sheet: North hall", null],
      [head, head, head, null],
      ["2 T-10 Arrays", "3 T-10 Arrays", "1 T-01 Start (2)", null],
      [null, null, null, null],
    ]);
    expect(plan.rows.slice(start, end).flat().some(({ style }) => style !== undefined && "locked" in plan.styles[style]!)).toBe(false);
    expect(readPlannedTab(plan)).toMatchObject({ faults: [], elsewhere: [], orphans: [], snags: [] });
    expect(readPlannedTab(plan).steps).toHaveLength(7);
  });
});
