import { readFileSync } from "node:fs";
import { join } from "node:path";
import { rules } from "../../../src/planning/checks";

test("every rule has a name of its own, in words with dashes", () => {
  const names = rules.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
});

test("every rule says in sentences what a plan keeps to, and what its mend does", () => {
  const said = rules.flatMap(({ meaning, mends }) => [meaning, ...(mends === undefined ? [] : [mends])]);
  expect(said.filter((text) => !/^[A-Z].{10,}\.$/.test(text))).toEqual([]);
});

test("the page of the rules tells each by its name, weight and meaning", () => {
  const page = readFileSync(join(__dirname, "..", "..", "..", "docs", "rules.md"), "utf8");
  const said = page.replaceAll("`{{", "{{").replaceAll("}}`", "}}").replaceAll("\\|", "|");
  expect(rules.filter(({ name, weight, meaning }) => !said.includes(`| ${name} | ${weight} | ${meaning} |`)).map(({ name }) => name)).toEqual([]);
});
