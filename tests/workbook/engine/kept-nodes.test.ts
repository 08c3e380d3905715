import { DependencyManagerService, FormulaDependencyGenerator } from "@univerjs/engine-formula";
import { bootEngine } from "../../../src/headless/open-headless";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { keepNodes } from "../../../src/workbook/engine/kept-nodes";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { shareFormulas } from "../../../src/workbook/engine/shared-formulas";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { expectSameStories } from "../../support/formula-story";

const generator = FormulaDependencyGenerator.prototype as unknown as Record<"_generateTreeList", unknown>;
shareFormulas();
const anew = generator._generateTreeList;
keepNodes();
const kept = generator._generateTreeList;

afterEach(() => {
  generator._generateTreeList = kept;
});

test("formulas show and keep the same whether the engine keeps what it knows of them or finds it out with each entry, through entries, rows that come and go, and undo", async () => {
  await expectSameStories(() => (generator._generateTreeList = kept), () => (generator._generateTreeList = anew), 20261128);
}, 300_000);

/** Fifty formulas filled down over fifty cells with a conditional format, and formulas behind them. */
async function fifty() {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  const port = createBrowserPort(univer, live);
  const rows = Array.from({ length: 50 }, (_, row) => [{ value: row }, { formula: `=A${row + 1}*2` }]);
  rows[0]!.push({ formula: "=SUM(B1:B50)" });
  const conditionalFormats = [{ area: { row: 0, column: 0, rows: 50, columns: 1 }, formula: "=A1>B1", style: "odd" }];
  await port.apply([{ kind: "add-sheet", plan: { name: "Many", rows, styles: { odd: { fill: "#ff0000" } }, columnWidths: [], conditionalFormats } }]);
  await live.settle();
  const write = async (row: number, column: number, cell: { readonly value?: number; readonly formula?: string }) => {
    const indexed = jest.spyOn(DependencyManagerService.prototype, "addDependencyRTreeCache");
    await port.apply([{ kind: "write", sheet: "Many", row, column, cells: [[cell]] }]);
    const { sheets } = await port.read(["Many"]);
    const { values } = sheets.find(({ name }) => name === "Many")!;
    const calls = indexed.mock.calls.length;
    indexed.mockRestore();
    return { calls, doubled: values[row]![1], sum: values[0]![2] };
  };
  return { live, write };
}

test("an entry makes no node where no formula is another one, and all of them once one is; what follows computes with that", async () => {
  const { live, write } = await fifty();
  try {
    await write(9, 0, { value: 9 });
    expect(await write(9, 0, { value: 100 })).toEqual({ calls: 0, doubled: 200, sum: 2_632 });
    const { calls, ...changed } = await write(9, 1, { formula: "=A10*3" });
    expect(calls).toBeGreaterThan(50);
    expect(changed).toEqual({ doubled: 300, sum: 2_732 });
    expect(await write(9, 0, { value: 1 })).toEqual({ calls: 0, doubled: 3, sum: 2_435 });
    expect((await write(9, 1, { value: 7 })).sum).toBe(2_439);
    expect(await write(8, 0, { value: 0 })).toEqual({ calls: 0, doubled: 0, sum: 2_423 });
  } finally {
    live.dispose();
  }
});

test("left alone the engine makes a node of every formula with every entry", async () => {
  generator._generateTreeList = anew;
  const { live, write } = await fifty();
  try {
    await write(9, 0, { value: 9 });
    const { calls, ...answers } = await write(9, 0, { value: 100 });
    expect(calls).toBeGreaterThan(50);
    expect(answers).toEqual({ doubled: 200, sum: 2_632 });
  } finally {
    live.dispose();
  }
});
