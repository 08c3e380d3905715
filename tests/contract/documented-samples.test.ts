// What the vendor documents of its client, in the articles named in the titles ("… using the Excel JavaScript API", Office Add-ins documentation)
// and in the comments of its type declarations: the stand-in is held against it. The samples are our own, with invented data.
import type { HostWorkbook } from "../support/host-workbook/host-workbook";
import { hostWorkbook } from "../support/host-workbook/host-workbook";

const stock = [["Item", "Count", "Price", "Total"], ["Rail kit", 4, 12.5, "=B2*C2"], ["Cable", 10, 3, "=B3*C3"], ["", "", "", "=SUM(D2:D3)"]];

type Work<T> = (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<T>;

function open(): HostWorkbook {
  return hostWorkbook({ sheets: [{ name: "Stock", values: stock.map((line) => line.map((cell) => (cell === "" ? null : cell))) }, { name: "Notes" }] });
}

const run = <T>(book: HostWorkbook, work: Work<T>): Promise<T> => book.host.run((context) => work(context, context.workbook.worksheets.getItem("Stock")));

/** The code of the error with which a request ends; null where it ends well. */
const codeOf = (book: HostWorkbook, work: (sheet: Excel.Worksheet, context: Excel.RequestContext) => unknown): Promise<unknown> =>
  run(book, async (context, sheet) => {
    work(sheet, context);
    await context.sync();
  }).then(() => null, (thrown: unknown) => (thrown instanceof Error && "code" in thrown ? thrown.code : thrown));

async function valuesOf(book: HostWorkbook, address: string): Promise<unknown[][]> {
  return run(book, async (context, sheet) => {
    const range = sheet.getRange(address).load("values");
    await context.sync();
    return range.values as unknown[][];
  });
}

describe("Set and get range values, text, or formulas", () => {
  test("values are what formulas come to, formulas the formulas or else the values, and empty cells are empty texts", async () => {
    const [values, formulas] = await run(open(), async (context, sheet) => {
      const range = sheet.getRange("A1:D4").load("values,formulas");
      await context.sync();
      return [range.values, range.formulas];
    });
    expect(values).toEqual([["Item", "Count", "Price", "Total"], ["Rail kit", 4, 12.5, 50], ["Cable", 10, 3, 30], ["", "", "", 80]]);
    expect(formulas).toEqual(stock);
  });

  test("a value that is set is read back, and formulas that look at it follow", async () => {
    const book = open();
    expect(await codeOf(book, (sheet) => { sheet.getRange("B2").values = [[5]]; })).toBeNull();
    expect(await valuesOf(book, "B2:D2")).toEqual([[5, 12.5, 62.5]]);
  });

  test("a formula that is set over several cells is computed in each", async () => {
    const book = open();
    expect(await codeOf(book, (sheet) => { sheet.getRange("E2:E3").formulas = [["=C2 * 2"], ["=C3 * 2"]]; })).toBeNull();
    expect(await valuesOf(book, "E2:E3")).toEqual([[25], [6]]);
  });
});

describe("Blank and null values", () => {
  test("null in a list of formats leaves the format of its cell", async () => {
    const book = open();
    await codeOf(book, (sheet) => { sheet.getRange("B2:C2").numberFormat = [["0.0", "0.00"]]; });
    await codeOf(book, (sheet) => { sheet.getRange("B2:C2").numberFormat = [[null, "0.000"]]; });
    expect([book.sheet("Stock").format(1, 1), book.sheet("Stock").format(1, 2)]).toEqual(["0.0", "0.000"]);
  });

  test("null in a list of values leaves its cell, an empty text clears it", async () => {
    const book = open();
    await codeOf(book, (sheet) => { sheet.getRange("A3:C3").values = [[null, "", 7]]; });
    expect(await valuesOf(book, "A3:C3")).toEqual([["Cable", "", 7]]);
  });

  test("an empty text as number format resets it to General", async () => {
    const book = open();
    await codeOf(book, (sheet) => { sheet.getRange("B2").numberFormat = [["0.0"]]; });
    await codeOf(book, (sheet) => { sheet.getRange("B2").numberFormat = [[""]]; });
    expect(book.sheet("Stock").format(1, 1)).toBe("General");
  });

  test.each([
    ["values", (sheet: Excel.Worksheet) => { Object.assign(sheet.getRange("A2"), { values: null }); }],
    ["a colour", (sheet: Excel.Worksheet) => { Object.assign(sheet.getRange("A2").format.fill, { color: null }); }],
  ])("null is no value for %s", async (_what, work) => {
    expect(await codeOf(open(), work)).toBe("InvalidArgument");
  });
});

describe("Cut, copy, and paste ranges", () => {
  test("copied formulas keep their relative places, other entries go as they are, and a smaller target grows", async () => {
    const book = open();
    await codeOf(book, (sheet) => { sheet.getRange("G1").copyFrom("B2:D3", "Formulas"); });
    expect(await run(book, async (context, sheet) => {
      const range = sheet.getRange("G1:I2").load("formulas");
      await context.sync();
      return range.formulas as unknown[][];
    })).toEqual([[4, 12.5, "=G1*H1"], [10, 3, "=G2*H2"]]);
    expect(await valuesOf(book, "I1:I2")).toEqual([[50], [30]]);
  });

  test("copied values are what the formulas come to", async () => {
    const book = open();
    await codeOf(book, (sheet) => { sheet.getRange("G1").copyFrom(sheet.getRange("D2:D4"), "Values"); });
    expect(book.sheet("Stock").formula(0, 6)).toBeNull();
    expect(await valuesOf(book, "G1:G3")).toEqual([[50], [30], [80]]);
  });
});

describe("Handle dynamic arrays and spilling", () => {
  test("a formula that copies a row spills over as many cells, and the range is told by its address", async () => {
    const book = open();
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
    const book = open();
    expect(await run(book, async (context, sheet) => {
      const spill = sheet.getRange("A1").getSpillingToRangeOrNullObject().load("address");
      await context.sync();
      return spill.isNullObject;
    })).toBe(true);
    expect(await codeOf(book, (sheet) => sheet.getRange("A1").getSpillingToRange().load("address"))).toBe("ItemNotFound");
  });

  test("something in the way of a spill makes it an error and stays", async () => {
    const book = open();
    await codeOf(book, (sheet) => {
      sheet.getRange("H4").values = [["kept"]];
      sheet.getRange("G4").formulas = [["=A1:D1"]];
    });
    expect(await valuesOf(book, "G4:I4")).toEqual([["#SPILL!", "kept", ""]]);
  });
});

describe("Work with worksheets", () => {
  const names = (book: HostWorkbook) => book.sheetNames();

  test("a new sheet stands after all others, and tells its name and position", async () => {
    const book = open();
    expect(await run(book, async (context) => {
      const sheet = context.workbook.worksheets.add("Extra").load("name,position");
      await context.sync();
      return [sheet.name, sheet.position];
    })).toEqual(["Extra", 2]);
    expect(names(book)).toEqual(["Stock", "Notes", "Extra"]);
  });

  test("the first and the last sheet are found by their place, and the last one moves to the front", async () => {
    const book = open();
    expect(await run(book, async (context) => {
      const { worksheets } = context.workbook;
      const [first, last] = [worksheets.getFirst().load("name"), worksheets.getLast().load("name")];
      last.position = 0;
      await context.sync();
      return [first.name, last.name];
    })).toEqual(["Stock", "Notes"]);
    expect(names(book)).toEqual(["Notes", "Stock"]);
  });

  test("the id of a sheet stays when it is renamed and moved", async () => {
    const [before, after] = await run(open(), async (context, sheet) => {
      sheet.load("id");
      await context.sync();
      sheet.name = "Store";
      sheet.position = 1;
      const again = context.workbook.worksheets.getItem(sheet.id).load("id,name");
      await context.sync();
      return [sheet.id, [again.id, again.name]];
    });
    expect(after).toEqual([before, "Store"]);
  });

  test("a sheet that is not there cannot be activated, and asked for as a null object says that it is one", async () => {
    const book = open();
    expect(await codeOf(book, (_sheet, { workbook }) => { workbook.worksheets.getItem("Sample").activate(); })).toBe("ItemNotFound");
    expect(await run(book, async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject("Sample").load("name");
      await context.sync();
      return sheet.isNullObject;
    })).toBe(true);
  });

  test("what is activated is the active sheet; a hidden one is hidden until it is shown", async () => {
    const book = open();
    expect(await run(book, async (context) => {
      const { worksheets } = context.workbook;
      const other = worksheets.getItem("Notes");
      other.activate();
      const active = worksheets.getActiveWorksheet().load("name");
      worksheets.getItem("Stock").visibility = "Hidden";
      await context.sync();
      return active.name;
    })).toBe("Notes");
    expect(book.sheet("Stock").visibility).toBe("Hidden");
  });

  test("rows and columns of a cell count from 0", async () => {
    expect(await run(open(), async (context, sheet) => {
      const cell = sheet.getCell(1, 3).load("address,values");
      await context.sync();
      return [cell.address, cell.values];
    })).toEqual(["Stock!D2", [[50]]]);
  });

  test("the used range of an empty sheet is a null object", async () => {
    expect(await run(open(), async (context) => {
      const used = context.workbook.worksheets.getItem("Notes").getUsedRangeOrNullObject(true).load("address");
      await context.sync();
      return used.isNullObject;
    })).toBe(true);
  });
});

describe("Work with tables", () => {
  test("a range becomes a table that is named afterwards; header and body are found, and the cells stay when it is a range again", async () => {
    const book = open();
    expect(await run(book, async (context, sheet) => {
      const table = sheet.tables.add("A1:D3", true);
      table.name = "StockTable";
      const [header, body] = [table.getHeaderRowRange().load("values"), table.getDataBodyRange().load("address")];
      await context.sync();
      return [header.values, body.address];
    })).toEqual([[["Item", "Count", "Price", "Total"]], "Stock!A2:D3"]);
    await codeOf(book, (_sheet, { workbook }) => { workbook.tables.getItem("StockTable").convertToRange(); });
    expect(book.sheet("Stock").tables).toEqual([]);
    expect(await valuesOf(book, "A2:D2")).toEqual([["Rail kit", 4, 12.5, 50]]);
  });

  test("a table grows below its header, which stays in its row", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Stock", values: [["Item", "Count"], ["Cable", 10], ["Rail kit", 4]] }], apiSet: 13 });
    expect(await codeOf(book, (sheet) => {
      const table = sheet.tables.add("A1:B2", true);
      table.resize("A1:B3");
    })).toBeNull();
    expect(book.sheet("Stock").tables[0]!.area).toEqual({ row: 0, column: 0, rows: 3, columns: 2 });
    expect(await codeOf(book, (sheet) => { sheet.tables.getItem(book.sheet("Stock").tables[0]!.name).resize("A2:B4"); })).toBe("InvalidArgument");
  });
});

describe("Work with multiple ranges", () => {
  test("a property that is set on several ranges is set on each, with blanks between their addresses too", async () => {
    const book = open();
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
    expect(await codeOf(open(), (sheet) => { sheet.getRange("B2:C3").dataValidation.rule = rule; })).toBe(code);
  });
});

describe("Apply conditional formatting to ranges", () => {
  test("a format that is added is put before the others, as its declaration says: at the first priority", async () => {
    const book = open();
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

describe("Page layout, as the type declarations tell of it", () => {
  test("orientation, scale, title rows, footer and breaks are kept; a scale under 10 is none", async () => {
    const book = open();
    expect(await codeOf(book, (sheet) => {
      sheet.pageLayout.orientation = "Landscape";
      sheet.pageLayout.zoom = { scale: 80 };
      sheet.pageLayout.setPrintTitleRows("$1:$1");
      sheet.pageLayout.headersFooters.defaultForAllPages.centerFooter = "Page &P of &N";
      sheet.horizontalPageBreaks.add("A3");
      sheet.freezePanes.freezeRows(1);
    })).toBeNull();
    expect(book.sheet("Stock").settings.map(({ property, value }) => [property, value])).toEqual([
      ["pageLayout.orientation", "Landscape"],
      ["pageLayout.zoom", { scale: 80 }],
      ["pageLayout.printTitleRows", "$1:$1"],
      ["pageLayout.headersFooters.defaultForAllPages.centerFooter", "Page &P of &N"],
      ["pageBreak", "A3"],
      ["freezeRows", 1],
    ]);
    expect(await codeOf(book, (sheet) => { sheet.pageLayout.zoom = { scale: 5 }; })).toBe("InvalidArgument");
  });
});

describe("Work with events", () => {
  test("a handler hears which sheet was changed, and by whom, until it is removed in its own context", async () => {
    const book = open();
    const heard: (readonly [string, string])[] = [];
    const { id, handler } = await run(book, async (context, sheet) => {
      sheet.load("id");
      const added = context.workbook.worksheets.onChanged.add(({ worksheetId, source }) => {
        heard.push([worksheetId, source]);
        return Promise.resolve();
      });
      await context.sync();
      return { id: sheet.id, handler: added };
    });
    book.type("Stock", 1, 1, 6);
    book.type("Stock", 1, 1, 7, "remote");
    await turn();
    expect(heard).toEqual([[id, "Local"], [id, "Remote"]]);
    handler.remove();
    await handler.context.sync();
    book.type("Stock", 1, 1, 8);
    await turn();
    expect(heard).toHaveLength(2);
  });
});

function turn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 20));
}
