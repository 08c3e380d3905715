import { Problem } from "../../src/planning/text/problem";
import type { Cell, SheetPlan, SheetSnapshot } from "../../src/sheet";
import type { Edit, WorkbookPort } from "../../src/workbook/port";

/** What an adapter is tested through. */
export interface ContractSubject {
  readonly port: WorkbookPort;
  /** False where the host has no named tables. */
  readonly hasTables: boolean;
  readonly close?: () => void | Promise<void>;
}

const treacherous = ["=1+1", "+1", "-a", "@x", "1-2", "1/2", "12", "007", "1E5", "10%", "12:30", "TRUE", "#N/A is text here", " spaced ", "日本語 ✓", "<b>bold</b>", "two\nlines"];

function sheet(name: string, rows: readonly (readonly Cell[])[], more: Partial<SheetPlan> = {}): SheetPlan {
  return { name, rows, styles: {}, columnWidths: [], ...more };
}

const add = (name: string, rows: readonly (readonly Cell[])[] = [[{ value: name }]], more: Partial<SheetPlan> = {}): Edit => ({ kind: "add-sheet", plan: sheet(name, rows, more) });

/**
 * Holds an adapter against what `WorkbookPort` promises. `open` makes a workbook with one empty sheet called "Sheet1".
 */
export function describePort(adapter: string, open: () => ContractSubject | Promise<ContractSubject>): void {
  describe(`the workbook port over ${adapter}`, () => {
    let subject: ContractSubject;
    let port: WorkbookPort;

    beforeEach(async () => {
      subject = await open();
      port = subject.port;
    });

    afterEach(async () => {
      await subject.close?.();
    });

    const names = async () => (await port.read([])).sheets.map((one) => one.name);
    const read = async (name: string) => (await port.read([name])).sheets.find((one) => one.name === name)!;
    const refusal = async (edits: readonly Edit[]): Promise<Problem> => {
      const thrown: unknown = await port.apply(edits).then(() => null, (reason: unknown) => reason);
      expect(thrown).toBeInstanceOf(Problem);
      expect((thrown as Problem).sentence.length).toBeLessThanOrEqual(160);
      return thrown as Problem;
    };

    test("a new workbook is one empty sheet", async () => {
      expect(await port.read()).toMatchObject({
        sheets: [{ name: "Sheet1", visible: true, protected: false, values: [], formulas: [], tables: [], attachments: 0 }],
      });
    });

    test("a sheet comes back as it was written: text, numbers, truth values, blanks and formulas", async () => {
      await port.apply([add("Plan", [[{ value: "Array" }, { value: 12.5 }, { value: true }], [{}, { value: false }, { formula: "=6*7" }], [{ value: null }, { value: -3 }]])]);
      const { values, formulas } = await read("Plan");
      expect(values).toEqual([["Array", 12.5, true], [null, false, 42], [null, -3, null]]);
      expect(formulas).toEqual([[null, null, null], [null, null, "=6*7"], [null, null, null]]);
    });

    test("rows and columns before the first cell count: reading begins at A1", async () => {
      await port.apply([add("Plan", [[], [{}, {}, { value: "x" }]])]);
      expect((await read("Plan")).values).toEqual([[null, null, null], [null, null, "x"]]);
    });

    test.each(treacherous)("the text %j stays that text, in a new sheet and written over a cell", async (text) => {
      await port.apply([add("Text", [[{ value: text }, { value: 1 }, { formula: "=6*7" }]])]);
      await port.apply([{ kind: "write", sheet: "Text", row: 0, column: 1, cells: [[{ value: text }, { value: text }]] }]);
      const { values, formulas } = await read("Text");
      expect(values).toEqual([[text, text, text]]);
      expect(formulas).toEqual([[null, null, null]]);
    });

    test("text stays text under a style that formats numbers", async () => {
      await port.apply([add("Text", [[{ value: "1-2", style: "number" }]], { styles: { number: { format: "0.00" } } })]);
      expect((await read("Text")).values).toEqual([["1-2"]]);
    });

    test("a formula is a formula even where the style or the cell before says text", async () => {
      await port.apply([add("Mixed", [[{ formula: "=6*7", style: "text" }, { value: "text before" }]], { styles: { text: { format: "@" } } })]);
      await port.apply([{ kind: "write", sheet: "Mixed", row: 0, column: 1, cells: [[{ formula: "=6*7" }]] }]);
      const { values, formulas } = await read("Mixed");
      expect(values).toEqual([[42, 42]]);
      expect(formulas).toEqual([["=6*7", "=6*7"]]);
    });

    test("a number is a number and a truth value one even where the style or the cell before says text", async () => {
      await port.apply([add("Mixed", [[{ value: 24, style: "text" }, { value: "text before" }, { value: "text before" }]], { styles: { text: { format: "@" } } })]);
      await port.apply([{ kind: "write", sheet: "Mixed", row: 0, column: 1, cells: [[{ value: 7 }, { value: false }]] }]);
      expect((await read("Mixed")).values).toEqual([[24, 7, false]]);
    });

    test("writing leaves null cells, empties empty ones and replaces the rest", async () => {
      await port.apply([add("Plan", [[{ value: "a" }, { value: "b" }, { value: "c" }], [{ value: 1 }, { formula: "=6*7" }, { value: 3 }]])]);
      await port.apply([{ kind: "write", sheet: "Plan", row: 0, column: 1, cells: [[null, {}], [{ value: 2 }, null]] }]);
      const { values, formulas } = await read("Plan");
      expect(values).toEqual([["a", "b", null], [1, 2, 3]]);
      expect(formulas[1]).toEqual([null, null, null]);
    });

    test("an error cell is an error, not its text", async () => {
      await port.apply([add("Plan", [[{ formula: "=1/0" }]])]);
      expect((await read("Plan")).values).toEqual([[{ error: "#DIV/0!" }]]);
    });

    test("a formula that spills has one formula, all its values and an area", async () => {
      await port.apply([add("Plan", [[{ value: "x" }], [{}, { formula: "=SEQUENCE(2,3)" }]])]);
      const { values, formulas } = await read("Plan");
      expect(values).toEqual([["x", null, null, null], [null, 1, 2, 3], [null, 4, 5, 6]]);
      expect(formulas.flat().filter((one) => one !== null)).toEqual(["=SEQUENCE(2,3)"]);
      expect(await port.spillAreas([{ sheet: "Plan", row: 1, column: 1 }, { sheet: "Plan", row: 0, column: 0 }])).toEqual([
        { row: 1, column: 1, rows: 2, columns: 3 },
        null,
      ]);
    });

    test("sheets stand in tab order: behind the one named, or at the end", async () => {
      await port.apply([add("B"), { ...add("A"), after: "Sheet1" } as Edit, add("C")]);
      expect(await names()).toEqual(["Sheet1", "A", "B", "C"]);
    });

    test("a sheet that is not asked for stands in its place without its cells, a name that is none is passed over", async () => {
      await port.apply([add("A"), add("B")]);
      const { sheets } = await port.read(["b", "Nowhere"]);
      expect(sheets.map(({ name, values }) => [name, values])).toEqual([["Sheet1", []], ["A", []], ["B", [["B"]]]]);
    });

    test("what is read can be chosen by name and visibility", async () => {
      await port.apply([add("A"), add("A before 1"), { kind: "hide-sheet", sheet: "A before 1" }]);
      const { sheets } = await port.read(({ name, visible }) => name !== "Sheet1" && visible);
      expect(sheets.map(({ name, values }) => [name, values])).toEqual([["Sheet1", []], ["A", [["A"]]], ["A before 1", []]]);
    });

    test("what is read can be chosen by the first rows, without formulas", async () => {
      const rows = (head: string) => [[{ value: head }], ...Array.from({ length: 5 }, (_, row) => [{ value: row }])];
      await port.apply([add("A", rows("wanted")), add("B", rows("not")), add("C", [[], [], [{ value: "low" }]])]);
      const choice = ({ name }: { readonly name: string }) => name !== "Sheet1" && { rows: 2, isWanted: ({ values }: SheetSnapshot) => values[0]?.[0] !== "not" };
      for (const only of [undefined, "values"] as const) {
        const { sheets } = await port.read(choice, only);
        expect(sheets[0]!.values).toEqual([]);
        expect(sheets[1]!.values).toEqual([["wanted"], [0], [1], [2], [3], [4]]);
        expect(sheets[2]!.values).toEqual([["not"], [0]]);
        expect(sheets[3]!.values).toEqual([[null], [null], ["low"]]);
      }
    });

    test("sheets are renamed, hidden, shown and deleted, each under its name at that point of the list", async () => {
      await port.apply([add("A"), add("B")]);
      await port.apply([{ kind: "rename-sheet", sheet: "A", name: "A before 2" }, { kind: "hide-sheet", sheet: "A before 2" }, { kind: "rename-sheet", sheet: "B", name: "A" }]);
      expect((await port.read([])).sheets.map(({ name, visible }) => [name, visible])).toEqual([["Sheet1", true], ["A before 2", false], ["A", true]]);
      await port.apply([{ kind: "show-sheet", sheet: "A before 2" }, { kind: "delete-sheet", sheet: "A" }]);
      expect((await port.read([])).sheets.map(({ name, visible }) => [name, visible])).toEqual([["Sheet1", true], ["A before 2", true]]);
    });

    test("a renamed sheet keeps its cells, and case alone may change", async () => {
      await port.apply([add("plan")]);
      await port.apply([{ kind: "rename-sheet", sheet: "plan", name: "Plan" }]);
      expect((await read("Plan")).values).toEqual([["plan"]]);
    });

    test.each([
      ["", "blank"],
      ["x".repeat(32), "31"],
      ["Rack 1/2", "/"],
      ["Rack [1]", "["],
      ["'Rack'", "apostrophe"],
      ["history", "kept"],
      ["SHEET1", "already"],
    ])("the sheet name %j is refused with a sentence, and nothing is done", async (name, reason) => {
      const { sentence } = await refusal([add("Before"), add(name)]);
      expect(sentence).toContain(reason);
      expect(await names()).toEqual(["Sheet1"]);
    });

    test("an edit of a sheet that is not there refuses the whole list", async () => {
      const { sentence } = await refusal([add("New"), { kind: "write", sheet: "Gone", row: 0, column: 0, cells: [[{ value: 1 }]] }]);
      expect(sentence).toContain('"Gone"');
      expect(await names()).toEqual(["Sheet1"]);
    });

    test("text over the length of a cell is refused before anything is written", async () => {
      const { sentence } = await refusal([
        { kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: "fits" }]] },
        { kind: "write", sheet: "Sheet1", row: 1, column: 0, cells: [[{ value: "x".repeat(32_768) }]] },
      ]);
      expect(sentence).toContain("32768");
      expect((await read("Sheet1")).values).toEqual([]);
    });

    test("the last sheet in sight stays", async () => {
      await refusal([{ kind: "hide-sheet", sheet: "Sheet1" }]);
      await refusal([{ kind: "delete-sheet", sheet: "Sheet1" }]);
      expect((await port.read()).sheets.map(({ visible }) => visible)).toEqual([true]);
    });

    test("what is brought to the front is what is selected", async () => {
      await port.apply([add("Plan")]);
      const area = { row: 2, column: 1, rows: 3, columns: 2 };
      await port.apply([{ kind: "select", sheet: "Plan", area }]);
      expect(await port.selection()).toEqual({ sheet: "Plan", area });
    });

    test("a listener hears of changes until it is taken away", async () => {
      let heard = 0;
      const stop = await port.watch(() => (heard += 1));
      await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 1 }]] }]);
      await until(() => heard > 0);
      stop();
      await settled();
      heard = 0;
      await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 2 }]] }]);
      await settled();
      expect(heard).toBe(0);
    });

    test("a table is found by its name and area, and grows, where the host has tables", async () => {
      const rows = [[{ value: "Array" }, { value: "Drives" }], [{ value: "A1" }, { value: 12 }], [{ value: "A2" }, { value: 12 }]];
      await port.apply([add("Arrays", rows, { tables: [{ name: "BayArrays", area: { row: 0, column: 0, rows: 2, columns: 2 } }] })]);
      const grown = { row: 0, column: 0, rows: 3, columns: 2 };
      await port.apply([{ kind: "resize-table", sheet: "Arrays", table: "BayArrays", area: grown }]);
      const { tables, values } = await read("Arrays");
      expect(tables).toEqual(subject.hasTables ? [{ name: "BayArrays", area: grown }] : []);
      expect(values).toHaveLength(3);
    });

    test("a whole sheet with every kind of setting is written, and its cells are unharmed", async () => {
      await port.apply([add("Tab", [[{ value: "Head", style: "head" }, { value: "Head 2", style: "head" }], [{ value: "x" }, { value: 2, style: "input" }]], everySetting)]);
      expect((await read("Tab")).values).toEqual([["Head", "Head 2"], ["x", 2]]);
    });
  });
}

/** A plan that uses every part of `SheetPlan` at least once. */
export const everySetting: Partial<SheetPlan> = {
  styles: {
    head: { bold: true, italic: false, color: "#ffffff", fill: "#1f4e5f", fontSize: 12, wrap: true, align: "center", vertical: "middle", border: "all", borderColor: "#808080" },
    input: { format: "0.00", locked: false, border: "bottom", align: "right", vertical: "top" },
    late: { fill: "#fff2cc", bold: true, color: "#7f6000", italic: true },
  },
  columnWidths: [12, 12, null, 30],
  rowHeights: { 0: 24 },
  hiddenColumns: [5],
  merges: [{ row: 3, column: 0, rows: 1, columns: 2 }],
  freeze: { rows: 1, columns: 1 },
  validations: [
    { area: { row: 1, column: 0, rows: 5, columns: 1 }, rule: { kind: "list", items: ["yes", "no"] }, message: "Choose yes or no.", strict: true },
    { area: { row: 1, column: 2, rows: 5, columns: 1 }, rule: { kind: "list-of", formula: "=$A$1:$A$2" }, message: "Choose from the list.", strict: false },
    { area: { row: 1, column: 1, rows: 5, columns: 1 }, rule: { kind: "number", least: 0 }, message: "A number from 0.", strict: false },
    { area: { row: 1, column: 3, rows: 5, columns: 1 }, rule: { kind: "whole", least: 1, most: 9 }, message: "1 to 9.", strict: true },
    { area: { row: 1, column: 4, rows: 5, columns: 1 }, rule: { kind: "date" }, message: "A date.", strict: false },
  ],
  conditionalFormats: [{ area: { row: 1, column: 1, rows: 5, columns: 1 }, formula: "=$B2>1", style: "late" }],
  tables: [{ name: "BayThings", area: { row: 0, column: 0, rows: 2, columns: 2 } }],
  print: {
    orientation: "landscape", fitToWidth: true, paper: "A4", firstPage: 1, marginsMm: { left: 8, right: 5, top: 21.5, bottom: 18.5, header: 10, footer: 8 }, titleRows: { row: 0, rows: 1 },
    header: "Build 1", footer: "Page &P of &N", breaksBefore: [2],
  },
  tabColor: "#1f4e5f",
};

async function until(done: () => boolean): Promise<void> {
  for (let turn = 0; turn < 200 && !done(); turn += 1) await settled(5);
}

function settled(milliseconds = 20): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
