import type { Cell } from "../../../src/sheet";
import { openHeadless, type HeadlessWorkbook } from "../../../src/headless/open-headless";
import { readSnapshot } from "../../../src/workbook/xlsx/read-snapshot";

let workbook: HeadlessWorkbook;

beforeEach(async () => {
  workbook = await openHeadless();
});

afterEach(() => {
  workbook.dispose();
});

const write = (row: number, column: number, ...cells: Cell[]) => workbook.port.apply([{ kind: "write", sheet: "Sheet1", row, column, cells: [cells] }]);
const read = async () => (await workbook.port.read(["Sheet1"])).sheets[0]!.values;
/** What the formulas from column C on answer. */
const answers = async () => (await read())[0]!.slice(2);

const spilled = { error: "#SPILL!" };
/** Formulas over all of a table of three numbers, over what it fills below its own cell, and behind one of those. */
const looking = ["=SUM(A1:A3)", "=SUM(A2:A3)", "=COUNT(A1:A9)", "=MAX(A2:A9)", "=D1*2"].map((formula): Cell => ({ formula }));

test("formulas over a table follow it when it is blocked, free again, shorter and gone", async () => {
  await write(0, 0, { formula: "=SEQUENCE(3)" }, {}, ...looking);
  expect(await answers()).toEqual([6, 5, 3, 3, 10]);
  await write(1, 0, { value: 40 });
  expect(await answers()).toEqual([spilled, 40, 1, 40, 80]);
  await write(1, 0, { value: null });
  expect(await answers()).toEqual([6, 5, 3, 3, 10]);
  await write(0, 0, { formula: "=SEQUENCE(2)" });
  expect(await answers()).toEqual([3, 2, 2, 2, 4]);
  await write(0, 0, { value: null });
  expect(await answers()).toEqual([0, 0, 0, 0, 0]);
});

test("a file that is saved while a table is blocked has the figures without it", async () => {
  await write(0, 0, { formula: "=SEQUENCE(3)" }, {}, ...looking);
  await write(2, 0, { value: 40 });
  const { sheets } = readSnapshot(await workbook.save());
  // A file has no such error of a plain cell: programs write #VALUE! there, and find out themselves.
  const blocked = { error: "#VALUE!" };
  expect(sheets[0]!.values[0]).toEqual([blocked, null, blocked, 40, 1, 40, 80]);
});
