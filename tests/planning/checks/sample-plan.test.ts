import { checkPlan, rules } from "../../../src/planning/checks";
import { cellOf, sample, workbookWith } from "../../support/plan-rows";

describe("the sample plan", () => {
  const workbook = workbookWith(sample());
  const findings = checkPlan(workbook, rules, "2026-06-01");

  test("has nothing that stops and nothing to warn about", () => {
    expect(findings.filter(({ weight }) => weight !== "note").map((finding) => `${finding.rule} ${cellOf(workbook, finding)} ${finding.sentence}`)).toEqual([]);
  });

  test("has one note: a pool that is laid over its arrays by no scheme", () => {
    expect(findings.map(({ rule }) => rule)).toEqual(["pool-without-scheme"]);
  });
});
