import { buildTabs } from "../../src/actions/build-tabs";
import { closeOut } from "../../src/actions/close-out";
import { comparePlan } from "../../src/actions/compare-plan";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";
import type { TableRows } from "../../src/planning/plan/schema";
import { addPlan, complete, jobName, moment, planWorkbook, smallPlan } from "../support/commissioning-plan";
import { tabInSight, typeInto } from "../support/tab-on-sheet";

let workbook: HeadlessWorkbook;

beforeAll(async () => {
  workbook = await openHeadless();
  await addPlan(workbook.port, smallPlan());
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) expect(outcome.sentence).toMatch(/^Built/);
});

afterAll(() => workbook.dispose());

const against = async (earlier: TableRows) => comparePlan(planWorkbook(earlier), await workbook.port.read());

const moved = (): TableRows => {
  const plan = smallPlan();
  return {
    ...plan,
    arrays: plan.arrays!.map((row) => (row.array === "n-1" ? { ...row, bottomUnit: 5 } : row)),
    ports: plan.ports!.map((row) => (row.address === "192.0.2.3" ? { ...row, address: "192.0.2.9" } : row)),
  };
};

test("a plan and its open tab have no difference from the plan they were built of", async () => {
  expect(await against(smallPlan())).toEqual({ tables: [], tabs: [] });
});

test("an array in another place and a port of another address touch the steps that ask for them, and no more", async () => {
  const { tables, tabs } = await against(moved());
  expect(tables.map(({ table, rows }) => [table, rows.map(({ kind, row, cells }) => [kind, row, cells.map(({ header, before, now }) => `${header}: ${before} > ${now}`)])])).toEqual([
    ["Arrays", [["changed", "n-1", ["Bottom unit: 5 > 4"]]]],
    ["Ports", [["changed", "n-2, A, 0", ["Address: 192.0.2.9 > 192.0.2.3"]]]],
  ]);
  expect(tabs).toEqual([{ job: jobName, sheet: jobName, steps: 2, because: "" }]);
});

test("a network of another frame size touches the step of every port in it", async () => {
  const plan = smallPlan();
  const { tabs } = await against({ ...plan, networks: plan.networks!.map((row) => ({ ...row, mtu: 1500 })) });
  expect(tabs).toEqual([{ job: jobName, sheet: jobName, steps: 4, because: "" }]);
});

test("a tab whose job one of the plans does not make is named with the reason", async () => {
  expect((await against({ ...smallPlan(), jobs: [] })).tabs).toEqual([{ job: jobName, sheet: jobName, steps: null, because: "The earlier plan does not have the job." }]);
  expect((await against({ ...smallPlan(), procedures: [] })).tabs).toEqual([expect.objectContaining({ job: jobName, steps: null, because: expect.stringContaining("follows procedure") as string })]);
});

test("a tab whose plan lacks a table is named with the reason, not passed over", async () => {
  const now = await workbook.port.read();
  const without = (table: string) => ({ sheets: now.sheets.filter(({ name }) => name !== table) });
  const tabsOf = (table: string) => comparePlan(planWorkbook(smallPlan()), without(table)).tabs;
  expect(tabsOf("Procedures")).toEqual([expect.objectContaining({ job: jobName, steps: null, because: expect.stringContaining("follows procedure") as string })]);
  expect(tabsOf("Jobs")).toEqual([{ job: jobName, sheet: jobName, steps: null, because: "This plan does not have the job any more." }]);
});

test("what looks like a stored secret is told as changed and never repeated", async () => {
  const plan = smallPlan();
  const { tables } = await against({ ...plan, prompts: [{ model: "Elm 6", order: 1, prompt: "Password", value: "hunter2-of-1999" }] });
  expect(JSON.stringify(tables)).not.toContain("hunter2");
  expect(tables[0]!.rows[0]!.cells).toContainEqual({ header: "Value", column: 3, before: "(looks like a secret)", now: "{{Array}}" });
});

test("a file without a planning table is refused", async () => {
  const now = await workbook.port.read();
  expect(() => comparePlan({ sheets: [] }, now)).toThrow("That file holds no planning table. Choose the file of a plan.");
});

test("a tab that is closed stands as it is, whatever the plan says", async () => {
  await typeInto(workbook.port, await tabInSight(workbook.port), complete);
  expect(await closeOut(workbook.port, jobName, "AB", "2026-03-09")).toMatch(/^[A-Z2-7-]{24}$/);
  expect((await against(moved())).tabs).toEqual([]);
});
