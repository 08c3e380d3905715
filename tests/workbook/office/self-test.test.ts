import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { subnet } from "../../../src/functions/addresses";
import { Problem } from "../../../src/planning/text/problem";
import type { CellValue } from "../../../src/sheet";
import { officeSelfTest } from "../../../src/workbook/office/self-test/office-self-test";
import { textTrial, writeTrial } from "../../../src/workbook/office/self-test/cell-trials";
import { pageTrial } from "../../../src/workbook/office/self-test/sheet-trials";
import type { ProbeOutcome } from "../../../src/workbook/self-test";
import type { ClientBuild } from "../../support/host-workbook/client-build";
import { hostWorkbook, type HostWorkbook } from "../../support/host-workbook/host-workbook";

const builds: readonly ClientBuild[] = ["web", "Windows", "Mac", "tablet"];

/** What the formulas of the test come to, for a program that has no engine. */
const answers: Readonly<Record<string, CellValue | readonly (readonly CellValue[])[]>> = {
  '=""': "",
  "=TRUE": true,
  "=1/0": { error: "#DIV/0!" },
  "=DATE(2026,3,1)": 46_082,
  "=TIME(3,1,0)": 0.125694444444444,
  "=0.1+0.2": 0.3,
  "=1/4": 0.25,
  "=BAY.CONVERTSIZE(C11)": 0.3,
  '=BAY.ISCSINAME(C9,"example.com","a1")': "iqn.2026-03.com.example:a1",
  '=BAY.SUBNET("192.0.2.0/26")': subnet("192.0.2.0/26"),
  '=BAY.SPLITPREFIX("192.0.2.0/24",26)': [["192.0.2.0/26"], ["192.0.2.64/26"], ["192.0.2.128/26"], ["192.0.2.192/26"]],
  "=SUMPRODUCT(--ISFORMULA(F1:H14))": 1,
};
const refused = ['=BAY.USABLE("RAID 6",C2,4)', '=BAY.USABLE("RAID 6",C6,4)', '=BAY.USABLE("RAID 6",C8,4)', "=BAY.EFFECTIVE(40,C10)", "=BAY.USABLE(C12,12,4)"];

function calculate(formula: string): CellValue | readonly (readonly CellValue[])[] {
  if (refused.includes(formula)) return { error: "#VALUE!" };
  if (formula.startsWith("=BAY.USABLE(")) return 40;
  const answer = answers[formula];
  if (answer === undefined) throw new Error(`Nobody said what ${formula} comes to`);
  return answer;
}

const plan = { sheets: [{ name: "Plan", values: [["kept", 1]] }, { name: "BAY self-test", values: [["a person's"]] }] };
const open = (more: Partial<Parameters<typeof hostWorkbook>[0]> = {}) => hostWorkbook({ ...plan, calculate, ...more });
const run = (book: HostWorkbook) => officeSelfTest(book.host)(() => undefined);
/** The test with a few trials, where it is the scratch sheet that is looked at. */
const few = (book: HostWorkbook) => officeSelfTest(book.host, [textTrial, writeTrial, pageTrial])(() => undefined);
const untouched = (book: HostWorkbook) => {
  expect(book.sheetNames()).toEqual(["Plan", "BAY self-test"]);
  expect([book.value("Plan", 0, 0), book.value("Plan", 0, 1), book.value("BAY self-test", 0, 0)]).toEqual(["kept", 1, "a person's"]);
  expect(["Plan", "BAY self-test"].map((name) => book.sheet(name).settings)).toEqual([[], []]);
};
const told = async (work: Promise<unknown>) => {
  const thrown: unknown = await work.then(() => null, (reason: unknown) => reason);
  expect(thrown).toBeInstanceOf(Problem);
  return (thrown as Problem).sentence;
};
const found = (outcomes: readonly ProbeOutcome[], id: string) => outcomes.find((one) => one.id === id)!;

test.each(builds)("in the stand-in for %s every probe finds what is expected, on a sheet that is gone afterwards", async (build) => {
  const book = open({ build });
  const outcomes = await run(book);
  expect(outcomes.filter(({ verdict }) => verdict !== "as expected" && verdict !== "noted")).toEqual([]);
  expect(new Set(outcomes.map(({ id }) => id)).size).toBe(outcomes.length);
  expect(outcomes.length).toBeGreaterThan(40);
  untouched(book);
});

const answersFolder = join(__dirname, "..", "..", "golden", "self-test");

test.each(readdirSync(answersFolder))("the stand-in answers as %s, which holds the answers of one program", async (name) => {
  const file = join(answersFolder, name);
  const now = (await run(open())).map(({ id, found: what }) => ({ id, found: what }));
  if (process.env["UPDATE_GOLDEN"] === "1" && name === "stand-in.json") writeFileSync(file, `${JSON.stringify({ program: { platform: "the stand-in of the tests" }, probes: now }, null, 2)}\n`);
  const { probes } = JSON.parse(readFileSync(file, "utf8")) as { readonly probes: readonly ProbeOutcome[] };
  // What the pane adds of its own is no matter of the workbook.
  expect(now).toEqual(probes.filter(({ id }) => id !== "load-switch").map(({ id, found: what }) => ({ id, found: what })));
});

test("what differs is told with what was expected and what was found", async () => {
  const wrong = open({ calculate: (formula) => (formula.startsWith("=BAY.USABLE(C7") ? 41 : calculate(formula)) });
  const outcomes = await run(wrong);
  expect(outcomes.filter(({ verdict }) => verdict === "differs")).toEqual([
    { id: "argument-text", subject: "Arguments", tried: "A text in a cell: =BAY.USABLE(C7,12,4)", expected: "the number 40", found: "the number 41", verdict: "differs" },
  ]);
});

test("what nobody knows beforehand is noted", async () => {
  const formulas = async (repeatsSpilled: boolean) => found(await run(open({ repeatsSpilled })), "spill-formula");
  expect(await formulas(false)).toMatchObject({ found: "what the cell shows", verdict: "noted" });
  expect(await formulas(true)).toMatchObject({ found: "the formula of the first cell", verdict: "noted" });
});

test("formulas that are still being computed are waited for", async () => {
  let asked = 0;
  const slow = open({ calculate: (formula) => (formula === '=BAY.USABLE("RAID 6",12,4)' && (asked += 1) < 3 ? { error: "#BUSY!" } : calculate(formula)) });
  expect(found(await run(slow), "argument-none").verdict).toBe("as expected");
});

describe("the scratch sheet", () => {
  test("is taken away whichever request fails, and no other sheet is touched", async () => {
    const whole = open();
    const { length } = await few(whole);
    const requests = whole.syncs();
    expect(requests).toBeGreaterThan(15);
    for (let sync = 3; sync < requests; sync += 1) {
      const book = open();
      book.failAt({ sync, code: "GeneralException" });
      const outcomes = await few(book);
      expect(outcomes).toHaveLength(length);
      expect(outcomes.some(({ verdict, found: why }) => verdict === "not tried" && why.includes("GeneralException"))).toBe(true);
      untouched(book);
    }
  });

  test("does not stay where it was added and the answer was lost", async () => {
    const book = open();
    book.failAt({ sync: 2, after: "all", code: "ServiceNotAvailable" });
    expect(await told(few(book))).toContain("does not answer");
    untouched(book);
  });

  test("is asked for by name where it could not be taken away", async () => {
    const whole = open();
    await few(whole);
    const book = open();
    book.failAt({ sync: whole.syncs(), code: "ServiceNotAvailable" });
    expect(await told(few(book))).toBe("The sheet BAY self-test 2 could not be taken away again. Nothing else was touched: delete it yourself.");
    expect(book.sheetNames()).toEqual(["Plan", "BAY self-test", "BAY self-test 2"]);
  });

  test("goes also where somebody renamed it meanwhile, and what could not be tried says why", async () => {
    const book = open();
    book.before(5, () => { book.sheet("BAY self-test 2").name = "Mine now"; });
    const outcomes = await few(book);
    expect(found(outcomes, "page-scale")).toMatchObject({ verdict: "as expected" });
    expect(found(outcomes, "write-null")).toMatchObject({ verdict: "not tried" });
    untouched(book);
  });

  test("is not added to a workbook whose structure is protected", async () => {
    const book = open();
    book.protect();
    expect(await told(run(book))).toContain("The structure of this workbook is protected");
    untouched(book);
  });

  test("is not added while a cell is being edited", async () => {
    const book = open();
    book.editCell();
    expect(await told(run(book))).toContain("A cell is being edited");
    untouched(book);
  });

  test("waits with going until a cell is no longer edited", async () => {
    const book = open();
    let enter: () => void = () => undefined;
    book.before(6, () => {
      enter = book.editCell();
      setTimeout(() => { enter(); }, 20);
    });
    const outcomes = await few(book);
    expect(outcomes.some(({ found: why }) => why.includes("A cell is being edited"))).toBe(true);
    untouched(book);
  });
});
