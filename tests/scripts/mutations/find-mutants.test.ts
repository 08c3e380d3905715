import { findMutants } from "../../../scripts/mutations/find-mutants";
import { markReached } from "../../../scripts/mutations/mark-reached";

const file = "room/file.ts";

describe("every change that a line allows is found once", () => {
  test.each<[string, string[]]>([
    ["if (a < b) go();", ["if (a <= b) go();", "if (a >= b) go();", "if (a < b) ;"]],
    ["if (ready) go();", ["if (!(ready)) go();", "if (ready) ;"]],
    ["const x = !ready;", ["const x = ready;"]],
    ["const x = a ? b : c;", ["const x = !(a) ? b : c;", "const x = b;", "const x = c;"]],
    ["const x = a ?? b;", ["const x = a;", "const x = b;"]],
    ["const x = a && b === c;", ["const x = a || b === c;", "const x = a && b !== c;"]],
    ["const x = a?.b;", ["const x = a!.b;"]],
    ["const x = a?.[i];", ["const x = a![i];"]],
    ["const x = 1;", ["const x = 2;", "const x = 0;"]],
    ["const x = 0n;", ["const x = 1n;", "const x = (-1n);"]],
    ["const x = -a * b;", ["const x = a * b;", "const x = -a / b;"]],
    ["count++;", ["count--;", ";"]],
    ["const x = true;", ["const x = false;"]],
    ['const x = "a";', ['const x = "";']],
    ['const x = "";', ['const x = "filled";']],
    ["const x = `a ${b}`;", ['const x = "";']],
    ["const x = [a, b];", ["const x = [];"]],
    ["function f() { const x = a; return x; }", ["function f() {}", "function f() { const x = a; return; }"]],
  ])("%s", (line, changed) => {
    const lines = findMutants(file, line).map(({ start, end, replacement }) => line.slice(0, start) + replacement + line.slice(end));
    expect(lines.sort()).toEqual(changed.sort());
  });
});

test.each([
  'import { a } from "./a";',
  'export * from "./a";',
  'type Word = "yes" | "no";',
  "interface Pair { readonly first: 1 }",
  "// if (a < b) go();",
  'const words = { yes: "Yes", no: "No" } as const;',
  "[a, b] = pair;",
  'const { "a-b": c } = pair;',
])("nothing is changed in %s but a whole statement", (line) => {
  expect(findMutants(file, line).filter(({ kind }) => kind !== "statement")).toEqual([]);
});

describe("a mutant counts as reached", () => {
  const marked = (text: string) => {
    const mutants = findMutants(file, text).map((mutant, id) => [id, mutant] as const);
    return markReached(file, text, mutants.filter(([, { kind }]) => kind === "number").slice(0, 1));
  };

  test("when the statement that holds it is run", () => {
    expect(marked("function f() { if (a) { return 1; } }")).toMatch(/if \(a\) \{ \$reached\(\d+\); return 1; \}/);
    expect(marked("function f() { if (a) return 1; }")).toMatch(/\{ \$reached\(\d+\); if \(a\) return 1; \}/);
    expect(marked("const x = 1;")).toMatch(/^\$reached\(\d+\); const x = 1;$/);
  });

  test("when the short arrow function that holds it is called", () => {
    expect(marked("const f = (a) => a + 1;")).toMatch(/^const f = \(a\) => \(\$reached\(\d+\), a \+ 1\);$/);
  });
});
