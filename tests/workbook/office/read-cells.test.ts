import { Problem } from "../../../src/planning/text/problem";
import { hostWorkbook } from "../../support/host-workbook/host-workbook";

const grid = (rows: number, columns: number, text: string) => Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => `${row}.${column} ${text}`));

describe("reading in pieces", () => {
  test("asks for no more at once than comes to 2 MB, however many tabs there are", async () => {
    const sheets = Array.from({ length: 12 }, (_, index) => ({ name: `Tab ${index}`, values: grid(400, 26, "some forty characters, as on a tab") }));
    const book = hostWorkbook({ sheets });
    const read = await book.port.read();
    expect(read.sheets.map(({ values }) => values)).toEqual(sheets.map(({ values }) => values));
    expect(Math.max(...book.exchanges().map(({ answerBytes }) => answerBytes))).toBeLessThan(2_000_000);
  });

  test("asks again in halves where cells hold so much that the host refuses the answer", async () => {
    const values = grid(300, 1, "x".repeat(30_000));
    const book = hostWorkbook({ sheets: [{ name: "Long", values }] });
    const read = await book.port.read();
    expect(read.sheets[0]!.values).toEqual(values);
    // 18 MB, 9 and 9, four times 4.5, eight times 2.2: then it goes.
    expect(book.exchanges().filter(({ answerBytes }) => answerBytes > 2_000_000)).toHaveLength(15);
  });

  test("of values alone asks for five times as many cells at once, and takes what a formula shows for what stands there", async () => {
    const sheets = Array.from({ length: 3 }, (_, index) => ({ name: `Tab ${index}`, values: [...grid(400, 80, "x"), ["=1", "=2"]] }));
    const book = hostWorkbook({ sheets, calculate: (formula) => (formula === "=1" ? "" : { error: "#N/A" }) });
    const read = await book.port.read(undefined, "values");
    expect(read.sheets.map(({ values }) => values[400]!.slice(0, 3))).toEqual(sheets.map(() => [null, { error: "#N/A" }, null]));
    expect(read.sheets.map(({ formulas }) => formulas)).toEqual([[], [], []]);
    expect(book.exchanges().map(({ kinds }) => kinds["load"])).toEqual([2, 3, 3, 3]);
    await book.port.read();
    expect(book.syncs()).toBe(4 + 2 + 3 * 3);
  });

  test.each([["values"], [undefined]] as const)("takes the result of a function that answers between two requests, never the text #BUSY!", async (only) => {
    const book = hostWorkbook({ sheets: [{ name: "Plan", values: [["=BAY.USABLE(1)", "#BUSY!"]] }], calculate: () => 36 });
    book.keepBusy(3);
    expect((await book.port.read(undefined, only)).sheets[0]!.values).toEqual([[36, "#BUSY!"]]);
    expect(book.syncs()).toBe(4);
  });

  test("refuses by name a sheet whose cells stand too far apart, and asks for none of them", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Plan", values: [["x"]] }, { name: "A sheet name of thirty-one char", values: [["x"]] }] });
    book.type("A sheet name of thirty-one char", 1_048_575, 16_383, "stray");
    const thrown: unknown = await book.port.read(undefined, "values").then(() => null, (reason: unknown) => reason);
    expect(thrown).toBeInstanceOf(Problem);
    const { sentence } = thrown as Problem;
    expect(sentence).toBe(
      'Cells of "A sheet name of thirty-one char" stand as far apart as XFD1048576: too many to read. Delete the rows and columns of what stands far from the rest.',
    );
    expect(sentence.length).toBeLessThanOrEqual(160);
    expect(book.syncs()).toBe(2);
    // Whoever does not ask for that sheet is not kept from reading.
    expect((await book.port.read(["Plan"])).sheets[0]!.values).toEqual([["x"]]);
  });

  test("asks for the types of cells only where a text may be an error", async () => {
    const calculate = (formula: string) => (formula === "=1/0" ? { error: "#DIV/0!" } : "#N/A");
    const book = hostWorkbook({ sheets: [{ name: "Plain", values: [["=2", 1]] }, { name: "Odd", values: [["#N/A", "=1/0", "#7 left"]] }], calculate });
    const { sheets } = await book.port.read();
    expect(sheets.map(({ values }) => values)).toEqual([[["#N/A", 1]], [["#N/A", { error: "#DIV/0!" }, "#7 left"]]]);
    expect(book.syncs()).toBe(4);
    await book.port.read(["Nowhere"]);
    expect(book.syncs()).toBe(5);
  });
});
