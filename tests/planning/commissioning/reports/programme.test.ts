import { writeProgramme } from "../../../../src/actions/progress";
import { progressOf, planProgramme, programmeMark, programmeOf, type PlannedWork } from "../../../../src/planning/commissioning/reports";
import { PlanModel } from "../../../../src/planning/plan/model";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { planWorkbook, smallPlan } from "../../../support/commissioning-plan";
import { sealLine, stepRecord } from "../../../support/job-records";
import { PlainPort, snapshotOf } from "../../../support/plain-workbook";
import { lookFaults } from "../../../support/sheet-look";
import { tabReading } from "../../../support/tab-reading";
import { thirtySites } from "../../../support/thirty-sites";

type Job = TableRow<"jobs">;
const today = "2026-06-01";
const job = (name: string, more: Job = {}): Job => ({ id: name, job: name, site: "North hall", procedure: "Try out", state: "planned", crew: "East", plannedDate: "2026-06-10", ...more });

/** Makes the lines of jobs of which no tab is built, but for those that a tab is given for. */
function linesOf(jobs: readonly Job[], tabs: Readonly<Record<string, ReturnType<typeof tabReading>>> = {}, more: TableRows = {}) {
  const model = new PlanModel(planWorkbook({ ...smallPlan(), ...more, jobs }));
  const works = model.rows("jobs").map((row): PlannedWork => ({ job: row, progress: progressOf(row, tabs[row.job] ?? null), minutes: 60, fault: "" }));
  return programmeOf(model, works, today);
}
const blocked = (lines: ReturnType<typeof linesOf>) => lines.map((line) => [line.job.job, ...line.blockedBy]);

describe("the programme", () => {
  test("lists jobs by day and then by crew; those without a day come last", () => {
    const lines = linesOf([job("late", { plannedDate: "2026-07-01" }), job("none", { plannedDate: null }), job("west", { crew: "West" }), job("east", { crew: "east" })]);
    expect(lines.map((line) => line.job.job)).toEqual(["east", "west", "late", "none"]);
  });

  test("says after which jobs one waits, until they are closed by their tab or by their state", () => {
    const jobs = [job("survey"), job("install", { after: "Survey, cables" }), job("cables", { state: "closed" }), job("check", { after: "nothing" })];
    expect(blocked(linesOf(jobs)).slice(0, 4)).toEqual([["survey"], ["install", "after survey"], ["cables"], ["check", "after nothing, which is no job"]]);
    expect(blocked(linesOf(jobs, { survey: tabReading({ seals: [sealLine()] }) }))[1]).toEqual(["install"]);
  });

  test("says where jobs wait for each other in a circle, and where one waits for itself", () => {
    const jobs = [job("one", { after: "two" }), job("two", { after: "three" }), job("three", { after: "One" }), job("own", { after: "own" }), job("last", { after: "one" })];
    const turn = "which waits for it in turn";
    expect(blocked(linesOf(jobs))).toEqual([["one", `after two, ${turn}`], ["two", `after three, ${turn}`], ["three", `after one, ${turn}`], ["own", `after own, ${turn}`], ["last", "after one"]]);
    const long = Array.from({ length: 3000 }, (_, at) => job(`job ${at}`, { after: `job ${(at + 1) % 3000}` }));
    expect(blocked(linesOf(long))[0]).toEqual(["job 0", `after job 1, ${turn}`]);
    // Once one of them is closed the circle is open.
    expect(blocked(linesOf(jobs.map((one) => (one.job === "three" ? { ...one, state: "closed" as const } : one)))).slice(0, 2)).toEqual([["one", "after two"], ["two"]]);
  });

  test("adds up what a crew has however it is written", () => {
    const rows = planProgramme(linesOf([job("one"), job("two", { crew: "EAST" }), job("three", { crew: "West" })]), "now").rows.slice(-3);
    expect(rows.map((row) => [row[0]!.value, row[2]!.value])).toEqual([["East", 2], ["West", 1], ["All", 3]]);
  });

  test("is made though a job is at no site of the plan", () => {
    expect(blocked(linesOf([job("one"), job("lost", { site: "Attic", crew: "West" })]))).toEqual([["one"], ["lost"]]);
  });

  test("says which day or crew is missing, and that a crew is at another site on that day", () => {
    const jobs = [job("one"), job("two", { site: "South hall" }), job("three", { crew: null, plannedDate: null })];
    expect(blocked(linesOf(jobs, {}, { sites: [...smallPlan().sites!, { site: "South hall" }] }))).toEqual([
      ["one", "East is at South hall on that day too"], ["two", "East is at North hall on that day too"], ["three", "no day planned", "no crew"],
    ]);
  });

  test("counts the parts that have not come for its arrays and its site", () => {
    const parts = [
      { part: "Elm 6", for: "n-1", quantity: 1 }, { part: "Cable", for: "north hall", quantity: 12 }, { part: "Elm 6", for: "n-2", quantity: 1, came: "2026-05-01" }, { part: "Elm 6", for: "x-1" },
    ];
    expect(blocked(linesOf([job("install")], {}, { parts }))).toEqual([["install", "13 parts missing"]]);
  });

  test("knows what is closed, under way, built and late, and counts the minutes of what is settled", () => {
    const steps = [stepRecord({ settled: true, minutes: 20 }), stepRecord({ minutes: 40 })];
    const tabs = { going: tabReading({ steps }), built: tabReading({ steps: steps.slice(1).map((one) => ({ ...one, minutes: 60 })) }), shut: tabReading({ seals: [sealLine()] }) };
    const past = { plannedDate: "2026-05-31" };
    const lines = linesOf([job("going", past), job("built"), job("shut", past), job("planned", { plannedDate: today })], tabs);
    const facts = Object.fromEntries(lines.map((line) => [line.job.job, [line.state, line.isLate, line.minutesSettled]]));
    expect(facts).toEqual({ going: ["under way", true, 20], built: ["built", false, 0], shut: ["closed", false, 60], planned: ["planned", false, 0] });
  });
});

describe("the programme board of thirty sites", () => {
  const port = new PlainPort(snapshotOf(thirtySites()));
  let took = Infinity;

  beforeAll(async () => {
    const begun = process.cpuUsage();
    await writeProgramme(port, "2026-09-10 08:00", "2026-09-10");
    took = process.cpuUsage(begun).user / 1000;
  });
  const sheet = () => port.workbook.sheets.find(({ name }) => name === "Programme")!.values;

  test("has every job in one line, with what blocks it, and the sums of each crew", () => {
    expect(sheet()[0]![0]).toBe(programmeMark);
    expect(sheet()[1]![0]).toBe("Made 2026-09-10 08:00. 60 jobs at 30 sites: 0 closed, 31 blocked, 8 late. Minutes used are those written into Jobs.");
    expect(sheet()[4]!.slice(0, 7)).toEqual(["2026-08-31", "North", "Branch 01 installation", "Branch 01", "Install a rack array", "planned, late", null]);
    expect(sheet().find((row) => row[2] === "Branch 08 installation")![6]).toBe("no crew");
    expect(sheet().find((row) => row[2] === "Branch 30 check")![6]).toBe("after Branch 30 installation");
    expect(sheet().slice(-4).map((row) => [row[0], row[2]])).toEqual([["South", 19], ["West", 20], ["no crew", 1], ["All", 60]]);
  });

  test("plans the minutes of every job from its steps, without a tab", () => {
    const minutes = sheet().slice(4, 64).map((row) => row[8]);
    expect(minutes.every((one) => typeof one === "number" && one > 100)).toBe(true);
    expect(sheet().at(-1)![8]).toBe(minutes.reduce<number>((sum, one) => sum + Number(one), 0));
  });

  test("is made within 3 s of the processor, whatever else it has to do", () => {
    expect(took).toBeLessThan(3000);
  });
});

describe("the sheet of the programme", () => {
  test("can be read: every style is there and no text is faint", () => {
    expect(lookFaults(planProgramme(linesOf([job("one"), job("two", { state: "closed" })]), "2026-06-01 08:00"))).toEqual([]);
  });

  test("is refused with a sentence while no job stands in the plan", () => {
    expect(() => planProgramme([], "now")).toThrow("No job stands in the plan yet. Write one row a piece of work into Jobs: its name, site and procedure.");
  });
});
