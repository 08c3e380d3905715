import { brokenFindings, brokenPlan } from "../../scripts/examples/broken-plan";
import { checkPlan, rules } from "../../src/planning/checks";
import { cellOf } from "../support/plan-rows";
import { snapshotOf } from "../support/plain-workbook";

describe("the plan that is broken on purpose", () => {
  const workbook = snapshotOf(brokenPlan());
  const findings = checkPlan(workbook, rules, "2026-06-01");

  test("breaks every rule at least once", () => {
    const broken = new Set(brokenFindings.map(({ rule }) => rule));
    expect(rules.map(({ name }) => name).filter((name) => !broken.has(name))).toEqual([]);
  });

  test("has exactly the findings that are listed beside it", () => {
    const listed = brokenFindings.map(({ rule, cell }) => `${rule} ${cell}`).sort();
    expect(findings.map((finding) => `${finding.rule} ${cellOf(workbook, finding)}`).sort()).toEqual(listed);
  });

  test("says each in at most 160 characters, without a value that looks like a secret", () => {
    for (const { sentence } of findings) expect(sentence.length).toBeLessThanOrEqual(160);
    expect(findings.map(({ sentence }) => sentence).join("\n")).not.toContain("sesame");
  });
});
