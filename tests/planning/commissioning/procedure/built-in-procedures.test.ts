import { jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { expandJob, type JobStep } from "../../../../src/planning/commissioning/job";
import { builtInProcedures } from "../../../../src/planning/commissioning/procedure";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { sampleRows } from "../../../../src/planning/plan/set-up";
import { planWorkbook } from "../../../support/commissioning-plan";

function stepsOf(rows: TableRows, job: number): JobStep[] {
  const source = readCommissioningPlan(planWorkbook(rows));
  return expandJob(source.model, jobsOf(source)[job]!).sections.flatMap(({ steps }) => steps);
}

describe("the built-in procedures", () => {
  const procedures = [...new Set(builtInProcedures.procedures.map(({ procedure }) => String(procedure)))];

  test.each(procedures)("%s can be worked out on the sample plan, every field filled", (procedure) => {
    const sample = sampleRows();
    const rows = { ...sample, ...builtInProcedures, jobs: sample.jobs!.map((row) => ({ ...row, procedure })) };
    for (let job = 0; job < sample.jobs!.length; job += 1) {
      const steps = stepsOf(rows, job);
      expect(steps.length).toBeGreaterThan(0);
      expect(steps.filter((one) => [one.do, one.caution, one.expectation.shown].join().includes("{{"))).toEqual([]);
    }
  });

  test("hold at what cannot be undone or hurts: power on, create, join, scheme, erase, capacity in, firmware, controllers out, every pull, data in, acceptance", () => {
    const holds = builtInProcedures.steps.filter(({ holdPoint }) => holdPoint === "yes").map(({ stepId }) => stepId);
    expect(holds).toEqual([
      "WSP-050", "WSP-053", "WSP-057",
      "INS-100", "INS-104", "INS-120", "INS-122", "INS-150", "INS-152", "INS-221", "INS-225", "INS-231", "INS-233", "INS-251", "INS-255",
      "SHF-051", "SHF-072", "SHF-073", "SHF-080", "SHF-081", "SHF-091",
      "RCT-041", "RCT-043", "RCT-072",
      "OUT-041", "OUT-050", "OUT-051", "OUT-060", "OUT-071",
    ]);
  });

  test.each(procedures)("%s says of every section to which visit it belongs, and each visit ends with the file given back to the lead", (procedure) => {
    const sections = builtInProcedures.procedures.filter((row) => row.procedure === procedure);
    // Signing the page with the seal comes after the tab was closed.
    const visits = new Map(sections.filter(({ section }) => section !== "Sign-off").map(({ visit, section }) => [visit, section]));
    expect([...visits.keys()].every((visit) => typeof visit === "string" && visit !== "")).toBe(true);
    for (const [, last] of visits) {
      const steps = builtInProcedures.steps.filter((row) => row.procedure === procedure && row.section === last);
      expect(steps.at(-1)!.do).toContain("back to the lead of the work");
    }
  });

  test.each(procedures.filter((procedure) => !["Site survey", "Workshop preparation"].includes(procedure)))(
    "%s leaves the site safe at the end of each visit: cords locked, alerts on, what is not in use told and signed by two", (procedure) => {
      const visits = new Map(builtInProcedures.procedures.filter((row) => row.procedure === procedure && row.section !== "Sign-off").map(({ visit, section }) => [visit, section]));
      for (const [, last] of visits) {
        const steps = builtInProcedures.steps.filter((row) => row.procedure === procedure && row.section === last);
        expect(steps.map(({ do: text, sign }) => [sign, /locked|alerts are on|not in use|back to the lead/.exec(String(text))?.[0]])).toEqual([
          ["one", "locked"], ["one", "alerts are on"], ["two", "not in use"], ["one", "back to the lead"],
        ]);
      }
    },
  );

  test("test failures after the first redundancy build and before capacity is put into use", () => {
    const sections = builtInProcedures.procedures.filter(({ procedure }) => procedure === "Install a rack array").map(({ section }) => section);
    const order = [
      "Rack and earth", "Rails and lift", "Drives by bay", "Power", "Create or join the cluster", "Redundancy build over",
      "Failure tests: cables", "Failure tests: controllers", "Failure tests: feeds", "Acceptance", "Put into use",
    ];
    expect(order.map((section) => sections.indexOf(section))).toEqual([...order.keys()].map((index) => sections.indexOf(order[index])).sort((a, b) => a - b));
    expect(order.every((section) => sections.includes(section))).toBe(true);
  });
});
