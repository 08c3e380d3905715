import { buildTabs } from "../../src/actions/build-tabs";
import { previewCloseOut } from "../../src/actions/close-out";
import { jobStandings } from "../../src/actions/progress";
import { readPlanSheets, readPlanValues, readShown } from "../../src/actions/read-plan";
import { writeShownChanges } from "../../src/actions/write-changes";
import { assignPlanAddresses } from "../../src/planning/assignment";
import { initialRows } from "../../src/actions/set-up";
import { checkPlan, rules } from "../../src/planning/checks";
import { readCommissioningPlan } from "../../src/planning/commissioning/build";
import { headRows, mayBeInUse } from "../../src/planning/commissioning/tab";
import type { TableRows } from "../../src/planning/plan/schema";
import { planSetUp } from "../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../src/sheet";
import { moment, smallPlan } from "../support/commissioning-plan";
import { hostWorkbook, type HostWorkbook } from "../support/host-workbook/host-workbook";
import { cellOf, tabInSight, typeInto } from "../support/tab-on-sheet";

/** A workbook behind the vendor's client with so many jobs, in tables as set-up makes them, and their tabs. */
async function built(count: number): Promise<HostWorkbook> {
  const rows = smallPlan();
  const jobs: TableRows["jobs"] = Array.from({ length: count }, (_, index) => ({ ...rows.jobs![0]!, id: `J000${index + 1}`, job: `Hall ${index + 1}` }));
  const book = hostWorkbook({ calculate: () => "" });
  await book.port.apply(planSetUp({ sheets: [] }, { ...initialRows(), ...rows, jobs }).map((plan) => ({ kind: "add-sheet", plan })));
  await build(book);
  return book;
}

async function build({ port }: HostWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(port, moment)) if (!outcome.built) throw new Error(outcome.sentence);
}

async function requestsOf(book: HostWorkbook, work: () => Promise<unknown>) {
  const before = book.syncs();
  await work();
  const exchanges = book.exchanges().slice(before);
  return { count: exchanges.length, answered: exchanges.reduce((sum, { answerBytes }) => sum + answerBytes, 0) };
}

test.each([1, 3, 5])("building the tabs of %i jobs again takes three requests, and six a tab", async (count) => {
  const book = await built(count);
  expect((await requestsOf(book, () => build(book))).count).toBe(3 + 6 * count);
});

test("what stands on the tabs of other jobs is not read where one is closed out", async () => {
  const few = await built(1);
  const many = await built(5);
  const one = await requestsOf(few, () => previewCloseOut(few.port, "Hall 1"));
  const five = await requestsOf(many, () => previewCloseOut(many.port, "Hall 1"));
  const whole = await requestsOf(few, () => few.port.read(["Hall 1"]));
  expect(five.count).toBe(one.count);
  // Of each other tab its first rows are read, without formulas.
  expect(five.answered - one.answered).toBeLessThan(4 * 0.2 * whole.answered);
});

test("addresses that were shown are written without a look at more of the tabs than their heads", async () => {
  const plan = (snapshot: WorkbookSnapshot) => assignPlanAddresses(snapshot);
  const answered = async (read: typeof readShown) => {
    const book = await built(5);
    return (await requestsOf(book, async () => writeShownChanges(book.port, plan(await read(book.port)), plan, read))).answered;
  };
  const book = await built(5);
  const tabs = (await requestsOf(book, () => book.port.read(({ name }) => name.startsWith("Hall "), "values"))).answered;
  const heads = (await requestsOf(book, () => book.port.read(({ name }) => name.startsWith("Hall ") && { rows: headRows, isWanted: () => false }, "values"))).answered;
  // Both before the change is shown and before it is written.
  expect((await answered(readShown)) - (await answered(readPlanValues))).toBeGreaterThan(2 * 0.9 * (tabs - heads));
});

test("hidden tabs of earlier builds cost a view nothing but their names", async () => {
  const book = await built(2);
  const before = await requestsOf(book, () => readShown(book.port));
  // A comment keeps the tab of an earlier build where it is.
  book.sheet("Hall 1").comments = 1;
  await build(book);
  expect(book.sheetNames()).toContain("Hall 1 before 2");
  const after = await requestsOf(book, () => readShown(book.port));
  expect(after.count).toBe(before.count);
  expect(after.answered - before.answered).toBeLessThan(2_000);
});

test("a view learns of a plan and its tabs from values alone what it learns from all of it", async () => {
  const book = await built(1);
  const tab = await tabInSight(book.port);
  await typeInto(book.port, tab, { "T-01/site": { found: "Yes", by: "AB" }, "T-10/A0001": { found: "N-0001", by: "AB" }, "T-11/A0002": { found: 8, by: "CD", note: "password: Quince7!pear" } });
  const { row, column } = cellOf(tab, "T-12/A0001");
  // A formula of somebody's own, as an entry, and as a text beside.
  book.type(tab.sheet, row, column, "=12+2.5");
  book.type(tab.sheet, row, 30, "=1+1");
  const [shown, plan, whole] = [await readShown(book.port), await readPlanSheets(book.port, { only: "values" }), await book.port.read(mayBeInUse)];
  expect(jobStandings(readCommissioningPlan(shown)).map(({ job, progress }) => [job.job, progress])).toEqual(
    jobStandings(readCommissioningPlan(whole)).map(({ job, progress }) => [job.job, progress]),
  );
  const findings = checkPlan(whole, rules, "2026-06-01");
  expect(findings.some(({ rule, sheet }) => rule === "stored-secret" && sheet === tab.sheet)).toBe(true);
  expect(checkPlan(shown, rules, "2026-06-01")).toEqual(findings);
  const rowsOf = ({ sheets }: WorkbookSnapshot) => sheets.find(({ name }) => name === tab.sheet)!.values.length;
  expect(rowsOf(plan)).toBe(headRows);
  expect(rowsOf(whole)).toBeGreaterThan(headRows);
});
