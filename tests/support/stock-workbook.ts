import { hostWorkbook, type HostWorkbook } from "./host-workbook/host-workbook";

/** Cells of the sheet Stock. */
export const stock: readonly (readonly (string | number)[])[] = [["Item", "Count", "Price", "Total"], ["Rail kit", 4, 12.5, "=B2*C2"], ["Cable", 10, 3, "=B3*C3"], ["", "", "", "=SUM(D2:D3)"]];

type Work<T> = (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<T>;

/** Opens a workbook of a small sheet with formulas and an empty one, behind the vendor's client. */
export function openStock(): HostWorkbook {
  return hostWorkbook({ sheets: [{ name: "Stock", values: stock.map((line) => line.map((cell) => (cell === "" ? null : cell))) }, { name: "Notes" }] });
}

/** Runs a batch that is handed the sheet Stock. */
export function run<T>(book: HostWorkbook, work: Work<T>): Promise<T> {
  return book.host.run((context) => work(context, context.workbook.worksheets.getItem("Stock")));
}

/** Tells the code of the error with which a request ends; null where it ends well. */
export function codeOf(book: HostWorkbook, work: (sheet: Excel.Worksheet, context: Excel.RequestContext) => unknown): Promise<unknown> {
  return run(book, async (context, sheet) => {
    work(sheet, context);
    await context.sync();
  }).then(() => null, (thrown: unknown) => (thrown instanceof Error && "code" in thrown ? thrown.code : thrown));
}

/** Reads the values of a range of the sheet Stock. */
export async function valuesOf(book: HostWorkbook, address: string): Promise<unknown[][]> {
  return run(book, async (context, sheet) => {
    const range = sheet.getRange(address).load("values");
    await context.sync();
    return range.values as unknown[][];
  });
}
