import { buildTabs } from "../../src/actions/build-tabs";
import { formulasLooking } from "../../src/actions/looking-formulas";
import { openHeadless } from "../../src/headless/open-headless";
import type { WorkbookPort } from "../../src/workbook/port";
import { addPlan, jobName, moment, smallPlan } from "../support/commissioning-plan";
import { hostWorkbook } from "../support/host-workbook/host-workbook";
import { workbookOf } from "../support/plain-workbook";

/** A formula of somebody's own, that looks at the title of the tab. */
const looking = `='${jobName}'!A1`;

async function remarks(port: WorkbookPort): Promise<readonly string[]> {
  for await (const { outcome } of buildTabs(port, moment, [jobName])) {
    if (!outcome.built) throw new Error(outcome.sentence);
    return outcome.remarks.filter((remark) => remark.startsWith("The formula"));
  }
  return [];
}

const formulaIn = async (port: WorkbookPort) => (await port.read(["Overview"])).sheets.find(({ name }) => name === "Overview")!.formulas[1]?.[1];
const namesIn = async (port: WorkbookPort) => (await port.read([])).sheets.map(({ name }) => name).filter((name) => name.startsWith(jobName));

interface Opened {
  readonly port: WorkbookPort;
  readonly dispose: () => void;
}

describe.each<readonly [string, boolean, () => Promise<Opened>]>([
  ["the spreadsheet program", false, () => Promise.resolve({ port: hostWorkbook({ apiSet: 18, calculate: () => "" }).port, dispose: () => undefined })],
  ["the engine", true, () => openHeadless()],
])("a formula that looks at a tab, in %s", (_, tellsNotes, open) => {
  test("goes on looking at that tab when it is built again; the tab stays, and the build says so each time", async () => {
    const opened = await open();
    const { port } = opened;
    await addPlan(port, smallPlan());
    expect(await remarks(port)).toEqual([]);
    await port.apply([{ kind: "add-sheet", plan: { name: "Overview", rows: [[{ value: "Halls" }], [{}, { formula: looking }]], styles: {}, columnWidths: [] } }]);
    const said = ['The formula in B2 of "Overview" looks at an earlier tab, which stays, hidden. Write the name of the new one into it, and look at the cell.'];
    for (let build = 2; build <= 4; build += 1) {
      expect(await remarks(port)).toEqual(said);
      expect(await formulaIn(port)).toBe(`='${jobName} before 2'!A1`);
      expect(await namesIn(port)).toContain(`${jobName} before 2`);
    }
    // Once nobody looks at it any more it goes, where the program tells that no note is on it.
    await port.apply([{ kind: "write", sheet: "Overview", row: 1, column: 1, cells: [[{ value: 7 }]] }]);
    expect(await remarks(port)).toEqual([]);
    expect((await namesIn(port)).includes(`${jobName} before 2`)).toBe(!tellsNotes);
    opened.dispose();
  });
});

test("sheets are told apart by their whole names, in any case, quoted or not", () => {
  const { sheets } = workbookOf({ Overview: [[1, 1, 1, 1, 1, 1]] });
  const formulas = [["=Hall!A1+1", "=SUM('It''s done'!A1:B2)", "=OtherHall!A1", "=hall!B2", "='Other Hall'!A1", "=Hall"]];
  const at = formulasLooking({ sheets: [{ ...sheets[0]!, formulas }] });
  expect(at("Hall")).toEqual(['A1 of "Overview"', 'D1 of "Overview"']);
  expect(at("It's done")).toEqual(['B1 of "Overview"']);
  expect(at("done")).toEqual([]);
});

test("a sheet is found wherever in a formula it is named, and not where another workbook's, or a text, reads like it", () => {
  const { sheets } = workbookOf({ Overview: [[1, 1, 1, 1, 1, 1]] });
  const formulas = [["=OtherHall!A1+Hall!A1", "=SUM(First:Hall!B2)", "=SUM('First:Hall'!B2)", '="see Hall!A1"', "=[1]Hall!A1+'[Book.xlsx]Hall'!A1", "=Hall!A1+'HALL'!B2"]];
  const at = formulasLooking({ sheets: [{ ...sheets[0]!, formulas }] });
  expect(at("Hall")).toEqual(["A1", "B1", "C1", "F1"].map((cell) => `${cell} of "Overview"`));
  expect(at("First")).toEqual(["B1", "C1"].map((cell) => `${cell} of "Overview"`));
});
