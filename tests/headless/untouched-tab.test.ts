import { buildTabs } from "../../src/actions/build-tabs";
import { openHeadless } from "../../src/headless/open-headless";
import { readSnapshot } from "../../src/workbook/xlsx/workbook-file";
import { jobName, moment, planSheets, smallPlan } from "../support/commissioning-plan";

test("the results that a new tab is saved with are those the engine computes from its formulas", async () => {
  const workbook = await openHeadless();
  await workbook.port.apply(planSheets(smallPlan()).map(({ name, values }) => ({ kind: "add-sheet", plan: { name, rows: values.map((line) => line.map((value) => ({ value }))), styles: {}, columnWidths: [] } })));
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) expect(outcome.built).toBe(true);
  const bytes = await workbook.close();
  const saved = (await readSnapshot(bytes)).sheets.find(({ name }) => name === jobName)!;
  const computed = await openHeadless(bytes);
  const { values, formulas } = (await computed.port.read([jobName])).sheets.find(({ name }) => name === jobName)!;
  computed.dispose();
  expect(formulas.flat().filter((formula) => formula !== null).length).toBeGreaterThan(100);
  expect(values).toEqual(saved.values);
});
