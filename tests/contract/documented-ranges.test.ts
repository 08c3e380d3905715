// What the vendor documents of its client, in the articles named in the titles ("… using the Excel JavaScript API", Office Add-ins documentation)
// and in the comments of its type declarations: the stand-in is held against it. The samples are our own, with invented data.
import { codeOf, openStock, run, stock, valuesOf } from "../support/stock-workbook";

describe("Set and get range values, text, or formulas", () => {
  test("values are what formulas come to, formulas the formulas or else the values, and empty cells are empty texts", async () => {
    const [values, formulas] = await run(openStock(), async (context, sheet) => {
      const range = sheet.getRange("A1:D4").load("values,formulas");
      await context.sync();
      return [range.values, range.formulas];
    });
    expect(values).toEqual([["Item", "Count", "Price", "Total"], ["Rail kit", 4, 12.5, 50], ["Cable", 10, 3, 30], ["", "", "", 80]]);
    expect(formulas).toEqual(stock);
  });

  test("a value that is set is read back, and formulas that look at it follow", async () => {
    const book = openStock();
    expect(await codeOf(book, (sheet) => { sheet.getRange("B2").values = [[5]]; })).toBeNull();
    expect(await valuesOf(book, "B2:D2")).toEqual([[5, 12.5, 62.5]]);
  });

  test("a formula that is set over several cells is computed in each", async () => {
    const book = openStock();
    expect(await codeOf(book, (sheet) => { sheet.getRange("E2:E3").formulas = [["=C2 * 2"], ["=C3 * 2"]]; })).toBeNull();
    expect(await valuesOf(book, "E2:E3")).toEqual([[25], [6]]);
  });
});

describe("Blank and null values", () => {
  test("null in a list of formats leaves the format of its cell", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => { sheet.getRange("B2:C2").numberFormat = [["0.0", "0.00"]]; });
    await codeOf(book, (sheet) => { sheet.getRange("B2:C2").numberFormat = [[null, "0.000"]]; });
    expect([book.sheet("Stock").format(1, 1), book.sheet("Stock").format(1, 2)]).toEqual(["0.0", "0.000"]);
  });

  test("null in a list of values leaves its cell, an empty text clears it", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => { sheet.getRange("A3:C3").values = [[null, "", 7]]; });
    expect(await valuesOf(book, "A3:C3")).toEqual([["Cable", "", 7]]);
  });

  test("an empty text as number format resets it to General", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => { sheet.getRange("B2").numberFormat = [["0.0"]]; });
    await codeOf(book, (sheet) => { sheet.getRange("B2").numberFormat = [[""]]; });
    expect(book.sheet("Stock").format(1, 1)).toBe("General");
  });

  test.each([
    ["values", (sheet: Excel.Worksheet) => { Object.assign(sheet.getRange("A2"), { values: null }); }],
    ["a colour", (sheet: Excel.Worksheet) => { Object.assign(sheet.getRange("A2").format.fill, { color: null }); }],
  ])("null is no value for %s", async (_what, work) => {
    expect(await codeOf(openStock(), work)).toBe("InvalidArgument");
  });
});

describe("Cut, copy, and paste ranges", () => {
  test("copied formulas keep their relative places, other entries go as they are, and a smaller target grows", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => { sheet.getRange("G1").copyFrom("B2:D3", "Formulas"); });
    expect(await run(book, async (context, sheet) => {
      const range = sheet.getRange("G1:I2").load("formulas");
      await context.sync();
      return range.formulas as unknown[][];
    })).toEqual([[4, 12.5, "=G1*H1"], [10, 3, "=G2*H2"]]);
    expect(await valuesOf(book, "I1:I2")).toEqual([[50], [30]]);
  });

  test("copied values are what the formulas come to", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => { sheet.getRange("G1").copyFrom(sheet.getRange("D2:D4"), "Values"); });
    expect(book.sheet("Stock").formula(0, 6)).toBeNull();
    expect(await valuesOf(book, "G1:G3")).toEqual([[50], [30], [80]]);
  });
});

describe("Handle dynamic arrays and spilling", () => {
  test("a formula that copies a row spills over as many cells, and the range is told by its address", async () => {
    const book = openStock();
    const address = await run(book, async (context, sheet) => {
      const cell = sheet.getRange("G4");
      cell.formulas = [["=A1:D1"]];
      const spill = cell.getSpillingToRange().load("address");
      await context.sync();
      return spill.address;
    });
    expect(address).toBe("Stock!G4:J4");
    expect(await valuesOf(book, "G4:J4")).toEqual([["Item", "Count", "Price", "Total"]]);
  });

  test("a cell that spills nowhere gives a null object, or an error where the other method is called", async () => {
    const book = openStock();
    expect(await run(book, async (context, sheet) => {
      const spill = sheet.getRange("A1").getSpillingToRangeOrNullObject().load("address");
      await context.sync();
      return spill.isNullObject;
    })).toBe(true);
    expect(await codeOf(book, (sheet) => sheet.getRange("A1").getSpillingToRange().load("address"))).toBe("ItemNotFound");
  });

  test("something in the way of a spill makes it an error and stays", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => {
      sheet.getRange("H4").values = [["kept"]];
      sheet.getRange("G4").formulas = [["=A1:D1"]];
    });
    expect(await valuesOf(book, "G4:I4")).toEqual([["#SPILL!", "kept", ""]]);
  });
});

describe("Work with multiple ranges", () => {
  test("a property that is set on several ranges is set on each, with blanks between their addresses too", async () => {
    const book = openStock();
    expect(await codeOf(book, (sheet) => { sheet.getRanges("F3:F5, H3:H5").format.fill.color = "#ffc0cb"; })).toBeNull();
    expect(book.sheet("Stock").settings).toEqual([{ address: "F3:F5, H3:H5", property: "format.fill.color", value: "#ffc0cb" }]);
  });
});

describe("Add data validation to ranges", () => {
  test.each<[string, Excel.DataValidationRule, string | null]>([
    ["whole numbers above a bound", { wholeNumber: { formula1: 0, operator: "GreaterThan" } }, null],
    ["dates of a week", { date: { formula1: "2026-04-01", formula2: "2026-04-08", operator: "Between" } }, null],
    ["a list divided by commas", { list: { inCellDropDown: true, source: "yes,no" } }, null],
    ["a list out of cells", { list: { inCellDropDown: true, source: "=Notes!$A$1:$A$3" } }, null],
    ["two kinds at once", { wholeNumber: { formula1: 0, operator: "GreaterThan" }, list: { inCellDropDown: true, source: "yes,no" } }, "InvalidArgument"],
  ])("a rule may be %s", async (_what, rule, code) => {
    expect(await codeOf(openStock(), (sheet) => { sheet.getRange("B2:C3").dataValidation.rule = rule; })).toBe(code);
  });
});

describe("Apply conditional formatting to ranges", () => {
  test("a format that is added is put before the others, as its declaration says: at the first priority", async () => {
    const book = openStock();
    await codeOf(book, (sheet) => {
      for (const color of ["#ff0000", "#00ff00"]) {
        const { custom } = sheet.getRange("B2:B3").conditionalFormats.add("Custom");
        custom.rule.formula = "=B2>5";
        custom.format.font.color = color;
      }
    });
    expect(book.sheet("Stock").conditionalFormats.map(({ settings }) => settings.get("format.font.color"))).toEqual(["#00ff00", "#ff0000"]);
  });
});
