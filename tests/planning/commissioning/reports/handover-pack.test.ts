import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import type { JobRecords } from "../../../../src/planning/commissioning/record";
import { handoverPack, type HandoverPack } from "../../../../src/planning/commissioning/reports";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { gridPlan, moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";
import { jobRecords, sealLine, snagOf, stepRecord } from "../../../support/job-records";

function handover(records: Partial<JobRecords> = {}, rows: TableRows = smallPlan(), sealHolds = true): HandoverPack {
  const source = readCommissioningPlan(planWorkbook(rows));
  return handoverPack(source, jobsOf(source)[0]!, { tab: jobRecords(records), sealHolds }, "2026-03-09 10:00");
}

/** Reads the lines of a block, the headers first; where it has none, the sentence that stands in their place. */
function block({ blocks }: HandoverPack, title: string): unknown {
  const { headers, lines, none } = blocks.find((one) => one.title === title)!;
  return lines.length === 0 ? none : [headers, ...lines];
}

const linesOf = (pack: HandoverPack, title: string) => (block(pack, title) as unknown[][]).slice(1);

type Typed = Partial<JobRecords["steps"][number]["typed"]> & { readonly result?: "As expected" | "Waived" };

/** Hands over what was typed into the tab of a plan, by the end of the keys of its steps; closed by a seal unless said otherwise. */
function found(rows: TableRows, typed: Readonly<Record<string, Typed>>, more: Partial<JobRecords> = {}): HandoverPack {
  const source = readCommissioningPlan(planWorkbook(rows));
  const built = readPlannedTab(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab);
  const steps = built.steps.map((record) => {
    const [, cells] = Object.entries(typed).find(([key]) => record.key.endsWith(`/${key}`)) ?? [];
    if (cells === undefined) return record;
    const { result = "As expected", ...rest } = cells;
    return { ...record, typed: { ...record.typed, by: "AB", done: 46_085, ...rest }, result, settled: true };
  });
  return handoverPack(source, jobsOf(source)[0]!, { tab: { ...built, steps, seals: [sealLine()], ...more }, sealHolds: true }, "2026-03-09 10:00");
}

describe("a handover pack begins with what is open", () => {
  test("and says on top how much", () => {
    const steps = [stepRecord({}), stepRecord({ no: "2", settled: true, result: "As expected" })];
    expect(handover({ steps, snags: [snagOf(), snagOf()] })).toMatchObject({ isComplete: false, standing: "Not complete: 1 required step and 2 snags open." });
    expect(handover()).toMatchObject({ isComplete: true, standing: "Every required step is settled and every snag is closed or accepted by name." });
    expect(handover().blocks.slice(0, 5).map(({ title }) => title)).toEqual(["Required steps still open", "Snags still open", "Deviations", "Waived and not applicable", "Snags closed or accepted"]);
  });

  test("step by step, with what each asks for", () => {
    const steps = [
      stepRecord({ settled: true, result: "As expected" }),
      stepRecord({ no: "2", stepId: "S-2", step: "HOLD POINT: nothing further before this is done and signed.\nCAUTION: Hot.\nTouch it\nMaker's guide: page 3" }),
      stepRecord({ no: "3", stepId: "S-3", required: false }),
      stepRecord({ no: "4", stepId: "S-4", result: "Differs", kind: "number", expected: "3", seenUnit: "h", typed: { found: 4 } }),
    ];
    expect(block(handover({ steps }), "Required steps still open")).toEqual([
      ["No.", "Step id", "Step", "For", "Expected", "Found", "Result"],
      ["2", "S-2", "Touch it", "array 1", "Done", "", "not done"],
      ["4", "S-4", "Do it", "array 1", "3", "4 h", "Differs"],
    ]);
    expect(block(handover(), "Required steps still open")).toBe("None: every required step is settled.");
  });

  test("and snag by snag, those that are closed apart", () => {
    const typed = { about: 3, foundWrong: "Dent", mender: "EF", byWhen: 46_085, foundAgain: 5, closed: "Closed", by: "AB" };
    const pack = handover({ snags: [snagOf({ id: "S-12", stepId: "T-3", typed }), snagOf({ id: "S-13", typed: { closed: "Accepted" } })] });
    expect(linesOf(pack, "Snags still open")).toEqual([["S-13", "", "Scratch", "", ""]]);
    expect(linesOf(pack, "Snags closed or accepted")).toEqual([["S-12", "T-3", "Dent", "5", "Closed", "AB", ""]]);
  });
});

describe("what differs", () => {
  test("never reads as if all were well where nothing was done", () => {
    expect(block(handover({ steps: Array.from({ length: 8 }, (_, no) => stepRecord({ no: String(no + 1) })) }), "Deviations")).toBe("No step has been done yet.");
    expect(block(handover({ steps: [stepRecord({ result: "As expected", settled: true })] }), "Deviations")).toBe("None: nothing of the 1 step that was done differs.");
  });

  test("stands apart from what was waived, with name and reason", () => {
    const steps = [
      stepRecord({ no: "3", stepId: "S-3", result: "Differs", typed: { found: 4, by: "AB", note: "n" } }),
      stepRecord({ no: "4", stepId: "S-4", result: "Waived", typed: { found: "Waived", by: "AB", note: "No lift" } }),
      stepRecord({ no: "5", stepId: "S-5", result: "Not applicable", typed: { found: "Not applicable" } }),
      stepRecord({ no: "6", stepId: "S-6", key: "J1/S-6/A1", result: "Waived", typed: { found: "B" } }),
      stepRecord({ no: "7", result: "As expected" }),
    ];
    const snags = [snagOf({ id: "S-1", key: "J1/S-6/A1", typed: { foundWrong: "Other colour", closed: "Accepted", by: "EF", note: "seen" } })];
    expect(block(handover({ steps, snags }), "Deviations")).toEqual([
      ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Note"],
      ["3", "S-3", "array 1", "Done", "4", "Differs", "AB", "n"],
    ]);
    expect(linesOf(handover({ steps, snags }), "Waived and not applicable").map((line) => line.slice(1).filter((_, at) => at !== 1))).toEqual([
      ["S-4", "Done", "Waived", "Waived", "AB", "No lift"],
      ["S-5", "Done", "Not applicable", "Not applicable", "no name", "no reason"],
      ["S-6", "Done", "B", "Waived", "EF", "S-1 Other colour\nseen"],
    ]);
  });

  test("in a grid names who has signed for the grid", () => {
    const slot = { place: 1, rowKey: "slots:", signKey: "J1/sign/ports", head: "" };
    const steps = [
      stepRecord({ no: "3", stepId: "S-3", slot, sign: "none", result: "Differs", typed: { found: 4, note: "n" } }),
      stepRecord({ no: "4", key: slot.signKey, stepId: "sign", result: "As expected", typed: { found: "Yes", by: "CD" } }),
    ];
    expect(linesOf(handover({ steps }), "Deviations")).toEqual([["3", "S-3", "array 1", "Done", "4", "Differs", "CD", "n"]]);
  });
});

describe("what stands at the site", () => {
  const plan = (): TableRows => ({ ...smallPlan(), arrays: smallPlan().arrays!.map((row) => ({ ...row, warrantyUntil: row.id === "A0001" ? "2031-05-31" : null })) });

  test("is what the tab found, with the plan beside it where that says something else, and marked as planned where nobody recorded it", () => {
    const pack = found(plan(), { "T-10/A0001": { found: "N-0077", result: "Waived" }, "T-11/A0001": { found: 4 }, "T-10/A0002": { found: "n-0002" } });
    expect(block(pack, "Arrays as built")).toEqual([
      ["Array", "Model", "Serial", "Firmware", "Rack", "Lowest unit", "Feed A", "Feed B"],
      ["n-1", "Elm 6 (plan)", "N-0077\nplanned N-0001", "not recorded", "N1 (plan)", "4", "N-A (plan)", "N-B (plan)"],
      ["n-2", "Elm 6 (plan)", "N-0002", "not recorded", "N1 (plan)", "8 (plan)", "N-A (plan)", "N-B (plan)"],
    ]);
    expect(block(pack, "Warranty")).toEqual([["Array", "Serial", "Warranty until"], ["n-1", "N-0077\nplanned N-0001", "2031-05-31"], ["n-2", "N-0002", "not in the plan"]]);
  });

  test("is what was seen last, where a snag saw it again", () => {
    const snags = [snagOf({ id: "S-1", key: "J0001/T-10/A0001", typed: { foundAgain: "N-0078", closed: "Closed", by: "EF" } })];
    expect(linesOf(found(plan(), { "T-10/A0001": { found: "N-0077" } }, { snags }), "Arrays as built")[0]).toContain("N-0078\nplanned N-0001");
  });

  test("keeps what a closed tab had expected, whatever the plan says since", () => {
    const built = readCommissioningPlan(planWorkbook(plan()));
    const tab = readPlannedTab(buildJob(built, jobsOf(built)[0]!, () => "new", moment).tab);
    const steps = tab.steps.map((record) => (record.key.endsWith("T-10/A0001") ? { ...record, typed: { ...record.typed, found: "N-0077" }, result: "Waived" as const, settled: true } : record));
    const since = readCommissioningPlan(planWorkbook({ ...plan(), arrays: plan().arrays!.map((row) => ({ ...row, serial: row.id === "A0001" ? "N-0077" : row.serial! })) }));
    const pack = handoverPack(since, jobsOf(since)[0]!, { tab: { ...tab, steps, seals: [sealLine()] }, sealHolds: true }, "2026-03-09 10:00");
    expect(linesOf(pack, "Arrays as built")[0]).toContain("N-0077\nplanned N-0001");
    expect(linesOf(pack, "Waived and not applicable")).toHaveLength(1);
  });

  test("is headed as built where the job installs, as found on any other visit", () => {
    const titles = (rows: TableRows) => handover({}, rows).blocks.map(({ title }) => title).filter((title) => title.includes(" as "));
    expect(titles(smallPlan())).toEqual(["Arrays as built", "Drives by bay as built"]);
    const visit = { ...smallPlan(), steps: smallPlan().steps!.map((row) => ({ ...row, when: null })) };
    expect(titles(visit)).toEqual(["Arrays as found", "Drives by bay as found"]);
  });

  test("has every address with its network, and the cluster's own", () => {
    const pack = found(smallPlan(), { "T-20/A0001.A.0": { found: "192.0.2.9", result: "Waived" }, "T-30/A0001.cluster": { found: "192.0.2.250" } });
    expect((block(pack, "Addresses") as unknown[]).slice(0, 3)).toEqual([
      ["Array", "Port", "Address", "Network", "Prefix", "Gateway", "MTU", "Switch and port"],
      ["n-1", "A0", "192.0.2.9\nplanned 192.0.2.1", "data", "192.0.2.0/24", "none", 9000, ""],
      ["n-1", "B0", "192.0.2.2 (plan)", "data", "192.0.2.0/24", "none", 9000, ""],
    ]);
    expect(block(pack, "Clusters")).toEqual([["Cluster", "Address", "Network", "Arrays of this job"], ["North", "192.0.2.250", "data", "n-1\nn-2"]]);
  });

  test("says what capacity each array has, and nothing where the plan does not say enough", () => {
    // RAID 6 keeps two of six drives of 4 TB for parity: four of them, 16 TB, are usable (SNIA disk data format: two parity drives a group).
    expect(block(handover(), "Capacity of each array")).toEqual([
      ["Array", "Pool", "Scheme", "Drives", "Spares", "Usable TB", "Reserve TB", "Raw TB"],
      ["n-1", "North (plan)", "RAID 6 (plan)", "6 (plan)", "0 (plan)", 16, 0, 24],
      ["n-2", "North (plan)", "RAID 6 (plan)", "6 (plan)", "0 (plan)", 16, 0, 24],
    ]);
    const arrays = [{ ...smallPlan().arrays![0]!, scheme: null, drives: null, spares: null }];
    expect(linesOf(handover({}, { ...smallPlan(), arrays }), "Capacity of each array")[0]).toEqual(["n-1", "North (plan)", "not recorded", "not recorded", "not recorded", "", "", ""]);
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
    expect(linesOf(made, "Capacity of each array").slice(0, 2)).toEqual([["n-1 fast", "Fast", "RAID 10", 4, "", 8, 0, 16], ["n-1 bulk", "North", "RAID 6", 6, 1, 24, 0, 48]]);
  });

  test("says what hosts can store by pool, and which of them open what with which rights", () => {
    // Two copies over two arrays of 16 TB each leave 16 TB.
    const rows: TableRows = {
      ...smallPlan(),
      pools: [{ pool: "North", acrossArrays: "2 copies", fillLimit: 0.8 }],
      hosts: [{ host: "desk-1", site: "North hall", groups: "desks", initiatorName: "iqn.2024-05.example:desk-1", address: "192.0.2.65, 192.0.2.66" }, { host: "far", site: "South hall" }],
      volumes: [{ volume: "maps", pool: "North", size: "10 TB", snapshotShare: 0.2, purpose: "Maps" }, { volume: "drafts", pool: "north", size: "6 TB", provisioning: "thin" }, { volume: "other" }],
      access: [{ volume: "maps", to: "desks", number: 1 }, { volume: "maps", to: "far", right: "read" }],
    };
    expect(block(handover({}, rows), "Capacity to hosts")).toEqual([
      ["Pool", "Scheme across arrays", "Arrays", "To hosts TB", "Full volumes TB", "Promised TB", "Fill limit"],
      ["North", "2 copies (plan)", "n-1\nn-2", 16, 12, 18, "80% (plan)"],
    ]);
    expect(linesOf(handover({}, rows), "Hosts")).toEqual([["desk-1", "desks", "iqn.2024-05.example:desk-1", "192.0.2.65\n192.0.2.66"]]);
    expect(linesOf(handover({}, rows), "Volumes and who opens them")).toEqual([
      ["maps", "North", "desks as 1, read and write\nfar, read", 10, "full", "20%", "Maps"],
      ["drafts", "north", "", 6, "thin", "0%", ""],
    ]);
    const unknown = { ...rows, arrays: [{ ...smallPlan().arrays![0]!, scheme: null }], volumes: [] };
    expect(linesOf(handover({}, unknown), "Capacity to hosts")[0]!.slice(3)).toEqual(["not known", "", "", "80% (plan)"]);
    const apart = { ...smallPlan(), pools: [], arrays: smallPlan().arrays!.map((row) => ({ ...row, pool: null })) };
    expect(block(handover({}, apart), "Capacity to hosts")).toBe("No pool is planned: hosts have what each array leaves.");
  });
});

describe("drives by bay", () => {
  test("have the serial numbers that were read, bay by bay, whether the plan has rows for them or not", () => {
    const rows: TableRows = { ...gridPlan(), drives: [{ array: "n-1", bay: 2, serial: "D-2", part: "P-8T", firmware: "A1", size: "8 TB", fitted: "2026-03-01" }] };
    const pack = found(rows, { "T-40/A0001.bay-1": { found: "D-1" }, "T-40/A0001.bay-2": { found: "D-22" } });
    expect(block(pack, "Drives by bay as built")).toEqual([
      ["Array", "Bay", "Serial", "Part", "Firmware", "Size TB", "Fitted"],
      ["n-1", "bay 1", "D-1", "", "", "", ""],
      ["n-1", "bay 2", "D-22\nplanned D-2", "P-8T", "A1 (plan)", 8, "2026-03-01"],
      ["n-1", "bay 3", "not recorded", "", "", "", ""],
      ["n-1", "bay 4", "not recorded", "", "", "", ""],
      ["n-2", "4 bays", "not recorded", "", "", "", ""],
    ]);
  });

  test("of shelves stand behind those of the chassis, with columns that say something alone", () => {
    const rows: TableRows = { ...gridPlan(), drives: [{ array: "n-1", shelf: "S1", bay: 1, serial: "D-S" }] };
    const pack = found(rows, { "T-40/A0001.s1.bay-1": { found: "D-S" } });
    expect(block(pack, "Drives by bay as built")).toEqual(expect.arrayContaining([["Array", "Bay", "Serial"], ["n-1", "S1 bay 1", "D-S"]]));
  });

  test("are told apart from serial numbers of other things", () => {
    const rows: TableRows = { ...gridPlan(), steps: [...gridPlan().steps!, step("T-50", "Cluster", { record: "serial" })] };
    const pack = found(rows, { "T-10/A0001": { found: "N-0001" }, "T-40/A0001.bay-1": { found: "D-1" }, "T-50/A0001.cluster": { found: "C-9" } });
    expect(linesOf(pack, "Other serial numbers").map((line) => line.slice(1))).toEqual([["T-50", "North", "C-9", "", "AB", "2026-03-04"]]);
    expect(handover().blocks.some(({ title }) => title === "Other serial numbers")).toBe(false);
  });
});

describe("what was measured", () => {
  const rows: TableRows = {
    ...smallPlan(),
    jobs: smallPlan().jobs!.map((row) => ({ ...row, longestStandstill: 30 })),
    steps: [
      step("T-21", "Ports", { expect: "{{Ping size}}", record: "number", unit: "bytes" }),
      step("T-60", "Arrays", { expect: "{{Longest standstill s}}", record: "number", unit: "s", bound: "at most" }),
      step("T-61", "Arrays", { record: "number", unit: "h" }),
      step("T-62", "Arrays", { expect: "{{Bottom unit}}", record: "number" }),
      step("T-12", "Arrays", { expect: "{{Usable}}", record: "size", unit: "TB", tolerancePercent: 2 }),
      step("T-63", "Start", { record: "text" }),
    ],
  };

  test("stands beside what was agreed, with its unit: longest standstill, hours of a build, full packets, capacity", () => {
    const pack = found(rows, {
      "T-21/A0001.A.0": { found: 8972 }, "T-21/A0001.B.0": { found: 8972 }, "T-60/A0001": { found: 12 }, "T-61/A0001": { found: 22 }, "T-62/A0001": { found: 4 }, "T-12/A0001": { found: 15.9 },
    });
    expect(block(pack, "Measured against what was agreed")).toEqual([
      ["Step id", "For", "Step", "Agreed", "Measured", "Result", "By"],
      ["T-60", "n-1", "Do T-60", "at most 30 s", "12 s", "As expected", "AB\n2026-03-04"],
      ["T-61", "n-1", "Do T-61", "nothing agreed", "22 h", "As expected", "AB\n2026-03-04"],
      ["T-12", "n-1", "Do T-12", "16 TB ±2%", "15.9 TB", "As expected", "AB\n2026-03-04"],
      // Two ports alike stand in one line.
      ["T-21", "n-1 A0, n-1 B0", "Do T-21", "8972 bytes", "8972 bytes", "As expected", "AB\n2026-03-04"],
    ]);
    expect(block(handover(), "Measured against what was agreed")).toBe("Nothing was measured.");
  });

  test("is followed by what was noted where nothing was expected", () => {
    expect(block(found(rows, { "T-63/site": { found: "Keys with the desk" } }), "Noted on site")).toEqual([
      ["Step id", "For", "Step", "Noted", "By"],
      ["T-63", "North hall", "Do T-63", "Keys with the desk", "AB\n2026-03-04"],
    ]);
  });
});

describe("a handover pack ends with", () => {
  test("whom to call", () => {
    expect(block(handover(), "Contacts")).toEqual([
      ["Site", "Room", "Contact", "Access and lift", "Alerts to", "Time servers", "Name servers"],
      ["North hall", "N.1", "Desk", "", "", "192.0.2.5", ""],
    ]);
  });

  test("what became of each seal: holds, broken or reopened", () => {
    const seals = [
      sealLine({ typed: { code: "OLD", reopened: 46_091, reopenedBy: "EF", reason: "A drive was changed" } }),
      sealLine({ typed: { code: "NEW", sealed: 46_090 } }),
    ];
    const lines = (list: typeof seals, holds = true) => linesOf(handover({ seals: list }, smallPlan(), holds), "Seal");
    expect(lines(seals)).toEqual([["OLD", "2026-03-09", "AB", "reopened 2026-03-10 by EF"], ["NEW", "2026-03-09", "AB", "holds"]]);
    expect(lines([seals[1]!], false)).toEqual([["NEW", "2026-03-09", "AB", "BROKEN"]]);
    expect(lines([seals[1]!, seals[0]!]).map((line) => line[3])).toEqual(["reopened  by ", "reopened 2026-03-10 by EF"]);
    expect(block(handover(), "Seal")).toBe("Not sealed: the tab is not closed out.");
  });

  test("the code of the seal on every page only while it holds", () => {
    const seals = [sealLine({ typed: { code: "NEW" } })];
    expect([handover({ seals }).seal, handover({ seals }, smallPlan(), false).seal, handover().seal]).toEqual(["NEW", "", ""]);
  });
});
