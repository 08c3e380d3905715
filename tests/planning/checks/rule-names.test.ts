import { rules } from "../../../src/planning/checks";

test("every rule has a name of its own, in words with dashes", () => {
  const names = rules.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
});
