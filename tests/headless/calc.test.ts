import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { catalogue } from "../../src/functions/catalogue";
import { createEvaluator } from "../../src/headless/evaluate";

/** Runs the command as people do, but without npm around it. */
function calc(args: readonly string[], input = ""): { status: number | null; lines: unknown[]; complaint: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(__dirname, "..", "..", "scripts", "run.mjs"), "src/headless/calc.ts", ...args], { input, encoding: "utf8" });
  return { status, lines: stdout.split("\n").filter((line) => line !== "").map((line) => JSON.parse(line) as unknown), complaint: stderr };
}

test("a value, a table and an error each get one line of JSON", () => {
  const formulas = ['=BAY.USABLE("RAID 6",12,4)', '=BAY.USABLE("RAID 60",12,4)', '=BAY.SUBNET("192.0.2.0/26")'];
  const { status, lines } = calc(formulas);
  expect(status).toBe(0);
  expect(lines).toEqual([
    { formula: formulas[0], value: 40 },
    { formula: formulas[1], error: "#VALUE!", message: expect.stringContaining("group shape") as string },
    { formula: formulas[2], values: expect.arrayContaining([["Fact", "Value", "Note"]]) as unknown[][] },
  ]);
});

test("formulas come one a line from standard input, blank lines aside", () => {
  const { status, lines } = calc(["-"], '=1+1\n\n  ="a"&"b"  \r\n=1=1\nno formula\n');
  expect(status).toBe(0);
  expect(lines).toEqual([
    { formula: "=1+1", value: 2 },
    { formula: '="a"&"b"', value: "ab" },
    { formula: "=1=1", value: true },
    { formula: "no formula", error: "#ERROR!", message: expect.any(String) as string },
  ]);
});

test("ten thousand lines are evaluated in one process, one more is refused", () => {
  const many = Array.from({ length: 10_000 }, (_, row) => `=BAY.USABLE("RAID 6",${4 + (row % 40)},4)`);
  const { status, lines } = calc(["-"], many.join("\n"));
  expect(status).toBe(0);
  expect(lines).toHaveLength(10_000);
  expect(lines[8]).toEqual({ formula: many[8], value: 40 });
  const refused = calc(["-"], [...many, "=1"].join("\n"));
  expect([refused.status, refused.lines]).toEqual([2, []]);
  expect(refused.complaint).toContain("10001 formulas are too many");
});

test("a call without formulas says how to call", () => {
  const { status, complaint } = calc([]);
  expect(status).toBe(2);
  expect(complaint).toContain("Usage:");
});

describe("the evaluator", () => {
  const evaluate = createEvaluator();

  test.each([
    ["=SEQUENCE(2,2)", { values: [[1, 2], [3, 4]] }],
    ["=A1", { value: "" }],
    ["=SUM(A1:C9)", { value: 0 }],
    ["=1/0", { error: "#DIV/0!", message: "A number is divided by zero." }],
    ["=BAY.USEABLE(1)", { error: "#NAME?", message: expect.stringContaining("no function") as string }],
    ["=SUM(1", { error: "#ERROR!", message: expect.stringContaining("brackets") as string }],
  ])("%s answers %j", async (formula, answer) => {
    expect(await evaluate(formula)).toEqual({ formula, ...answer });
  });

  test("a whole column is an argument like any other, and a whole sheet is told to be too much", async () => {
    expect(await evaluate("=BAY.CLASHES(A:A)")).toHaveProperty("values", [["First", "Second", "First row", "Second row"]]);
    expect(await evaluate("=BAY.USABLE(A:A,12,4)")).toHaveProperty("message", expect.stringMatching(/^scheme /));
    expect(await evaluate("=BAY.CLASHES(A:XFD)")).toHaveProperty("message", expect.stringContaining("Give the part of the sheet that is meant"));
  });

  test("every example of the function pages has an answer", async () => {
    for (const formula of catalogue.flatMap(({ examples }) => examples)) expect(await evaluate(formula)).not.toHaveProperty("error");
  });
});

test("a formula that no cell could hold, or that is nested without end, gets its own line and the others theirs", () => {
  const formulas = [`=1${"+1".repeat(20_000)}`, `=${"-".repeat(8000)}1`, `=${"ABS(".repeat(1600)}1${")".repeat(1600)}`, "=1+1"];
  const { status, lines, complaint } = calc(["-"], formulas.join("\n"));
  expect({ status, complaint }).toEqual({ status: 0, complaint: "" });
  expect(lines).toHaveLength(4);
  expect(lines[0]).toMatchObject({ error: "#ERROR!", message: expect.stringContaining("at most 8,192 characters") as string });
  expect(lines[3]).toEqual({ formula: "=1+1", value: 2 });
});
