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
    expect(book.exchanges().filter(({ answerBytes }) => answerBytes > 5_000_000)).toHaveLength(3);
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
