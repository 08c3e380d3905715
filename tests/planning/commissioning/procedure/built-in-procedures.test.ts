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
