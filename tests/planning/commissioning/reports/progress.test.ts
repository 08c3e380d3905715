import { planProgress, progressOf } from "../../../../src/planning/commissioning/reports";
import { jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { sealLine, snagOf, stepRecord } from "../../../support/job-records";
import { tabReading } from "../../../support/tab-reading";
import { lookFaults, lookOf } from "../../../support/sheet-look";

const job = jobsOf(readCommissioningPlan(planWorkbook(smallPlan())))[0]!;

describe("how far a job is", () => {
  test("is nothing before its first build", () => {
    expect(progressOf(job, null)).toEqual({
      job: "North hall", site: "North hall", state: "no tab", build: 0, steps: 0, done: 0, open: 0, differ: 0, again: 0, snags: 0, passedHolds: 0, minutesLeft: 0, fault: "",
    });
  });

  test("counts steps, results, snags and minutes of its tab", () => {
    const steps = [
      stepRecord({ settled: true, result: "As expected", minutes: 100 }),
      stepRecord({ settled: true, result: "Waived", required: false, minutes: 200 }),
      stepRecord({ result: "Differs", minutes: 1 }),
      stepRecord({ result: "Differs", required: false, minutes: 2 }),
      stepRecord({ result: "Check again", minutes: 4 }),
      stepRecord({ minutes: 8 }),
    ];
    const snags = [snagOf(), snagOf({ typed: { closed: "Closed" } }), snagOf({ typed: { closed: "Accepted", by: "AB" } })];
    expect(progressOf(job, tabReading({ build: 3, steps, snags }))).toEqual({
      job: "North hall", site: "North hall", state: "open", build: 3, steps: 6, done: 2, open: 3, differ: 2, again: 1, snags: 2, passedHolds: 0, minutesLeft: 15, fault: "",
    });
  });

  test("counts the hold points that work went past, but for those that somebody has accepted by name", () => {
    const steps = [
      stepRecord({ key: "J1/S-1/A1", no: "1", holdPoint: true, settled: true, typed: { found: "Yes", by: "AB", done: 46_084 } }),
      stepRecord({ key: "J1/S-2/A1", no: "2", stepId: "S-2", typed: { found: "Yes", by: "AB", done: 46_083 } }),
    ];
    const accepted = snagOf({ typed: { foundWrong: "No. 2 S-2 was done before hold point No. 1 S-1 was signed.", closed: "Accepted", by: "AB" } });
    expect([progressOf(job, tabReading({ steps })).passedHolds, progressOf(job, tabReading({ steps, snags: [accepted] })).passedHolds]).toEqual([1, 0]);
  });

  test("is closed once its tab is sealed, and open again once that was reopened", () => {
    expect(progressOf(job, tabReading({ seals: [sealLine()] })).state).toBe("closed");
    expect(progressOf(job, tabReading({ seals: [sealLine({ typed: { reopened: "2026-03-10", reopenedBy: "EF", reason: "A drive was changed" } })] })).state).toBe("open");
  });

  test("tells what keeps its tab from being read as it was built", () => {
    expect(progressOf(job, tabReading({ faults: ["The header is gone.", "Another."] })).fault).toBe("The header is gone.");
  });
});

describe("the progress sheet", () => {
  const progress = progressOf(job, tabReading({ build: 3, steps: [stepRecord({ result: "Differs" })], snags: [snagOf()] }));
  const sheet = planProgress("Progress", [progress, { ...progress, job: "South hall", fault: "The header is gone." }], "2026-03-09 10:00");

  test("lists every job under its headers", () => {
    expect(sheet.name).toBe("Progress");
    expect(sheet.rows.map((row) => row.map(({ value }) => value))).toEqual([
      ["Progress of the jobs"],
      ["Counted 2026-03-09 10:00. Choose Progress in the pane to count again."],
      [],
      ["Job", "Site", "State", "Build", "Steps", "Done", "Open", "Differ", "To see again", "Snags open", "Hold points passed", "Minutes left", "To be mended first"],
      ["North hall", "North hall", "open", 3, 1, 0, 1, 1, 0, 1, 0, 5, ""],
      ["South hall", "North hall", "open", 3, 1, 0, 1, 1, 0, 1, 0, 5, "The header is gone."],
    ]);
    expect(sheet.rows[4]!.map(({ style }) => style)).toEqual(["text", "text", "text", ...new Array<string>(9).fill("number"), "text"]);
  });

  test("marks what differs, is to be seen again, is an open snag or a hold point that work went past", () => {
    expect(sheet.conditionalFormats).toEqual([{ area: { row: 4, column: 7, rows: 2, columns: 4 }, formula: "=AND(ISNUMBER(H5),H5>0)", style: "isDifferent" }]);
    expect(planProgress("Progress", [], "now").conditionalFormats![0]!.area.rows).toBe(1);
  });

  test("keeps its headers in view and on every printed page", () => {
    expect(sheet.freeze).toEqual({ rows: 4, columns: 1 });
    expect(sheet.print).toMatchObject({ orientation: "landscape", fitToWidth: true, titleRows: { row: 3, rows: 1 }, breaksBefore: [] });
  });

  test("can be read: every style is there, no text is faint", () => {
    expect(lookFaults(sheet)).toEqual([]);
    expect(sheet.rows[1]![0]!.style).toBe("note");
    expect(sheet.columnWidths).toEqual([34, 22, 10, 8, 8, 8, 8, 8, 10, 10, 12, 10, 60]);
    expect(Object.entries(sheet.styles).map(([name, style]) => `${name}: ${lookOf(style)}`)).toEqual([
      "title: bold 16 pt #17352d",
      "note: italic #3d4f49",
      "header: bold #ffffff on #2f5d50, wrapped, middle",
      "text: wrapped, top, frame all #b9c4c0, as @",
      "number: right, top, frame all #b9c4c0",
      "isDifferent: bold #8c1c13 on #fbdcd8",
    ]);
  });
});
