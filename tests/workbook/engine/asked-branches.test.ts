import { Interpreter } from "@univerjs/engine-formula";
import { bootEngine } from "../../../src/headless/open-headless";
import type { CellValue } from "../../../src/sheet";
import { leaveUnaskedBranches } from "../../../src/workbook/engine/asked-branches";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { expectSameStories } from "../../support/formula-story";

const interpreter = Interpreter.prototype as unknown as Record<"_execute", unknown>;
const eager = interpreter._execute;
leaveUnaskedBranches();
const asked = interpreter._execute;

afterEach(() => {
  interpreter._execute = asked;
});

/** What formulas show below 1, an empty cell, an error and a text in A1 to A4. */
async function shown(formulas: readonly string[]): Promise<unknown[]> {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  const port = createBrowserPort(univer, live);
  try {
    const cells = [[{ value: 1 }], [{ value: null }], [{ formula: "=1/0" }], [{ value: "text" }], ...formulas.map((formula) => [{ formula }])];
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells }]);
    return (await port.read(["Sheet1"])).sheets[0]!.values.slice(4, 4 + formulas.length).map((line): CellValue | object => line[0]!);
  } finally {
    live.dispose();
  }
}

test("formulas show the same whether branches that nobody asks for are worked out or left, through entries, rows that come and go, and undo", async () => {
  await expectSameStories(() => (interpreter._execute = asked), () => (interpreter._execute = eager), 20261129);
}, 300_000);

const answers: readonly (readonly [string, unknown])[] = [
  ['=IF(A1=1,"yes","no")', "yes"],
  ['=IF(A1=2,"yes","no")', "no"],
  ["=IF(A1=2,5)", false],
  ["=IF(A1,7,8)", 7],
  ["=IF(A2,7,8)", 8],
  ['=IF(A1=1,"right",A3)', "right"],
  ['=IF(A1=2,A3,"right")', "right"],
  ["=IF(A1=1,IF(A2=\"\",IF(A4=\"text\",9,1/0),1/0),1/0)", 9],
  ['=IFERROR(IF(A3>1,"above","below"),"error")', "error"],
  ['=IFERROR(IF(A1=1,A3,"none"),"error")', "error"],
  ["=SUM(IF(A1:A2=1,10,20))", 30],
  ["=IF(A1=1,,5)+1", 1],
];

test.each([["left", asked], ["worked out", eager]] as const)("IF answers as spreadsheet programs do with its other branch %s (ISO/IEC 29500-1, section 18.17.7, IF)", async (_, execute) => {
  interpreter._execute = execute;
  expect(await shown(answers.map(([formula]) => formula))).toEqual(answers.map(([, answer]) => answer));
});

test("a branch that is not asked for is not worked out, nor is either where the test is an error", async () => {
  const usable = '=BAY.USABLE("RAID 6",12,4)';
  const worked: string[] = [];
  interpreter._execute = function (this: object, node: { getToken(): string }, ...rest: unknown[]) {
    worked.push(node.getToken());
    return (asked as (...all: unknown[]) => number).call(this, node, ...rest);
  };
  expect(await shown([`=IF(A2="","",${usable.slice(1)})`, `=IFERROR(IF(A3,${usable.slice(1)},1),0)`])).toEqual([null, 0]);
  expect(worked).toContain("IF");
  expect(worked).not.toContain("BAY.USABLE");
});
