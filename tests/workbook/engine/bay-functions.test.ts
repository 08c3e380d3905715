import { catalogue } from "../../../src/functions/catalogue";
import { openHeadless, type HeadlessWorkbook } from "../../../src/headless/open-headless";
import type { Cell } from "../../../src/sheet";
import { bayFunctionHelp, bayFunctions, faultNote } from "../../../src/workbook/engine/bay-functions";

let workbook: HeadlessWorkbook;

beforeEach(async () => {
  workbook = await openHeadless();
});

afterEach(() => {
  workbook.dispose();
});

const compute = async (rows: readonly (readonly Cell[])[]) => {
  await workbook.port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: rows }]);
  return (await workbook.port.read()).sheets[0]!.values;
};

test("every function of the catalogue is known to the engine, with help for each argument", () => {
  expect(bayFunctions().map(([, name]) => name)).toEqual([...catalogue.map(({ id }) => `BAY.${id}`), "COMPARE"]);
  expect(bayFunctionHelp().map(({ functionParameter }) => functionParameter.length)).toEqual(catalogue.map(({ parameters }) => parameters.length));
});

test("ranges arrive with their blanks, texts and numbers, and those that another formula spilled", async () => {
  const values = await compute([
    [{ value: "10.0.0.0/24" }, { formula: "=BAY.MERGE(A1:A4)" }],
    [{ value: "10.0.1.0/24" }],
    [{}],
    [{ value: "10.0.2.0/23" }],
    [{ formula: '=BAY.SPLITPREFIX("10.8.0.0/23",24)' }],
    [{}],
    [{ formula: "=BAY.MERGE(A5:A6)" }],
  ]);
  expect(values[0]![1]).toBe("10.0.0.0/22");
  expect(values[6]![0]).toBe("10.8.0.0/23");
});

test("a whole column is read down to its last filled cell, those of spills included, and is no single cell", async () => {
  const values = await compute([
    [{ value: "10.0.0.0/24" }, {}, {}, { formula: "=BAY.MERGE(A:A)" }, { formula: "=BAY.MERGE(B:B)" }, { formula: "=BAY.MERGE(C:C)" }],
    [{}, { formula: '=BAY.SPLITPREFIX("10.8.0.0/23",24)' }, {}, { formula: "=BAY.NETWORK(A:A)" }],
    [{ value: "10.0.1.0/24" }],
  ]);
  expect(values[0]!.slice(3)).toEqual(["10.0.0.0/23", "10.8.0.0/23", { error: "#N/A" }]);
  expect(values[1]![3]).toEqual({ error: "#VALUE!" });
});

test("an error in an argument, or inside a range, is answered by the function, which can name it", async () => {
  const values = await compute([[{ formula: "=1/0" }, { formula: "=BAY.USABLE(A1,12,4)" }, { formula: "=BAY.USABLE(1/0,12,4)" }, { formula: "=BAY.MERGE(A1:A2)" }]]);
  expect(values[0]).toEqual([{ error: "#DIV/0!" }, { error: "#VALUE!" }, { error: "#VALUE!" }, { error: "#VALUE!" }]);
});

test("an argument left out, an empty cell and an empty text mean the default", async () => {
  const [row] = await compute([[{ formula: '=BAY.USABLE("RAID 6",12,4)' }, { formula: '=BAY.USABLE("RAID 6",12,4,,,)' }, { formula: '=BAY.USABLE("RAID 6",12,4,Z9,"")' }]]);
  expect(row).toEqual([40, 40, 40]);
});

test("more arguments than there are get a sentence, not a guess", async () => {
  const [row] = await compute([[{ formula: '=BAY.NETWORK("10.0.0.0/24",1)' }]]);
  expect(row).toEqual([{ error: "#VALUE!" }]);
});

test.each([
  [{ v: "#VALUE!", custom: { fault: { error: "#VALUE!", sentence: "s" } } }, "s"],
  // The cell has another error by now, or none.
  [{ v: "#REF!", custom: { fault: { error: "#VALUE!", sentence: "s" } } }, null],
  [{ v: 40, custom: { fault: { error: "#VALUE!", sentence: "s" } } }, null],
  [{ v: "#VALUE!" }, null],
  [null, null],
])("the sentence of %j is %j", (cell, sentence) => {
  expect(faultNote(cell)?.sentence ?? null).toBe(sentence);
});
