import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { builtInProcedures } from "../../../../src/planning/commissioning/procedure";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { jobName, moment, planWorkbook, smallPlan } from "../../../support/commissioning-plan";

const small = smallPlan();

/** Builds the tab of a built-in procedure for the small plan. */
function build(procedure: string, job: Partial<TableRow<"jobs">> = {}, more: TableRows = {}) {
  const source = readCommissioningPlan(planWorkbook({ ...small, ...builtInProcedures, ...more, jobs: [{ ...small.jobs![0]!, procedure, ...job }] }));
  const { tab, remarks } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  return { remarks, steps: readPlannedTab(tab).steps };
}

const agreed: Partial<TableRow<"jobs">> = { longestStandstill: 60 };
const timed: TableRows = { models: [{ model: "Elm 6", warmUpHours: 4, startUpMinutes: 10 }] };
const placed: TableRows = {
  switches: [{ switch: "n-sw1", site: jobName, networks: "data" }],
  hosts: [{ host: "scan-1", site: jobName }],
  hostPorts: [{ host: "scan-1", network: "data", address: "192.0.2.65" }],
};

describe("what a build says of a plan that lacks something", () => {
  test("names the steps that keep a limit nobody planned, which show that it is agreed first", () => {
    const { remarks, steps } = build("Install a rack array", {}, placed);
    expect(remarks).toEqual(["No limit is planned for INS-325, INS-360, INS-440, INS-445, INS-455, so whatever is found there differs. Agree it, write it into the plan and build again."]);
    const shown = new Set(steps.filter(({ stepId }) => ["INS-325", "INS-440"].includes(stepId)).map(({ expected }) => expected));
    expect([...shown]).toEqual(["at least (not planned): agree it first", "at most (not planned): agree it first"]);
    expect(build("Install a rack array", agreed, { ...placed, ...timed }).remarks).toEqual([]);
  });

  test("names what the plan has none of, as its steps are missing and not unneeded", () => {
    expect(build("Install a rack array", agreed, timed).remarks).toEqual([
      'The plan has none of these for "North hall", so the tab has no step about them: switches, hosts. Write their rows and build again.',
    ]);
    expect(build("Site survey", {}, { racks: [], feeds: [] }).remarks[0]).toContain("racks, feeds, switches");
    // A receiving asks for none of them.
    expect(build("Receiving").remarks).toEqual([]);
  });

  test("keeps every failure test without a host, from a machine that is brought before them", () => {
    const [without, beside] = [build("Install a rack array", agreed, timed), build("Install a rack array", agreed, { ...placed, ...timed })];
    const tests = (steps: typeof without.steps) => steps.filter(({ stepId }) => /^INS-4[4-7]/.test(stepId)).map(({ key }) => key).filter((key) => !key.includes("INS-455") && !key.includes("INS-457"));
    expect(tests(without.steps)).toEqual(tests(beside.steps));
    const ids = without.steps.map(({ stepId }) => stepId);
    expect(ids.indexOf("INS-408")).toBeLessThan(ids.indexOf("INS-415"));
    expect(ids.indexOf("INS-415")).toBeLessThan(ids.indexOf("INS-433"));
    expect(without.steps.filter(({ stepId }) => stepId === "INS-415").map(({ expected }) => expected)).toEqual(Array(4).fill("8972"));
    expect(beside.steps.some(({ stepId }) => ["INS-408", "INS-415"].includes(stepId))).toBe(false);
  });
});

test("a job that does not say which controller it takes out is not built", () => {
  expect(() => build("Replace a controller", { ...agreed, arrays: "n-1" })).toThrow("Write under Subject in Jobs which one");
});
