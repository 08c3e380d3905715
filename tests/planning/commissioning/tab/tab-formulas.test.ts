import { buildTabs } from "../../../../src/actions/build-tabs";
import { openHeadless, type HeadlessWorkbook } from "../../../../src/headless/open-headless";
import { reopenBlocks, sealBlocks, type TabReading } from "../../../../src/planning/commissioning/tab";
import { snagFields, type SnagField } from "../../../../src/planning/commissioning/record";
import type { TableRow } from "../../../../src/planning/plan/schema";
import type { CellBlock, CellValue, Scalar, SheetSnapshot } from "../../../../src/sheet";
import { jobName, moment, planSheets, smallPlan, step } from "../../../support/commissioning-plan";
import { columnOf, snagColumnOf, tabInSight, typeInto } from "../../../support/tab-on-sheet";

type Cells = Readonly<Record<string, Scalar>>;

/** Steps in which cells are typed, and what Result says then. */
const kinds = {
  tick: {},
  number: { record: "number", expect: "48", tolerance: 2 },
  exact: { record: "number", expect: "8972" },
  nought: { record: "number", expect: "0" },
  anyNumber: { record: "number" },
  date: { record: "date", expect: "2026-05-31" },
  anyDate: { record: "date" },
  choice: { record: "choice:Complete|Incomplete", expect: "Complete" },
  anyChoice: { record: "choice:Complete|Incomplete" },
  anyText: { record: "text" },
  serial: { record: "serial", expect: "N-0001" },
  digits: { record: "serial", expect: "1234" },
  size: { record: "size", expect: "12 TiB", unit: "TB", tolerancePercent: 1 },
  anySize: { record: "size", unit: "TB" },
  two: { record: "text", expect: "sw-1 4", sign: "two" },
  address: { record: "address", expect: "fd00::10:1" },
  oldAddress: { record: "address", expect: "192.0.2.1" },
  anyAddress: { record: "address" },
  optional: { record: "number", expect: "48", required: "no" },
  unsigned: { record: "number", expect: "48", sign: "none" },
} as const satisfies Readonly<Record<string, Partial<TableRow<"steps">>>>;

/** What is typed about a step of a kind, the snags about it, what Result says, and whether the step is settled. */
interface Case {
  readonly kind: keyof typeof kinds;
  readonly typed: Cells;
  readonly snags?: readonly Readonly<Partial<Record<SnagField, Scalar>>>[];
  readonly result: string;
  readonly settled?: true;
}

const compared: Readonly<Record<string, readonly [keyof typeof kinds, Cells, string]>> = {
  "nothing typed": ["tick", {}, ""],
  Yes: ["tick", { found: "Yes" }, "As expected"],
  "x, as on paper": ["tick", { found: "x" }, "As expected"],
  No: ["tick", { found: "No" }, "Differs"],
  "a check box": ["tick", { found: true }, "As expected"],
  "an empty check box": ["tick", { found: false }, "Differs"],
  Waived: ["tick", { found: "Waived" }, "Waived"],
  "Not applicable": ["tick", { found: "Not applicable" }, "Not applicable"],
  "a number at its upper edge": ["number", { found: 50 }, "As expected"],
  "a number past it": ["number", { found: 50.1 }, "Differs"],
  "a number at its lower edge": ["number", { found: 46 }, "As expected"],
  "a number below it": ["number", { found: 45.9 }, "Differs"],
  "a number typed as text": ["number", { found: "47" }, "Compare by eye"],
  "a number typed as text as it is expected": ["exact", { found: "8972" }, "As expected"],
  "nought where nought is expected": ["nought", { found: 0 }, "As expected"],
  "a word for a number": ["number", { found: "many" }, "Compare by eye"],
  "any number": ["anyNumber", { found: -3 }, "As expected"],
  "a word where any number will do": ["anyNumber", { found: "many" }, "Compare by eye"],
  "the day": ["date", { found: 46_173 }, "As expected"],
  "the day with a time": ["date", { found: 46_173.75 }, "As expected"],
  "the day before": ["date", { found: 46_172 }, "Differs"],
  "the day after": ["date", { found: 46_174 }, "Differs"],
  "any day": ["anyDate", { found: 46_174 }, "As expected"],
  "a number that is no day": ["anyDate", { found: 0 - 1 }, "Differs"],
  "a word where any day will do": ["anyDate", { found: "Friday" }, "Compare by eye"],
  "the choice": ["choice", { found: "Complete" }, "As expected"],
  "the other choice": ["choice", { found: "Incomplete" }, "Differs"],
  "a choice where none is expected": ["anyChoice", { found: "Incomplete" }, "As expected"],
  "any text where none is expected": ["anyText", { found: "=SUM(A1)" }, "As expected"],
  "a serial number in small letters": ["serial", { found: "n-0001" }, "As expected"],
  "a serial number with a space": ["serial", { found: "N-0001 " }, "Compare by eye"],
  "another serial number": ["serial", { found: "N-0002" }, "Differs"],
  // IEC 80000-13: 1 TiB is 2^40 bytes, so 12 TiB are 13.194 TB.
  "a size in the unit that was seen": ["size", { found: 12, unit: "TiB" }, "As expected"],
  "the same figure in TB": ["size", { found: 12, unit: "TB" }, "Differs"],
  "the same size in TB": ["size", { found: 13.2, unit: "TB" }, "As expected"],
  "the size in bytes": ["size", { found: 13_194_139_533_312, unit: "bytes" }, "As expected"],
  "a size that is too large": ["size", { found: 12.13, unit: "TiB" }, "Differs"],
  "a size in a unit that we do not know": ["size", { found: 12, unit: "GB" }, "Compare by eye"],
  "a word for a size": ["size", { found: "large", unit: "TB" }, "Compare by eye"],
  "any size": ["anySize", { found: 0.5, unit: "TB" }, "As expected"],
  "a size below nothing": ["anySize", { found: -1, unit: "TB" }, "Differs"],
  "a text in other capitals": ["two", { found: "SW-1 4", by: "AB", witness: "CD" }, "As expected"],
  "one name where two sign": ["two", { found: "sw-1 4", by: "AB" }, "Needs a second name"],
  "the same name twice": ["two", { found: "sw-1 4", by: "AB", witness: " ab" }, "Needs a second name"],
  "another text, whoever signs": ["two", { found: "sw-1 5", by: "AB" }, "Differs"],
  "the address": ["address", { found: "FD00::10:1" }, "As expected"],
  "the address in full": ["address", { found: "fd00:0000:0000:0000:0000:0000:0010:0001" }, "As expected"],
  "another address": ["address", { found: "fd00::10:2" }, "Differs"],
  "another address in full": ["address", { found: "fd00:0000:0000:0000:0000:0000:0010:0002" }, "Differs"],
  "an address with leading zeros": ["address", { found: "fd00::0010:1" }, "Compare by eye"],
  "an address with zero groups written out": ["address", { found: "fd00:0:0:0:0:0:10:1" }, "Compare by eye"],
  "an address that differs with one zero group": ["address", { found: "fd00:1:2:0:4:5:6:7" }, "Differs"],
  "an IPv4 address": ["oldAddress", { found: "192.0.2.1" }, "As expected"],
  "an IPv4 address with a space": ["oldAddress", { found: " 192.0.2.1" }, "Compare by eye"],
  "an IPv4 address with a leading zero": ["oldAddress", { found: "192.0.02.1" }, "Compare by eye"],
  "an IPv4 address with two zeros": ["oldAddress", { found: "192.0.0.1" }, "Differs"],
  "any address": ["anyAddress", { found: "somewhere" }, "As expected"],
};

const settled: Readonly<Record<string, Case>> = {
  "as expected without a name": { kind: "number", typed: { found: 48 }, result: "As expected" },
  "as expected with blanks for a name": { kind: "number", typed: { found: 48, by: " " }, result: "As expected" },
  "as expected and signed": { kind: "number", typed: { found: 48, by: "AB" }, result: "As expected", settled: true },
  "as expected where no name signs": { kind: "unsigned", typed: { found: 48 }, result: "As expected", settled: true },
  "different and signed": { kind: "number", typed: { found: 1, by: "AB", note: "n" }, result: "Differs" },
  "waived by name with reason": { kind: "number", typed: { found: "Waived", by: "AB", note: "n" }, result: "Waived", settled: true },
  "waived without a reason": { kind: "number", typed: { found: "Waived", by: "AB", note: " " }, result: "Waived" },
  "waived without a name": { kind: "number", typed: { found: "Waived", note: "n" }, result: "Waived" },
  "not applicable by name with reason": { kind: "number", typed: { found: "Not applicable", by: "AB", note: "n" }, result: "Not applicable", settled: true },
  "not applicable where no name signs": { kind: "unsigned", typed: { found: "Not applicable" }, result: "Not applicable" },
  "of an old expectation": { kind: "number", typed: { found: 48, by: "AB", expectedBefore: "47" }, result: "Check again" },
  "of an old expectation and seen again": { kind: "number", typed: { found: 48, by: "AB", expectedBefore: "47", recheckedBy: "CD" }, result: "As expected", settled: true },
  "of an old expectation and waived": { kind: "number", typed: { found: "Waived", expectedBefore: "47" }, result: "Waived" },
  "mended by its snag": { kind: "exact", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: "8972", closed: "Closed" }], result: "As expected", settled: true },
  "mended to a number": { kind: "exact", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: 8972, closed: "Closed", by: "AB" }], result: "As expected", settled: true },
  "mended to another number": { kind: "exact", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: 8973, closed: "Closed", by: "AB" }], result: "Differs" },
  "mended to a number where a text of digits is expected": { kind: "digits", typed: { found: "X", by: "AB" }, snags: [{ foundAgain: 1234, closed: "Closed", by: "AB" }], result: "Compare by eye" },
  "mended to digits that are not those expected": { kind: "exact", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: "2", closed: "Closed", by: "AB" }], result: "Compare by eye" },
  "mended to the wrong value": { kind: "serial", typed: { found: "X", by: "AB" }, snags: [{ foundAgain: "Y", closed: "Closed", by: "AB" }], result: "Differs" },
  "mended in a snag that is open": { kind: "number", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: 48 }], result: "Differs" },
  "accepted by name in its snag": { kind: "number", typed: { found: 1 }, snags: [{ closed: "Accepted", by: "AB" }], result: "Waived", settled: true },
  "accepted by nobody": { kind: "number", typed: { found: 1 }, snags: [{ closed: "Accepted" }], result: "Differs" },
  "mended by its last snag": {
    kind: "exact", typed: { found: 1, by: "AB" }, snags: [{ foundAgain: "2", closed: "Closed" }, { foundAgain: "8972", closed: "Closed", by: "AB" }],
    result: "As expected", settled: true,
  },
  "broken again by its last snag": {
    kind: "serial", typed: { found: "X", by: "AB" },
    snags: [{ foundAgain: "N-0001", closed: "Closed", by: "AB" }, { foundAgain: "X", closed: "Closed", by: "AB" }], result: "Differs",
  },
  "not done and not required": { kind: "optional", typed: {}, result: "" },
};

const cases: readonly (readonly [string, Case])[] = [
  ...Object.entries(compared).map(([what, [kind, typed, result]]): [string, Case] => [what, { kind, typed, result, ...("by" in typed && result === "As expected" ? { settled: true } : {}) }]),
  ...Object.entries(settled),
];

let workbook: HeadlessWorkbook;
let tab: TabReading;
let sheet: SheetSnapshot;

async function write(blocks: readonly CellBlock[]): Promise<void> {
  await workbook.port.apply(blocks.map((block) => ({ kind: "write", sheet: jobName, ...block })));
}

/** Reads what the summary says under a label. */
/** Reads the sheet of a tab. */
async function sheetOf({ sheet }: TabReading): Promise<SheetSnapshot> {
  return (await workbook.port.read([sheet])).sheets.find(({ name }) => name === sheet)!;
}

async function summary(label: string): Promise<CellValue> {
  const { values } = (await workbook.port.read()).sheets.find(({ name }) => name === jobName)!;
  const row = values.findIndex((line, index) => index > tab.headerRow && line.includes(label));
  return values[row + 1]![values[row]!.indexOf(label)]!;
}

// One workbook on the engine with a step a case: the sheet is computed once.
beforeAll(async () => {
  workbook = await openHeadless();
  const steps = cases.map(([, { kind }], index) => step(`K-${index}`, "Start", { minutes: index + 1, ...kinds[kind] }));
  const plan = planSheets({ ...smallPlan(), steps });
  const rowsOf = (values: (typeof plan)[number]["values"]) => values.map((line) => line.map((value) => ({ value })));
  await workbook.port.apply(plan.map(({ name, values }) => ({ kind: "add-sheet", plan: { name, rows: rowsOf(values), styles: {}, columnWidths: [] } })));
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) expect(outcome.sentence).toBe(`Built with ${cases.length} steps.`);
  const empty = await tabInSight(workbook.port);
  await typeInto(workbook.port, empty, Object.fromEntries(cases.map(([, { typed }], index) => [`K-${index}/site`, typed])));
  const snags = cases.flatMap(([, one], index) => (one.snags ?? []).map((snag): Partial<Record<SnagField, Scalar>> => ({ about: index + 1, ...snag })));
  await write(
    snags.flatMap((snag, index) =>
      snagFields.flatMap((field) => {
        const value = snag[field];
        return value === undefined ? [] : [{ row: empty.places.snagsRow + 2 + index, column: snagColumnOf(empty, field), cells: [[{ value }]] }];
      }),
    ),
  );
  tab = await tabInSight(workbook.port);
  sheet = (await workbook.port.read()).sheets.find(({ name }) => name === jobName)!;
});
afterAll(() => {
  workbook.dispose();
});

describe("the formulas of a step", () => {
  test.each(cases.map(([what, one], index) => [what, one, index] as const))("say of %s what it is", (_, { result, settled: isSettled = false }, index) => {
    const line = sheet.values[tab.steps[index]!.row]!;
    expect([line[columnOf(tab, "result")] ?? "", line[columnOf(tab, "settled")]]).toEqual([result, isSettled ? 1 : 0]);
    expect([tab.steps[index]!.result ?? "", tab.steps[index]!.settled]).toEqual([result, isSettled]);
  });
});

describe("the formulas of a snag", () => {
  test("say which step it is about", async () => {
    const { values } = (await workbook.port.read()).sheets.find(({ name }) => name === jobName)!;
    const about = cases.findIndex(([what]) => what === "mended by its snag");
    const row = values[tab.snags[0]!.row]!;
    expect([row[snagColumnOf(tab, "stepId")], row[snagColumnOf(tab, "key")]]).toEqual([`K-${about}`, `J0001/K-${about}/site`]);
  });
});

describe("the formulas of the summary", () => {
  const having = (result: string): number => cases.filter(([, one]) => one.result === result).length;
  const done = cases.filter(([, one]) => one.settled === true).length;
  const required = cases.filter(([, { kind }]) => kind !== "optional").length;

  test("count the steps by what they say", async () => {
    expect(await summary("Done")).toBe(`${done} of ${cases.length}`);
    expect(await summary("Required open")).toBe(required - done);
    expect(await summary("Differ")).toBe(having("Differs"));
    expect(await summary("To see again")).toBe(1);
    expect(await summary("By eye")).toBe(having("Compare by eye"));
    expect(await summary("Second name")).toBe(2);
    expect(await summary("Minutes left")).toBe(cases.reduce((sum, [, one], index) => sum + (one.settled === true ? 0 : index + 1), 0));
    expect(await summary("Next open step")).toBe("No. 1 K-0");
    // Open are: closed without a name three times, not closed, and accepted without a name.
    expect(await summary("Snags open")).toBe(5 - 1);
    const line = (await workbook.port.read()).sheets.find(({ name }) => name === jobName)!.values[0]![columnOf(tab, "found")];
    expect(line).toBe(`${done} of ${cases.length} steps done, ${required - done} required open, ${having("Differs")} differ, 1 to see again, 4 snags open`);
  });

  test("tell the code of the last seal, and that it was reopened", async () => {
    expect(await summary("Seal")).toBe("not sealed");
    await write(sealBlocks(await sheetOf(tab), tab, { by: "AB", date: "2026-03-09" }));
    const sealed = await tabInSight(workbook.port);
    expect(await summary("Seal")).toBe(sealed.seals[0]!.typed.code);
    await write(reopenBlocks(sealed, { by: "AB", date: "2026-03-10", reason: "why" }));
    expect(await summary("Seal")).toBe("reopened");
    await write(sealBlocks(await sheetOf(tab), await tabInSight(workbook.port), { by: "AB", date: "2026-03-11" }));
    expect(await summary("Seal")).toBe((await tabInSight(workbook.port)).seals[1]!.typed.code);
  });
});
