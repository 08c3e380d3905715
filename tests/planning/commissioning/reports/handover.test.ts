import { jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { planHandover } from "../../../../src/planning/commissioning/reports";
import type { JobRecords } from "../../../../src/planning/commissioning/record";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { SheetPlan } from "../../../../src/sheet";
import { planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { jobRecords, sealLine, snagOf, stepRecord } from "../../../support/job-records";
import { lookFaults, lookOf } from "../../../support/sheet-look";

function handover(records: Partial<JobRecords> = {}, rows: TableRows = smallPlan(), sealHolds = true): SheetPlan {
  const source = readCommissioningPlan(planWorkbook(rows));
  return planHandover("North hall handover", source, jobsOf(source)[0]!, { tab: jobRecords(records), sealHolds }, "2026-03-09 10:00");
}

/** Reads the lines of a block, the headers first; cells without a value are blank. */
function block({ rows }: SheetPlan, title: string): unknown[][] {
  const start = rows.findIndex((cells) => cells[0]?.value === title && cells[0].style === "section");
  const length = rows.slice(start + 1).findIndex((cells) => cells.length === 0);
  return rows.slice(start + 1, start + 1 + length).map((cells) => cells.map(({ value = "" }) => value));
}

describe("a handover sheet", () => {
  test("begins with the job, its site, procedure, build and day, and ends with two lines to sign on", () => {
    const { name, rows, print } = handover({ build: 3 });
    expect(name).toBe("North hall handover");
    expect(rows.slice(0, 2).map((cells) => cells.map(({ value, style }) => [value, style]))).toEqual([
      [["Handover: North hall", "title"]],
      [["Site North hall, Try out, build 3, made 2026-03-09 10:00", "note"]],
    ]);
    expect(rows.at(-1)!.map(({ value }) => value)).toEqual([
      "For the site, name and date", undefined, undefined, undefined, "For the installer, name and date", undefined, undefined,
    ]);
    expect(print).toMatchObject({ orientation: "landscape", fitToWidth: true, footer: "page &P of &N" });
  });

  test("says how each array stands in the plan", () => {
    expect(block(handover(), "Arrays")).toEqual([
      ["Array", "Model", "Serial", "Firmware", "Rack", "Units", "Feeds", "Addresses"],
      ["n-1", "Elm 6", "N-0001", "", "N1", "4–5", "N-A, N-B", "A0 192.0.2.1\nB0 192.0.2.2"],
      ["n-2", "Elm 6", "N-0002", "", "N1", "8–9", "N-A, N-B", "A0 192.0.2.3\nB0 192.0.2.4"],
    ]);
    const bare = smallPlan();
    const arrays = bare.arrays!.slice(0, 1).map((row) => ({ ...row, bottomUnit: null, feedB: null }));
    expect(block(handover({}, { ...bare, arrays }), "Arrays")[1]!.slice(4)).toEqual(["N1", "", "N-A", "A0 192.0.2.1\nB0 192.0.2.2"]);
  });

  test("says what capacity each array has, and nothing where the plan does not say enough", () => {
    // RAID 6 keeps two of six drives of 4 TB for parity: four of them, 16 TB, are usable (SNIA disk data format: two parity drives a group).
    expect(block(handover(), "Capacity")).toEqual([
      ["Array", "Pool", "Scheme", "Drives", "Spares", "Usable TB", "Reserve TB", "Raw TB"],
      ["n-1", "North", "RAID 6", 6, 0, 16, 0, 24],
      ["n-2", "North", "RAID 6", 6, 0, 16, 0, 24],
    ]);
    const plan = smallPlan();
    const arrays = [{ ...plan.arrays![0]!, scheme: null, drives: null, spares: null }];
    expect(block(handover({}, { ...plan, arrays }), "Capacity")[1]).toEqual(["n-1", "North", "", "", "", "", "", ""]);
  });

  test("says what capacity each drive set of an array has, with its pool", () => {
    // RAID 10 of 4 x 4 TB keeps 8; RAID 6 of 5 x 8 TB beside a spare keeps 3 x 8 = 24.
    const plan = smallPlan();
    const arrays = [{ ...plan.arrays![0]!, scheme: null, drives: null, driveSize: null, spares: null }];
    const driveSets = [
      { array: "n-1", set: "fast", drives: 4, driveSize: "4 TB", scheme: "RAID 10", pool: "Fast" },
      { array: "n-1", set: "bulk", drives: 6, driveSize: "8 TB", scheme: "RAID 6", spares: 1 },
    ];
    const made = handover({}, { ...plan, arrays, driveSets, pools: [{ pool: "North" }, { pool: "Fast" }] });
    expect(block(made, "Capacity").slice(1)).toEqual([["n-1 fast", "Fast", "RAID 10", 4, "", 8, 0, 16], ["n-1 bulk", "North", "RAID 6", 6, 1, 24, 0, 48]]);
    expect(block(made, "Capacity to hosts").slice(1).map((line) => [line[0], line[3]])).toEqual([["North", 24], ["Fast", 8]]);
  });

  test("says what hosts can store, and which of them open what", () => {
    // Two copies over two arrays of 16 TB each leave 16 TB.
    const plan = smallPlan();
    const rows: TableRows = {
      ...plan,
      pools: [{ pool: "North", acrossArrays: "2 copies", fillLimit: 0.8 }],
      hosts: [{ host: "desk-1", site: "North hall", groups: "desks", initiatorName: "iqn.2024-05.example:desk-1", address: "192.0.2.65, 192.0.2.66" }, { host: "far", site: "South hall" }],
      volumes: [{ volume: "maps", pool: "North", size: "10 TB", snapshotShare: 0.2, purpose: "Maps" }, { volume: "drafts", pool: "north", size: "6 TB", provisioning: "thin" }, { volume: "other" }],
      access: [{ volume: "maps", to: "desks", number: 1 }, { volume: "maps", to: "far", right: "read" }],
    };
    expect(block(handover({}, rows), "Capacity to hosts")).toEqual([
      ["Pool", "Scheme across arrays", "Arrays", "To hosts TB", "Full volumes TB", "Promised TB", "Fill limit"],
      ["North", "2 copies", "n-1\nn-2", 16, 12, 18, "80%"],
    ]);
    expect(block(handover({}, rows), "Hosts").slice(1)).toEqual([["desk-1", "desks", "iqn.2024-05.example:desk-1", "192.0.2.65\n192.0.2.66"]]);
    expect(block(handover({}, rows), "Volumes")).toEqual([
      ["Volume", "Pool", "Opened by", "Size TB", "Provisioning", "Snapshot share", "Purpose"],
      ["maps", "North", "desks as 1, read and write\nfar, read", 10, "full", "20%", "Maps"],
      ["drafts", "north", "", 6, "thin", "0%", ""],
    ]);
    const unknown = { ...rows, arrays: [{ ...plan.arrays![0]!, scheme: null }], volumes: [] };
    expect(block(handover({}, unknown), "Capacity to hosts")[1]!.slice(3)).toEqual(["not known", "", "", "80%"]);
  });

  test("says which required steps are still to do, so that nobody takes an open job for a finished one", () => {
    const steps = [
      stepRecord({ settled: true, result: "As expected" }),
      stepRecord({ no: "2", stepId: "S-2" }),
      stepRecord({ no: "3", stepId: "S-3", required: false }),
      stepRecord({ no: "4", stepId: "S-4", result: "Differs" }),
    ];
    expect(block(handover({ steps }), "Still to do")).toEqual([
      ["No.", "Step id", "For", "Expected", "Result"],
      ["2", "S-2", "array 1", "Done", "not done"],
      ["4", "S-4", "array 1", "Done", "Differs"],
    ]);
    expect(block(handover(), "Still to do")).toEqual([["None: every required step is settled."]]);
  });

  test("lists what was measured, and the serial numbers that were found, four side by side", () => {
    const measured = stepRecord({ no: "5", stepId: "T-1", kind: "number", expected: "48 ±2", seenUnit: "h", typed: { found: 49, by: "AB", done: 46_085 } });
    const serials = ["1", "2", "3", "4", "5"].map((bay) => stepRecord({ kind: "serial", subject: `n-1 bay ${bay}`, typed: { found: `X-${bay}` } }));
    const sheet = handover({ steps: [measured, ...serials, stepRecord({ kind: "serial" }), stepRecord({ kind: "number" })] });
    expect(block(sheet, "Measured").slice(1)).toEqual([["5", "T-1", "array 1", "48 ±2", "49", "h", "AB", "2026-03-04"]]);
    expect(block(sheet, "Serial numbers found")).toEqual([
      ["For", "Serial", "For", "Serial", "For", "Serial", "For", "Serial"],
      ["n-1 bay 1", "X-1", "n-1 bay 2", "X-2", "n-1 bay 3", "X-3", "n-1 bay 4", "X-4"],
      ["n-1 bay 5", "X-5"],
    ]);
    expect([block(handover(), "Measured"), block(handover(), "Serial numbers found")]).toEqual([[["Nothing was measured."]], [["None were recorded."]]]);
  });

  test("names the clusters of its arrays with their shared addresses", () => {
    const lines = block(handover(), "Clusters");
    expect(lines[0]).toEqual(["Cluster", "Shared address", "Network", "State", "Arrays"]);
    expect(lines.slice(1)).toEqual([["North", "192.0.2.250", "data", "new", "n-1\nn-2"]]);
  });

  test("lists what is not as expected, and nothing else", () => {
    const steps = [
      stepRecord({ result: "As expected", typed: { found: "Yes" } }),
      stepRecord({}),
      stepRecord({ no: "3", stepId: "S-3", result: "Differs", typed: { found: 4, by: "AB", note: "n" } }),
      stepRecord({ no: "4", result: "Waived" }),
    ];
    expect(block(handover({ steps }), "Deviations")).toEqual([
      ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Note"],
      ["3", "S-3", "array 1", "Done", "4", "Differs", "AB", "n"],
      ["4", "S-1", "array 1", "Done", "", "Waived", "", ""],
    ]);
    expect(block(handover(), "Deviations")).toEqual([["None: every step that was done is as expected."]]);
  });

  test("names beside a deviation in a grid who has signed for the grid", () => {
    const slot = { place: 1, rowKey: "slots:", signKey: "J1/sign/ports" };
    const steps = [
      stepRecord({ no: "3", stepId: "S-3", slot, sign: "none", result: "Differs", typed: { found: 4, note: "n" } }),
      stepRecord({ no: "4", key: slot.signKey, stepId: "sign", result: "As expected", typed: { found: "Yes", by: "CD" } }),
    ];
    expect(block(handover({ steps }), "Deviations").slice(1)).toEqual([["3", "S-3", "array 1", "Done", "4", "Differs", "CD", "n"]]);
  });

  test("lists every snag, open ones as open", () => {
    const typed = { about: 3, foundWrong: "Dent", mender: "EF", byWhen: 46_085, foundAgain: 5, closed: "Closed", by: "AB" };
    expect(block(handover({ snags: [snagOf({ id: "S-12", stepId: "T-3", typed }), snagOf({ typed: { closed: "Accepted" } })] }), "Snags")).toEqual([
      ["Snag", "Step id", "What was found", "Who puts it right", "By when", "Found again", "State", "By"],
      ["S-12", "T-3", "Dent", "EF", "2026-03-04", "5", "Closed", "AB"],
      ["", "", "Scratch", "", "", "", "OPEN", ""],
    ]);
    expect(block(handover(), "Snags")).toEqual([["None."]]);
  });

  test("names the contacts of the site", () => {
    expect(block(handover(), "Contacts")).toEqual([
      ["Site", "Room", "Contact", "Alerts to", "Time servers", "Name servers"],
      ["North hall", "N.1", "Desk", "", "192.0.2.5", ""],
    ]);
  });

  test("says of each seal whether it holds, is broken or was reopened", () => {
    const seals = [
      sealLine({ typed: { code: "OLD", reopened: 46_091, reopenedBy: "EF", reason: "A drive was changed" } }),
      sealLine({ typed: { code: "NEW", sealed: 46_090 } }),
    ];
    expect(block(handover({ seals }), "Seal")[0]).toEqual(["Code", "Sealed", "By", "State"]);
    const lines = (list: typeof seals, holds = true) => block(handover({ seals: list }, smallPlan(), holds), "Seal").slice(1);
    expect(lines(seals)).toEqual([["OLD", "2026-03-09", "AB", "reopened 2026-03-10 by EF"], ["NEW", "2026-03-09", "AB", "holds"]]);
    expect(lines([seals[1]!], false)).toEqual([["NEW", "2026-03-09", "AB", "BROKEN"]]);
    expect(lines([seals[1]!, seals[0]!]).map((line) => line[3])).toEqual(["reopened  by ", "reopened 2026-03-10 by EF"]);
    expect(block(handover(), "Seal")).toEqual([["Not sealed: the tab is not closed out."]]);
  });

  test("frames its cells, numbers in the middle, and makes rows as high as their longest text", () => {
    const { rows, rowHeights } = handover();
    const array = rows.findIndex((cells) => cells[0]?.value === "n-1");
    expect(rows[array]!.map(({ style }) => style)).toEqual(new Array<string>(8).fill("text"));
    const capacity = rows.findIndex((cells, row) => row > array && cells[0]?.value === "n-1");
    expect(rows[capacity]!.map(({ style }) => style)).toEqual(["text", "text", "text", "number", "number", "number", "number", "number"]);
    // Two addresses are two lines of 15 points, and 4 around them.
    expect(rowHeights![array]).toBe(34);
    expect([rows[2], rowHeights![0], rowHeights![2]]).toEqual([[], undefined, undefined]);
    // A cell with nothing to say is a frame alone.
    expect(rows[array]![3]).toEqual({ style: "text" });
    expect(rows[array - 2]!.map(({ style }) => style)).toEqual(new Array<string>(8).fill("section"));
    expect(rows[array - 1]!.map(({ style }) => style)).toEqual(new Array<string>(8).fill("header"));
    const long = handover({ steps: [stepRecord({ result: "Differs", typed: { note: "x".repeat(18), found: "y".repeat(17) } })] });
    const heightOf = (plan: SheetPlan) => plan.rowHeights![plan.rows.findIndex((cells) => cells[5]?.value === "Differs")];
    expect(heightOf(long)).toBe(34);
    expect(heightOf(handover({ steps: [stepRecord({ result: "Differs", typed: { found: "y".repeat(17) } })] }))).toBeUndefined();
    expect(heightOf(handover({ steps: [stepRecord({ result: "Differs", typed: { note: "x\n".repeat(100) } })] }))).toBe(409);
  });

  test("can be read and printed: every style is there, no text is faint", () => {
    const sheet = handover({ steps: [stepRecord({ result: "Differs" })], snags: [snagOf()], seals: [sealLine()] });
    expect(lookFaults(sheet)).toEqual([]);
    expect(sheet.columnWidths).toEqual([26, 20, 26, 20, 20, 18, 20, 30]);
    expect(Object.entries(sheet.styles).map(([name, style]) => `${name}: ${lookOf(style)}`)).toEqual([
      "title: bold 18 pt #17352d",
      "note: italic #3d4f49",
      "section: bold 12 pt #17352d on #cfe0da",
      "header: bold 10 pt on #e6eeeb, wrapped, middle, frame all #b9c4c0",
      "text: wrapped, top, frame all #b9c4c0, as @",
      "number: center, top, frame all #b9c4c0",
      "line: 9 pt, frame bottom #17352d",
    ]);
    expect(sheet.print?.breaksBefore).toEqual([]);
  });
});
