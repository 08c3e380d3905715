import { buildTabs } from "../../src/actions/build-tabs";
import { bringBack, previewReturned } from "../../src/actions/bring-back";
import { closeOut } from "../../src/actions/close-out";
import { jobStandings } from "../../src/actions/progress";
import { readShown } from "../../src/actions/read-plan";
import { turnBack, turnIntoValues } from "../../src/actions/values-and-back";
import { checkPlan, rules } from "../../src/planning/checks";
import { readCommissioningPlan } from "../../src/planning/commissioning/build";
import { Problem } from "../../src/planning/text";
import { jobName, moment, planSheets, smallPlan } from "../support/commissioning-plan";
import { hostWorkbook, type HostWorkbook } from "../support/host-workbook/host-workbook";
import { cellOf, tabInSight } from "../support/tab-on-sheet";

// Functions of an add-in answer late: until then their cells show #BUSY!, which is neither a result nor an entry.
const forever = 1_000;
const slow = '=BAY.USABLE("RAID 6",12,4)';

async function build(book: HostWorkbook): Promise<string> {
  for await (const { outcome } of buildTabs(book.port, moment, [jobName])) return outcome.sentence;
  return "";
}

/** A tab behind the vendor's client with a formula of ours as what was found: its result is 36. */
async function tabWithFormula() {
  const book = hostWorkbook({ sheets: planSheets(smallPlan()), calculate: (formula) => (formula === slow ? 36 : "") });
  await build(book);
  const tab = await tabInSight(book.port);
  const { sheet, row, column } = cellOf(tab, "T-11/A0002");
  book.type(sheet, row, column, slow);
  return { book, sheet, row, column };
}

const refusal = (work: Promise<unknown>) => work.then(() => "", (thrown: unknown) => (thrown instanceof Problem ? thrown.sentence : String(thrown)));

test("a build waits for the result of an entry and carries that", async () => {
  const { book } = await tabWithFormula();
  book.keepBusy(8);
  expect(await build(book)).toContain("Built with");
  const tab = await tabInSight(book.port);
  expect(tab.steps.find(({ key }) => key.endsWith("T-11/A0002"))!.typed.found).toBe(36);
});

test("where the result does not come nothing is built, brought back or closed, and the sentence names the cell", async () => {
  const { book, sheet, row, column } = await tabWithFormula();
  const returned = await book.port.read();
  const [job] = await previewReturned(book.port, returned);
  const before = book.sheet(sheet).entered();
  book.keepBusy(forever);
  const sentence = /^Cell G\d+ of "North hall" shows #BUSY!: its formula is still being computed\. Wait until it shows a result, or empty it\.$/;
  expect(await build(book)).toMatch(sentence);
  expect(await refusal(closeOut(book.port, jobName, "AB", "2026-03-09"))).toMatch(sentence);
  expect(await refusal(previewReturned(book.port, returned))).toMatch(sentence);
  expect(await refusal(bringBack(book.port, job!, new Set(["x"]), moment))).toMatch(sentence);
  expect(jobStandings(readCommissioningPlan(await readShown(book.port)))[0]!.progress.fault).toMatch(sentence);
  expect(book.sheetNames().filter((name) => name.startsWith(jobName))).toEqual([jobName]);
  expect(book.sheet(sheet).entered()).toEqual(before);
  expect(book.sheet(sheet).formula(row, column)).toBe(slow);
});

test("a check waits for cells of the plan, and says of one that stays busy that it is being computed", async () => {
  const rows = smallPlan();
  const calculate = (formula: string) => (formula === "=2*BAY.USABLE(1)" ? 6 : "");
  const book = hostWorkbook({ sheets: planSheets({ ...rows, arrays: rows.arrays!.map((row) => ({ ...row, drives: "=2*BAY.USABLE(1)" as unknown as number })) }), calculate });
  const said = async () => checkPlan(await readShown(book.port), rules, "2026-06-01").filter(({ sentence }) => sentence.includes("#BUSY!")).map(({ sentence }) => sentence);
  book.keepBusy(5);
  expect(await said()).toEqual([]);
  book.keepBusy(forever);
  expect(await said()).toEqual(["Drives shows #BUSY!: it is still being computed. Wait until it shows a result.", "Drives shows #BUSY!: it is still being computed. Wait until it shows a result."]);
});

test("a formula whose result does not come is left a formula, and the reason says so", async () => {
  const book = hostWorkbook({ sheets: [{ name: "Plan", values: [[slow]] }], calculate: () => 36 });
  book.keepBusy(forever);
  expect(await turnIntoValues(book.port, "workbook", "0.1.0")).toEqual({ turned: 0, left: [{ sheet: "Plan", cell: "A1", reason: "it is still being computed; try again once it shows a result" }] });
  expect(book.sheet("Plan").formula(0, 0)).toBe(slow);
  book.keepBusy(-1);
  expect(await turnIntoValues(book.port, "workbook", "0.1.0")).toMatchObject({ turned: 1 });
  expect(book.value("Plan", 0, 0)).toBe(36);
  expect(await turnBack(book.port)).toMatchObject({ turned: 1 });
});
