import { bringBack, previewReturned } from "../../src/actions/bring-back";
import { buildTabs } from "../../src/actions/build-tabs";
import { checkSeal } from "../../src/actions/check-seal";
import { acceptAsItIs, closeOut, previewCloseOut } from "../../src/actions/close-out";
import { handover } from "../../src/actions/handover";
import { addTableOfReadings, planAsBuilt } from "../../src/actions/plan-as-built";
import { jobStandings, writeProgress } from "../../src/actions/progress";
import { reopen } from "../../src/actions/reopen";
import { writeShownChanges } from "../../src/actions/write-changes";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";
import { readCommissioningPlan } from "../../src/planning/commissioning/build";
import { snagFields, type SnagField } from "../../src/planning/commissioning/record";
import type { TableRow, TableRows } from "../../src/planning/plan/schema";
import type { Scalar, SheetSnapshot } from "../../src/sheet";
import { addPlan, complete, jobName, moment, smallPlan, step } from "../support/commissioning-plan";
import { cellOf, columnOf, snagColumnOf, tabInSight, typeInto } from "../support/tab-on-sheet";

// On the real engine: what the formulas of a tab answer is part of what is tried here.
let open: HeadlessWorkbook[] = [];
afterEach(() => {
  for (const workbook of open) workbook.dispose();
  open = [];
});

async function start(bytes?: Uint8Array): Promise<HeadlessWorkbook> {
  const workbook = await openHeadless(bytes);
  open.push(workbook);
  return workbook;
}

async function build(workbook: HeadlessWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) if (!outcome.built) throw new Error(outcome.sentence);
}

async function fill({ port }: HeadlessWorkbook, rows: TableRows): Promise<void> {
  await addPlan(port, rows);
}

async function built(rows: TableRows = smallPlan()): Promise<HeadlessWorkbook> {
  const workbook = await start();
  await fill(workbook, rows);
  await build(workbook);
  return workbook;
}

async function type(workbook: HeadlessWorkbook, records: Readonly<Record<string, Readonly<Record<string, Scalar>>>>): Promise<void> {
  await typeInto(workbook.port, await tabInSight(workbook.port), records);
}

async function snag(workbook: HeadlessWorkbook, index: number, key: string, cells: Readonly<Partial<Record<SnagField, Scalar>>>): Promise<void> {
  const tab = await tabInSight(workbook.port);
  const about = Number(tab.steps.find((one) => one.key.endsWith(`/${key}`))!.no);
  const typed: Readonly<Partial<Record<SnagField, Scalar>>> = { about, ...cells };
  const row = tab.places.snagsRow + 2 + index;
  await workbook.port.apply(
    snagFields.flatMap((field) => {
      const value = typed[field];
      return value === undefined ? [] : [{ kind: "write" as const, sheet: tab.sheet, row, column: snagColumnOf(tab, field), cells: [[{ value }]] }];
    }),
  );
}

describe("the result of a step", () => {
  const kinds: Readonly<Record<string, Partial<TableRow<"steps">>>> = {
    tick: {},
    number: { record: "number", expect: "48", tolerance: 2 },
    date: { record: "date", expect: "2026-05-31" },
    choice: { record: "choice:Complete|Incomplete", expect: "Complete" },
    any: { record: "text" },
    size: { record: "size", expect: "12 TiB", unit: "TB", tolerancePercent: 1 },
    two: { record: "text", expect: "sw-1 4", sign: "two" },
    address: { record: "address", expect: "fd00::10:1" },
  };
  const cases: readonly (readonly [string, string, Readonly<Record<string, Scalar>>, string])[] = [
    ["nothing typed", "tick", {}, ""],
    ["Yes", "tick", { found: "Yes" }, "As expected"],
    ["No", "tick", { found: "No" }, "Differs"],
    ["a check box", "tick", { found: true }, "As expected"],
    ["Waived", "tick", { found: "Waived" }, "Waived"],
    ["Not applicable", "tick", { found: "Not applicable" }, "Not applicable"],
    ["a number at the edge", "number", { found: 50 }, "As expected"],
    ["a number past the edge", "number", { found: 50.1 }, "Differs"],
    ["a number typed as text", "number", { found: "47" }, "Compare by eye"],
    ["a word for a number", "number", { found: "many" }, "Compare by eye"],
    ["the day", "date", { found: 46_173 }, "As expected"],
    ["another day", "date", { found: 46_174 }, "Differs"],
    ["the choice", "choice", { found: "Complete" }, "As expected"],
    ["the other choice", "choice", { found: "Incomplete" }, "Differs"],
    ["any text where none is expected", "any", { found: "=SUM(A1)" }, "As expected"],
    // IEC 80000-13: 1 TiB is 2^40 bytes, so 12 TiB are 13.194 TB.
    ["a size in the unit that was seen", "size", { found: 12, unit: "TiB" }, "As expected"],
    ["the same figure in TB", "size", { found: 12, unit: "TB" }, "Differs"],
    ["the size in bytes", "size", { found: 13_194_139_533_312, unit: "bytes" }, "As expected"],
    ["a text in other capitals", "two", { found: "SW-1 4", by: "AB", witness: "CD" }, "As expected"],
    ["one name where two sign", "two", { found: "sw-1 4", by: "AB" }, "Needs a second name"],
    ["the same name twice", "two", { found: "sw-1 4", by: "AB", witness: "ab" }, "Needs a second name"],
    ["the address", "address", { found: "FD00::10:1" }, "As expected"],
    ["the address in full", "address", { found: "fd00:0000:0000:0000:0000:0000:0010:0001" }, "As expected"],
    ["another address", "address", { found: "fd00::10:2" }, "Differs"],
    ["another address in full", "address", { found: "fd00:0000:0000:0000:0000:0000:0010:0002" }, "Differs"],
    ["an address with leading zeros", "address", { found: "fd00::0010:1" }, "Compare by eye"],
    ["an address with zero groups written out", "address", { found: "fd00:0:0:0:0:0:10:1" }, "Compare by eye"],
  ];

  test("is what its formulas say, for every kind of record", async () => {
    // A step a case, so that the sheet is computed once.
    const workbook = await built({ ...smallPlan(), steps: cases.map(([, kind], index) => step(`K-${index}`, "Start", kinds[kind])) });
    await type(workbook, Object.fromEntries(cases.map(([, , cells], index) => [`K-${index}/site`, cells])));
    const { steps } = await tabInSight(workbook.port);
    expect(Object.fromEntries(cases.map(([what], index) => [what, steps[index]!.result ?? ""]))).toEqual(Object.fromEntries(cases.map(([what, , , result]) => [what, result])));
  });
});

describe("a job from first record to seal", () => {
  test("fails a step, mends it by its snag, sees a change again, closes, names what changed, and reopens", async () => {
    const workbook = await built();
    await type(workbook, { ...complete, "T-11/A0001": { found: 5, by: "AB" } });
    const resultOf = async (key: string): Promise<string | null> => (await tabInSight(workbook.port)).steps.find((one) => one.key.endsWith(`/${key}`))!.result;
    expect(await resultOf("T-11/A0001")).toBe("Differs");
    expect((await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence)).toEqual(["No. 3 T-11 says Differs. Put it right, or waive it with name and reason."]);

    await snag(workbook, 0, "T-11/A0001", { foundWrong: "One unit too high", mender: "CD", foundAgain: "4" });
    expect(jobStandings(readCommissioningPlan(await workbook.port.read()))[0]!.progress).toMatchObject({ steps: 18, done: 17, open: 1, differ: 1, snags: 1, minutesLeft: 5 });
    await snag(workbook, 0, "T-11/A0001", { closed: "Closed", by: "CD" });
    expect(await resultOf("T-11/A0001")).toBe("As expected");
    expect((await tabInSight(workbook.port)).steps[2]!.typed.found).toBe(5);

    // The plan changes: the serial of n-2 was written down wrongly.
    const arrays = (await workbook.port.read()).sheets.find(({ name }) => name === "Arrays")!;
    const place = cellWith(arrays, "N-0002");
    await workbook.port.apply([{ kind: "write", sheet: "Arrays", ...place, cells: [[{ value: "N-0022" }]] }]);
    await build(workbook);
    expect(await resultOf("T-10/A0002")).toBe("Check again");
    await type(workbook, { "T-10/A0002": { recheckedBy: "CD" } });
    expect(await resultOf("T-10/A0002")).toBe("Differs");
    await snag(workbook, 1, "T-10/A0002", { foundWrong: "Serial as delivered", closed: "Accepted", by: "EF", note: "Delivery note corrected" });
    expect(await resultOf("T-10/A0002")).toBe("Waived");

    const code = await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    expect(code).toMatch(/^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/);
    expect(await checkSeal(workbook.port, jobName)).toEqual({ code, reopened: false, holds: true, changed: [] });
    await expect(build(workbook)).rejects.toThrow("is closed and sealed");

    await type(workbook, { "T-20/A0001.A.0": { note: "later" } });
    expect(await checkSeal(workbook.port, jobName)).toMatchObject({ holds: false, changed: [{ label: "Note of No. 9 T-20 n-1 A0" }] });
    await type(workbook, { "T-20/A0001.A.0": { note: null } });
    expect(await checkSeal(workbook.port, jobName)).toMatchObject({ holds: true });

    await reopen(workbook.port, jobName, "AB", "A controller was changed", "2026-04-01");
    await build(workbook);
    expect((await tabInSight(workbook.port)).seals).toMatchObject([{ typed: { code, reopenedBy: "AB", reason: "A controller was changed" } }]);
    expect(await closeOut(workbook.port, jobName, "AB", "2026-04-02")).not.toBe(code);
  });

  test("gives a job and arrays that were typed without ids theirs first, so that new names lose no record", async () => {
    const plan = smallPlan();
    const unnamed = { ...plan, jobs: plan.jobs!.map((row) => ({ ...row, id: null })), arrays: plan.arrays!.map((row) => ({ ...row, id: null })) };
    const workbook = await built(unnamed);
    await type(workbook, { "T-10/A0001": { found: "n-0001", by: "AB" } });
    const write = async (sheet: string, from: string, to: string): Promise<void> => {
      const place = cellWith((await workbook.port.read()).sheets.find(({ name }) => name === sheet)!, from);
      await workbook.port.apply([{ kind: "write", sheet, ...place, cells: [[{ value: to }]] }]);
    };
    await write("Arrays", "n-1", "northern-1");
    await write("Jobs", jobName, "Great hall");
    for await (const { outcome } of buildTabs(workbook.port, moment)) expect(outcome).toMatchObject({ job: "Great hall", built: true, carried: 1, kept: 0 });
    expect((await workbook.port.read()).sheets.filter(({ name, visible }) => visible && name.includes("hall")).map(({ name }) => name)).toEqual(["Great hall"]);
  });

  test("keeps its seal through a file and through sorting, and misses a row that was deleted", async () => {
    const workbook = await built();
    await type(workbook, complete);
    await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    const again = await start(await workbook.save());
    expect(await checkSeal(again.port, jobName)).toMatchObject({ holds: true });

    const tab = await tabInSight(again.port);
    const sheet = (await again.port.read()).sheets.find(({ name }) => name === tab.sheet)!;
    const rows = tab.steps.map(({ row }) => row);
    // Sorting moves whole rows, formats too, which an edit does not: a number in a cell of text format is another one to the formulas.
    const moved = rows.map((row, index) => {
      const from = rows.at(-1 - index)!;
      const cells = sheet.values[from]!.map((value, column) => {
        const formula = sheet.formulas[from]?.[column]?.replace(new RegExp(`(\\$[A-Z]+)${from + 1}(?!\\d)`, "g"), `$1${row + 1}`);
        return formula === undefined ? { value: value as Scalar } : { formula };
      });
      return { kind: "write" as const, sheet: tab.sheet, row, column: 0, cells: [cells] };
    });
    await again.port.apply(moved);
    const sorted = await tabInSight(again.port);
    expect(sorted.steps.map(({ key }) => key)).toEqual([...tab.steps].reverse().map(({ key }) => key));

    await again.port.apply([{ kind: "write", sheet: tab.sheet, row: rows[4]!, column: 0, cells: [sheet.values[rows[4]!]!.map(() => ({}))] }]);
    expect((await checkSeal(again.port, jobName)).changed.map(({ label }) => label)).toContain(`Row ${tab.steps.find(({ key }) => key === sorted.steps[4]!.key)!.row + 1}, as it was sealed, is gone`);
  });

  test("is not closed while a result is typed over, though nothing else says so", async () => {
    const workbook = await built();
    await type(workbook, { ...complete, "T-11/A0001": { found: 99, by: "AB" } });
    const tab = await tabInSight(workbook.port);
    await workbook.port.apply([{ kind: "write", ...cellOf(tab, "T-11/A0001", "result"), cells: [[{ formula: '="As expected"' }]] }]);
    const items = (await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence);
    expect(items[0]).toBe("No. 3 T-11 says Differs. Put it right, or waive it with name and reason.");
    expect(items).toContain("Result of No. 3 T-11 shows “As expected” where “Differs” is right. Build the tab again: the formula comes back.");
    await expect(closeOut(workbook.port, jobName, "AB", "2026-03-09")).rejects.toThrow(/^9 items keep "North hall" from closing/);
    await build(workbook);
    expect((await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence)).toEqual([items[0]]);
  });

  test("is closed with a cell that was typed over once that is accepted by name and reason, and the seal shows when it changes", async () => {
    const workbook = await built();
    await type(workbook, complete);
    const tab = await tabInSight(workbook.port);
    const over = (value: Scalar) => workbook.port.apply([{ kind: "write", ...cellOf(tab, "T-11/A0001", "result"), cells: [[{ value }]] }]);
    await over("As agreed");
    const fact = "Result of No. 3 T-11 holds no formula any more.";
    expect((await previewCloseOut(workbook.port, jobName)).flatMap((item) => item.fact ?? [])).toContain(fact);
    await expect(acceptAsItIs(workbook.port, jobName, "EF", " ")).rejects.toThrow("Accepting wants a name and a reason. Type both.");
    await acceptAsItIs(workbook.port, jobName, "EF", "Agreed with the desk");
    expect((await tabInSight(workbook.port)).snags[0]!.typed).toMatchObject({ foundWrong: expect.stringContaining(fact) as string, closed: "Accepted", by: "EF", note: "Agreed with the desk" });
    await expect(acceptAsItIs(workbook.port, jobName, "EF", "again")).rejects.toThrow("Nothing in \"North hall\" is typed over or outdated.");
    await closeOut(workbook.port, jobName, "AB", "2026-03-09 14:20");
    expect(await checkSeal(workbook.port, jobName)).toMatchObject({ holds: true });
    await expect(acceptAsItIs(workbook.port, jobName, "EF", "later")).rejects.toThrow("is closed, so there is nothing to accept");
    await over("As expected");
    expect((await checkSeal(workbook.port, jobName)).changed.map(({ label }) => label)).toContain("Result of No. 3 T-11 n-1");
  });

  test("is not closed where work went past a hold point, until that is put right or accepted by name", async () => {
    const small = smallPlan();
    const workbook = await built({ ...small, steps: small.steps!.map((row) => (row.stepId === "T-11" ? { ...row, holdPoint: "yes" as const } : row)) });
    await type(workbook, { ...complete, "T-11/A0001": { by: "AB", done: 46_084 }, "T-12/A0001": { ...complete["T-12/A0001"]!, done: 46_083 } });
    const progress = async () => jobStandings(readCommissioningPlan(await workbook.port.read()))[0]!.progress.passedHolds;
    const open = (await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence);
    expect(open).toEqual([
      "No. 3 T-11 is not done. Type what was found.",
      // Ports of the array as well; its neighbour, cluster and site are not held by it.
      "No. 4 T-12 and 4 more rows below were done before hold point No. 3 T-11 was signed. Stop there, and sign it first.",
    ]);
    expect(await progress()).toBe(1);
    await type(workbook, { "T-11/A0001": { found: 4 } });
    const fact = "No. 4 T-12 and 1 more row below were done before hold point No. 3 T-11 was signed.";
    expect(await previewCloseOut(workbook.port, jobName)).toMatchObject([{ fact, sentence: `${fact} Mend the day, or accept it by name.` }]);
    await expect(closeOut(workbook.port, jobName, "AB", "2026-03-09 14:20")).rejects.toThrow(fact);
    await acceptAsItIs(workbook.port, jobName, "EF", "Agreed with the desk");
    expect(await progress()).toBe(0);
    await closeOut(workbook.port, jobName, "AB", "2026-03-09 14:20");
    expect(await checkSeal(workbook.port, jobName)).toMatchObject({ holds: true });
  });

  test("is not closed while another tab of it is in sight, or a text stands where the seal goes", async () => {
    const workbook = await built();
    await type(workbook, complete);
    const tab = await tabInSight(workbook.port);
    const sheet = (await workbook.port.read()).sheets.find(({ name }) => name === tab.sheet)!;
    const rows = sheet.values.map((line, row) => line.map((value, column) => ({ value: value as Scalar, ...(sheet.formulas[row]?.[column] ? { formula: sheet.formulas[row][column] } : {}) })));
    await workbook.port.apply([
      { kind: "add-sheet", plan: { name: "My copy", rows, styles: {}, columnWidths: [] } },
      { kind: "write", sheet: tab.sheet, row: tab.places.sealsRow + 2, column: 9, cells: [[{ value: "mine" }]] },
    ]);
    await expect(previewCloseOut(workbook.port, jobName)).rejects.toThrow('Tabs "North hall" and "My copy" are of one job. Bring back the copy as a file, or delete it');
    await workbook.port.apply([{ kind: "delete-sheet", sheet: "My copy" }]);
    const sentences = (await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence);
    expect(sentences).toContain(`What was typed into row ${tab.places.sealsRow + 3} stands where the seal goes. Move it, or build the tab again.`);
  });

  test("is not closed with an expectation that the plan does not have any more", async () => {
    const workbook = await built();
    await type(workbook, complete);
    const arrays = (await workbook.port.read()).sheets.find(({ name }) => name === "Arrays")!;
    await workbook.port.apply([{ kind: "write", sheet: "Arrays", ...cellWith(arrays, "N-0002"), cells: [[{ value: "N-0022" }]] }]);
    expect(jobStandings(readCommissioningPlan(await workbook.port.read()))[0]!.progress).toMatchObject({ done: 17, differ: 1 });
    expect((await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence)).toEqual(["No. 5 T-10 expects something else than the plan. Build the tab again."]);
    await expect(closeOut(workbook.port, jobName, "AB", "2026-03-09")).rejects.toThrow("expects something else than the plan");
    await build(workbook);
    expect((await previewCloseOut(workbook.port, jobName)).map(({ sentence }) => sentence)).toEqual(["No. 5 T-10 asks to be seen again: its expectation has changed."]);
  });
});

test("a tab whose hidden header was emptied is refused by name, and nothing is written to it", async () => {
  const workbook = await built();
  await type(workbook, complete);
  const tab = await tabInSight(workbook.port);
  await workbook.port.apply([{ kind: "write", sheet: tab.sheet, row: tab.headerRow, column: columnOf(tab, "digest"), cells: [[{ value: null }]] }]);
  const before = await workbook.port.read();
  const sentence = 'The header "Digest" of "North hall" is gone. Undo that, or write it back over its column in row 2.';
  await expect(closeOut(workbook.port, jobName, "AB", "2026-03-09")).rejects.toThrow(sentence);
  await expect(build(workbook)).rejects.toThrow(sentence);
  await expect(previewReturned(workbook.port, before)).rejects.toThrow(sentence);
  expect(await workbook.port.read()).toEqual(before);
});

describe("a filled tab that comes back", () => {
  async function both(): Promise<{ readonly plan: HeadlessWorkbook; readonly file: HeadlessWorkbook }> {
    const plan = await built();
    return { plan, file: await start(await plan.save()) };
  }

  test("brings what only they typed, keeps what only we typed, and asks about what both changed", async () => {
    const { plan, file } = await both();
    await type(plan, { "T-01/site": { found: "Yes" }, "T-10/A0001": { found: "ours" } });
    await type(file, { "T-11/A0001": { found: 4, by: "CD" }, "T-10/A0001": { found: "N-0001" } });
    const [job] = await previewReturned(plan.port, await file.port.read());
    expect(job!.items.map(({ id, change, ours, theirs }) => [id, change, ours, theirs])).toEqual([
      ["J0001/T-10/A0001", "both", "Found: ours", "Found: N-0001"],
      ["J0001/T-11/A0001", "theirs", "", "Found: 4, By: CD"],
    ]);
    expect(job!.onlyOurs).toBe(1);
    await bringBack(plan.port, job!, new Set(job!.items.map(({ id }) => id)), moment);
    const tab = await tabInSight(plan.port);
    const found = Object.fromEntries(tab.steps.map((one) => [one.key.slice(6), one.typed.found]));
    expect(found).toMatchObject({ "T-01/site": "Yes", "T-10/A0001": "N-0001", "T-11/A0001": 4 });
    // What was replaced is not lost.
    expect(tab.orphans).toMatchObject([{ key: "J0001/T-10/A0001", typed: { found: "ours" } }]);
  });

  test("leaves a hold point to the lead's own tab, and shows what it says of it", async () => {
    const small = smallPlan();
    const plan = await built({ ...small, steps: small.steps!.map((row) => (row.stepId === "T-10" ? { ...row, holdPoint: "yes" as const } : row)) });
    const file = await start(await plan.save());
    await type(plan, { "T-10/A0002": { found: "N-0002", by: "AB" } });
    await type(file, { "T-10/A0001": { found: "N-0001", by: "CD" }, "T-11/A0001": { found: 4, by: "CD" } });
    const [job] = await previewReturned(plan.port, await file.port.read());
    expect(job).toMatchObject({ items: [{ id: "J0001/T-11/A0001" }], holdPoints: [{ label: "No. 2 T-10 n-1", ours: "", theirs: "Found: N-0001, By: CD" }] });
    const { sentence } = await bringBack(plan.port, job!, new Set(["J0001/T-10/A0001", "J0001/T-11/A0001"]), moment);
    expect(sentence).toContain("1 of 2 accepted entries stand in the tab.");
    const tab = await tabInSight(plan.port);
    expect(tab.steps.flatMap(({ key, typed }) => (typed.by === null ? [] : [[key, typed.by]]))).toEqual([["J0001/T-11/A0001", "CD"], ["J0001/T-10/A0002", "AB"]]);
    expect(tab.orphans).toEqual([]);
  });

  test("writes nothing that was not accepted", async () => {
    const { plan, file } = await both();
    await type(file, { "T-10/A0001": { found: "N-0001" }, "T-11/A0001": { found: 4 } });
    const [job] = await previewReturned(plan.port, await file.port.read());
    await bringBack(plan.port, job!, new Set(["J0001/T-11/A0001"]), moment);
    expect((await tabInSight(plan.port)).steps.filter(({ typed }) => typed.found !== null).map(({ key }) => key)).toEqual(["J0001/T-11/A0001"]);
  });

  test("from an older build is compared all the same, and its records ask to be seen again where the plan has changed", async () => {
    const { plan, file } = await both();
    const arrays = (await plan.port.read()).sheets.find(({ name }) => name === "Arrays")!;
    await plan.port.apply([{ kind: "write", sheet: "Arrays", ...cellWith(arrays, "N-0001"), cells: [[{ value: "N-0011" }]] }]);
    await build(plan);
    await type(file, { "T-10/A0001": { found: "N-0001" } });
    const [job] = await previewReturned(plan.port, await file.port.read());
    expect(job!.remarks[0]).toContain("is build 1, ours is 2");
    await bringBack(plan.port, job!, new Set(job!.items.map(({ id }) => id)), moment);
    const again = (await tabInSight(plan.port)).steps.find(({ key }) => key === "J0001/T-10/A0001");
    expect(again).toMatchObject({ expectedBefore: "N-0001", result: "Check again", typed: { found: "N-0001" } });
  });

  test("from another plan with the same ids is refused", async () => {
    const plan = await built();
    const other = await start();
    await fill(other, smallPlan());
    for await (const { outcome } of buildTabs(other.port, { ...moment, instant: "2026-03-03T10:00:00.000Z" })) expect(outcome.built).toBe(true);
    await expect(previewReturned(plan.port, await other.port.read())).rejects.toThrow("it was first built from another plan");
    await expect(previewReturned(plan.port, { sheets: [] })).rejects.toThrow("The file holds no commissioning tab.");
  });
});

describe("after the work", () => {
  test("accepted serials, units and addresses go back to the plan once the job is closed and they were shown", async () => {
    const workbook = await built();
    await type(workbook, { ...complete, "T-10/A0001": { found: "N-0077", by: "AB" } });
    const plan = planAsBuilt(jobName);
    const changes = async () => plan(await workbook.port.read());
    await snag(workbook, 0, "T-10/A0001", { foundWrong: "Other chassis", closed: "Accepted", by: "EF" });
    await expect(changes()).rejects.toThrow(`Job "${jobName}" is not closed. Close it out first`);
    await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    const shown = await changes();
    expect(shown.writes.map(({ sheet, before, value }) => [sheet, before, value])).toEqual([["Arrays", "N-0001", "N-0077"]]);
    await writeShownChanges(workbook.port, shown, plan);
    expect((await changes()).writes).toEqual([]);
    // What the job had expected stands on its tab as it did, and its seal holds.
    expect((await tabInSight(workbook.port)).steps.find(({ key }) => key.endsWith("T-10/A0001"))).toMatchObject({ expected: "N-0001", typed: { found: "N-0077" } });
    expect((await checkSeal(workbook.port, jobName)).holds).toBe(true);
    await type(workbook, { "T-11/A0001": { found: 5 } });
    await expect(changes()).rejects.toThrow(`The seal of "${jobName}" does not hold.`);
  });

  test("what was read of arrays in use goes into Readings, a table that comes with the first of them, and counts before what Arrays says", async () => {
    const read = { procedure: "Try out", record: "size", unit: "TB" } as const;
    const workbook = await built({ ...smallPlan(), steps: [...smallPlan().steps!, step("YCK-037", "Arrays", read)] });
    const records = { "YCK-037/A0001": { found: 9.5, by: "AB", done: 46_083 }, "YCK-037/A0002": { found: 8, by: "AB", done: 46_083 } };
    await type(workbook, { ...complete, ...records });
    await addTableOfReadings(workbook.port, jobName);
    expect((await workbook.port.read()).sheets.map(({ name }) => name)).not.toContain("Readings");
    await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    await addTableOfReadings(workbook.port, jobName);
    const plan = planAsBuilt(jobName);
    await writeShownChanges(workbook.port, plan(await workbook.port.read()), plan);
    const { model } = readCommissioningPlan(await workbook.port.read());
    expect(model.rows("readings").map(({ date, subject, what, value, unit, source }) => [date, subject, what, value, unit, source])).toEqual([
      ["2026-03-02", "n-1", "used", 9.5, "TB", jobName], ["2026-03-02", "n-2", "used", 8, "TB", jobName],
    ]);
    expect(model.find("arrays", "n-1")!.used).toBe(9_500_000_000_000n);
    expect(plan(await workbook.port.read()).writes).toEqual([]);
  });

  test("a handover and a progress sheet are made, and made again in their places", async () => {
    const workbook = await built();
    await type(workbook, complete);
    const code = await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    expect(await handover(workbook.port, jobName, "2026-03-09 10:00")).toBe("North hall handover");
    await handover(workbook.port, jobName, "2026-03-09 11:00");
    await writeProgress(workbook.port, "2026-03-09 10:00");
    await writeProgress(workbook.port, "2026-03-09 11:00");
    const sheets = (await workbook.port.read()).sheets;
    expect(sheets.map(({ name }) => name).filter((name) => /handover|Progress/.test(name))).toEqual(["North hall handover", "Progress"]);
    const cells = sheets.find(({ name }) => name === "North hall handover")!.values.flat();
    expect(cells).toEqual(expect.arrayContaining(["N-0001", "Port left dark", code, "holds"]));
    expect(sheets.find(({ name }) => name === "Progress")!.values[4]).toEqual([jobName, "North hall", "closed", 1, 18, 18, 0, 0, 0, 0, 0, 0, null]);
  });
});

function cellWith(sheet: SheetSnapshot, value: string): { readonly row: number; readonly column: number } {
  const row = sheet.values.findIndex((line) => line.includes(value));
  return { row, column: sheet.values[row]!.indexOf(value) };
}
