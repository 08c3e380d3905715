import { withCellsOfTables, type TableOnSheet } from "../../src/sheet";

const people = ["Sales Person", "Region", "SaleAmt", "ComPct", "ComAmt"];
const sales: TableOnSheet = { name: "DeptSales", sheet: "Sales", area: { row: 0, column: 0, rows: 8, columns: 5 }, headerRows: 1, totalRows: 1, headers: people };
const odd: TableOnSheet = { name: "Odd", sheet: "It's odd", area: { row: 4, column: 1, rows: 3, columns: 3 }, headerRows: 1, totalRows: 0, headers: ["Size [TB]", "#No", "a'b"] };
const bare: TableOnSheet = { name: "Bare", sheet: "Bare", area: { row: 0, column: 0, rows: 3, columns: 2 }, headerRows: 0, totalRows: 0, headers: ["", ""] };
const read = (formula: string): string => withCellsOfTables(formula, (name) => ({ deptsales: sales, odd, bare })[name.toLowerCase()]);

// The vendor's article "Using structured references with Excel tables": its table of six people stands in A1:E8 with its totals; the cells are those it names.
test.each([
  ["DeptSales[SaleAmt]", "$C$2:$C$7"],
  ["DeptSales[#All]", "$A$1:$E$8"],
  ["DeptSales[#Data]", "$A$2:$E$7"],
  ["DeptSales", "$A$2:$E$7"],
  ["DeptSales[]", "$A$2:$E$7"],
  ["DeptSales[#Headers]", "$A$1:$E$1"],
  ["DeptSales[#Totals]", "$A$8:$E$8"],
  ["DeptSales[[#All],[SaleAmt]]", "$C$1:$C$8"],
  ["DeptSales[[#Headers],[ComPct]]", "$D$1"],
  ["DeptSales[[#Totals],[Region]]", "$B$8"],
  ["DeptSales[[#All],[SaleAmt]:[ComPct]]", "$C$1:$D$8"],
  ["DeptSales[[#Data],[ComPct]:[ComAmt]]", "$D$2:$E$7"],
  ["DeptSales[[#Headers],[Region]:[ComAmt]]", "$B$1:$E$1"],
  ["DeptSales[[#Totals],[SaleAmt]:[ComAmt]]", "$C$8:$E$8"],
  ["DeptSales[[#Headers],[#Data],[ComPct]]", "$D$1:$D$7"],
  ["DeptSales[ [#Headers], [ComPct] ]", "$D$1"],
  ["deptsales[[comamt]:[comPCT]]", "$D$2:$E$7"],
])("%s means %s, as the vendor's article on structured references has it", (formula, cells) => {
  expect(read(`=SUM(${formula})*2`)).toBe(`=SUM(Sales!${cells})*2`);
});

test.each(["DeptSales[[#This Row],[ComAmt]]", "DeptSales[@ComAmt]", "DeptSales[@[ComAmt]]"])("%s means the cell of the formula's own row", (formula) => {
  expect(read(`=${formula}+1`)).toBe("=INDEX(Sales!$E$2:$E$7,ROW()-1)+1");
});

test("several columns of a formula's own row, and all of them, are a row of cells", () => {
  expect(read("=SUM(DeptSales[@[SaleAmt]:[ComAmt]])")).toBe("=SUM(INDEX(Sales!$C$2:$E$7,ROW()-1,0))");
  expect(read("=COUNTA(DeptSales[@])")).toBe("=COUNTA(INDEX(Sales!$A$2:$E$7,ROW()-1,0))");
});

test("an apostrophe in a header stands before what would mean something else", () => {
  expect(read("=SUM(Odd[Size '[TB']])")).toBe("=SUM('It''s odd'!$B$6:$B$7)");
  expect(read("=SUM(Odd['#No],Odd[[#All],[a''b]])")).toBe("=SUM('It''s odd'!$C$6:$C$7,'It''s odd'!$D$5:$D$7)");
});

test("a table that shows no header has data from its first row on, and columns that nobody can name", () => {
  expect(read("=SUM(Bare)+ROWS(Bare[#All])")).toBe("=SUM(Bare!$A$1:$B$3)+ROWS(Bare!$A$1:$B$3)");
  expect(read("=SUM(Bare[Column1])+COUNTA(Bare[#Headers])")).toBe("=SUM(INDEX(Bare!$A$1:$B$3,1,3))+COUNTA(INDEX(Bare!$A$1:$B$3,1,3))");
});

test("what a table does not have is a place beyond it, which is an error: never another column or other rows", () => {
  expect(read("=SUM(DeptSales[Saleamount])")).toBe("=SUM(INDEX(Sales!$A$1:$E$8,1,6))");
  expect(read("=SUM(DeptSales[[SaleAmt]:[Gone]])")).toBe("=SUM(INDEX(Sales!$A$1:$E$8,1,6))");
  expect(read("=SUM(Odd[#Totals])")).toBe("=SUM(INDEX('It''s odd'!$B$5:$D$7,1,4))");
  expect(read("=SUM(Odd[#Nothing])")).toBe("=SUM(INDEX('It''s odd'!$B$5:$D$7,1,4))");
});

test.each(["=SUM(Other[Column])", '="DeptSales[SaleAmt]"', "=A1+DeptSales!A1", "=DeptSales(1)", "='DeptSales'!B2", "=[1]Book!A1", "=1+1"])("%s stays as it is", (formula) => {
  expect(read(formula)).toBe(formula);
});
