import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildTabs } from "../../src/actions/build-tabs";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { addPlan, jobName, moment, smallPlan } from "../support/commissioning-plan";
import { runCommand } from "../support/run-command";
import { tabInSight, typeInto } from "../support/tab-on-sheet";

async function build({ port }: HeadlessWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(port, moment, [jobName])) expect(outcome.built).toBe(true);
}

/** Makes a file of a plan whose tab was just built. */
async function builtFile(): Promise<Uint8Array> {
  const workbook = await openHeadless();
  await addPlan(workbook.port, smallPlan());
  await build(workbook);
  return workbook.close();
}

/** Compares what a file says of its tab with what the engine computes from the formulas in it. */
async function expectComputed(bytes: Uint8Array): Promise<void> {
  const saved = readSnapshot(bytes).sheets.find(({ name }) => name === jobName)!;
  const computed = await openHeadless(bytes, { keepsFigures: false });
  const { values, formulas } = (await computed.port.read([jobName])).sheets.find(({ name }) => name === jobName)!;
  computed.dispose();
  expect(formulas.flat().filter((formula) => formula !== null).length).toBeGreaterThan(100);
  expect(values).toEqual(saved.values);
}

test("the results that a new tab is saved with are those the engine computes from its formulas", async () => {
  await expectComputed(await builtFile());
});

test("so are those of a tab that was typed into and saved", async () => {
  const workbook = await openHeadless(await builtFile());
  await typeInto(workbook.port, await tabInSight(workbook.port), { "T-11/A0002": { found: 8, by: "CD" }, "T-12/A0001": { found: 1, by: "CD" } });
  const bytes = await workbook.close();
  expect(readSnapshot(bytes).sheets.find(({ name }) => name === jobName)!.values.flat()).toContain("Differs");
  await expectComputed(bytes);
});

test("so are those of a tab that is built again over records in the engine", async () => {
  const filled = await openHeadless(await builtFile());
  await typeInto(filled.port, await tabInSight(filled.port), { "T-11/A0002": { found: 8, by: "CD" }, "T-12/A0001": { found: 1, by: "CD" } });
  const workbook = await openHeadless(await filled.close());
  await build(workbook);
  const bytes = await workbook.close();
  expect(readSnapshot(bytes).sheets.find(({ name }) => name === jobName)!.values.flat()).toContain("Differs");
  await expectComputed(bytes);
});

test("so are those of a tab that the command line built, and built again over records", async () => {
  const folder = await mkdtemp(join(tmpdir(), "saved-results-"));
  const at = (name: string) => join(folder, name);
  const plan = await openHeadless();
  await addPlan(plan.port, smallPlan());
  await writeFile(at("plan.xlsx"), await plan.close());
  expect((await runCommand("build-tabs", at("plan.xlsx"), "-o", at("built.xlsx"))).code).toBe(0);
  await expectComputed(await readFile(at("built.xlsx")));
  const filled = await openHeadless(await readFile(at("built.xlsx")));
  await typeInto(filled.port, await tabInSight(filled.port), { "T-11/A0002": { found: 8, by: "CD" }, "T-12/A0001": { found: 1, by: "CD" } });
  await writeFile(at("filled.xlsx"), await filled.close());
  expect((await runCommand("build-tabs", at("filled.xlsx"), "-o", at("again.xlsx"))).code).toBe(0);
  const bytes = await readFile(at("again.xlsx"));
  expect(readSnapshot(bytes).sheets.find(({ name }) => name === jobName)!.values.flat()).toContain("Differs");
  await expectComputed(bytes);
  await rm(folder, { recursive: true });
});
