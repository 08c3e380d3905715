import { readFileSync } from "node:fs";
import { join } from "node:path";
import { rulesPage } from "../../scripts/rules-page";
import { rules } from "../../src/planning/checks";

test("docs/rules.md is what the rules say (npm run rules writes it anew)", () => {
  expect(readFileSync(join(__dirname, "..", "..", "docs", "rules.md"), "utf8")).toBe(rulesPage());
});

test("every rule has a name of its own, in words with dashes", () => {
  const names = rules.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
});
