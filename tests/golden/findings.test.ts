import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brokenPlan } from "../../scripts/examples/broken-plan";
import { checkPlan, rules } from "../../src/planning/checks";
import { cellOf } from "../support/plan-rows";
import { snapshotOf } from "../support/plain-workbook";

// What every rule says of a plan that breaks it. Write it with UPDATE_GOLDEN=1, and read the difference.
const file = join(__dirname, "findings.txt");

test("the findings of the plan that is broken on purpose, and their mends, are the ones that were read and agreed", () => {
  const workbook = snapshotOf(brokenPlan());
  const lines = checkPlan(workbook, rules, "2026-06-01").map((finding) => {
    const mended = (finding.mend?.writes ?? []).map((write) => `\n  mend ${cellOf(workbook, write)}: ${String(write.value)}`);
    return `${finding.weight} ${finding.rule} ${cellOf(workbook, finding)}\n  ${finding.sentence}${mended.join("")}\n`;
  });
  const text = lines.join("");
  if (process.env.UPDATE_GOLDEN === "1") writeFileSync(file, text);
  expect(text).toBe(readFileSync(file, "utf8"));
});
