// What the vendor documents of its client, in the articles named in the titles ("… using the Excel JavaScript API", Office Add-ins documentation)
// and in the comments of its type declarations: the stand-in is held against it. The samples are our own, with invented data.
import { hostWorkbook, type HostWorkbook } from "../support/host-workbook/host-workbook";
import { codeOf, openStock, run, valuesOf } from "../support/stock-workbook";

describe("Work with worksheets", () => {
  const names = (book: HostWorkbook) => book.sheetNames();

  test("a new sheet stands after all others, and tells its name and position", async () => {
    const book = openStock();
    expect(await run(book, async (context) => {
      const sheet = context.workbook.worksheets.add("Extra").load("name,position");
      await context.sync();
      return [sheet.name, sheet.position];
    })).toEqual(["Extra", 2]);
    expect(names(book)).toEqual(["Stock", "Notes", "Extra"]);
  });

  test("the first and the last sheet are found by their place, and the last one moves to the front", async () => {
    const book = openStock();
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
    const [before, after] = await run(openStock(), async (context, sheet) => {
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
    const book = openStock();
    expect(await codeOf(book, (_sheet, { workbook }) => { workbook.worksheets.getItem("Sample").activate(); })).toBe("ItemNotFound");
    expect(await run(book, async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject("Sample").load("name");
      await context.sync();
      return sheet.isNullObject;
    })).toBe(true);
  });

  test("what is activated is the active sheet; a hidden one is hidden until it is shown", async () => {
    const book = openStock();
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
    expect(await run(openStock(), async (context, sheet) => {
      const cell = sheet.getCell(1, 3).load("address,values");
      await context.sync();
      return [cell.address, cell.values];
    })).toEqual(["Stock!D2", [[50]]]);
  });

  test("the used range of an empty sheet is a null object", async () => {
    expect(await run(openStock(), async (context) => {
      const used = context.workbook.worksheets.getItem("Notes").getUsedRangeOrNullObject(true).load("address");
      await context.sync();
      return used.isNullObject;
    })).toBe(true);
  });
});

describe("Work with tables", () => {
  test("a range becomes a table that is named afterwards; header and body are found, and the cells stay when it is a range again", async () => {
    const book = openStock();
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

describe("Rename a worksheet", () => {
  test("what looks at the sheet goes on looking at it, whatever its name: formulas, choices, conditional formats and names", async () => {
    const book = hostWorkbook({ sheets: [{ name: "Stock", values: [["Item", "Count"], ["Cable", 10]] }, { name: "Sum", values: [["=2*Stock!B2", '="Stock!"&\'Stock\'!A2', "=OtherStock!B2"]] }] });
    await run(book, async (context, sheet) => {
      const sum = context.workbook.worksheets.getItem("Sum");
      sum.getRange("D1").dataValidation.rule = { list: { inCellDropDown: true, source: "=Stock!$A$2:$A$9" } };
      sum.getRange("D1").conditionalFormats.add("Custom").custom.rule.formula = "=Stock!$B$2>5";
      context.workbook.names.add("Counted", sheet.getRange("B2:B9"));
      sheet.name = "Store of '26";
      await context.sync();
    });
    const sum = book.sheet("Sum");
    expect([0, 1, 2].map((column) => sum.formula(0, column))).toEqual(["=2*'Store of ''26'!B2", "=\"Stock!\"&'Store of ''26'!A2", "=OtherStock!B2"]);
    expect(sum.settings.map(({ value }) => value)).toEqual([{ list: { inCellDropDown: true, source: "='Store of ''26'!$A$2:$A$9" } }]);
    expect(sum.conditionalFormats.map(({ settings }) => settings.get("rule.formula"))).toEqual(["='Store of ''26'!$B$2>5"]);
    expect(await book.host.run(async ({ workbook }) => {
      const [name, range] = [workbook.names.getItem("Counted").load("formula"), workbook.names.getItem("counted").getRange().load("address")];
      const shown = workbook.worksheets.getItem("Sum").getRange("A1:B1").load("values");
      await workbook.context.sync();
      return [name.formula as unknown, range.address, shown.values as unknown[][]];
    })).toEqual(["='Store of ''26'!$B$2:$B$9", "'Store of ''26'!B2:B9", [[20, "Stock!Cable"]]]);
  });
});

describe("Work with names, as the type declarations tell of it", () => {
  test("a range and a formula are given names, which are listed and found again, and gone once they are deleted", async () => {
    const book = openStock();
    expect(await run(book, async (context, sheet) => {
      const { names } = context.workbook;
      names.add("Prices", sheet.getRange("C2:C3"), "What a piece costs");
      names.add("Margin", "=0.2");
      names.load("items/name,items/formula,items/type,items/comment");
      const cells = names.getItem("Prices").getRange().load("address");
      const none = names.getItem("Margin").getRangeOrNullObject().load("address");
      await context.sync();
      return [names.items.map(({ name, formula, type, comment }) => [name, formula as unknown, type, comment]), cells.address, none.isNullObject];
    })).toEqual([[["Prices", "=Stock!$C$2:$C$3", "Range", "What a piece costs"], ["Margin", "=0.2", "String", ""]], "Stock!C2:C3", true]);
    expect(await codeOf(book, (_sheet, { workbook }) => { workbook.names.getItem("Margin").delete(); })).toBeNull();
    expect(await codeOf(book, (_sheet, { workbook }) => { workbook.names.getItem("Margin").load("name"); })).toBe("ItemNotFound");
    expect(await run(book, async ({ workbook }) => {
      const gone = workbook.names.getItemOrNullObject("Margin").load("name");
      await workbook.context.sync();
      return gone.isNullObject;
    })).toBe(true);
  });

  test.each([
    ["with a blank in it", "Unit price", "InvalidArgument"],
    ["that looks like a cell", "AB12", "InvalidArgument"],
    ["that begins with a digit", "2nd", "InvalidArgument"],
    ["that is there in another case", "PRICES", "ItemAlreadyExists"],
  ])("a name %s is refused", async (_what, name, code) => {
    const book = openStock();
    expect(await codeOf(book, (sheet, { workbook }) => { workbook.names.add("Prices", sheet.getRange("C2")); })).toBeNull();
    expect(await codeOf(book, (sheet, { workbook }) => { workbook.names.add(name, sheet.getRange("C3")); })).toBe(code);
  });
});

describe("Page layout, as the type declarations tell of it", () => {
  test("orientation, scale, title rows, footer and breaks are kept; a scale under 10 is none", async () => {
    const book = openStock();
    expect(await codeOf(book, (sheet) => {
      sheet.pageLayout.orientation = "Landscape";
      sheet.pageLayout.paperSize = "A4";
      sheet.pageLayout.setPrintMargins("Centimeters", { left: 0.8, top: 2.15 });
      sheet.pageLayout.zoom = { scale: 80 };
      sheet.pageLayout.setPrintTitleRows("$1:$1");
      sheet.pageLayout.headersFooters.defaultForAllPages.centerFooter = "Page &P of &N";
      sheet.horizontalPageBreaks.add("A3");
      sheet.freezePanes.freezeRows(1);
    })).toBeNull();
    expect(book.sheet("Stock").settings.map(({ property, value }) => [property, value])).toEqual([
      ["pageLayout.orientation", "Landscape"],
      ["pageLayout.paperSize", "A4"],
      ["pageLayout.printMargins", { unit: "Centimeters", margins: { left: 0.8, top: 2.15 } }],
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
    const book = openStock();
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
