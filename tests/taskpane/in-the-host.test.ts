import { documentName } from "../../src/taskpane/document-name";
import { themeOf } from "../../src/taskpane/office-theme";
import { startWithWorkbook } from "../../src/taskpane/start-with-workbook";
import type { Edit } from "../../src/workbook/port";
import { hostWorkbook } from "../support/host-workbook/host-workbook";

describe("the name of the workbook", () => {
  test.each([
    ["https://files.example.com/plans/Thornmere%20plan.xlsx", "Thornmere plan.xlsx"],
    ["https://files.example.com/plans/a.xlsx?web=1", "a.xlsx"],
    ["https://files.example.com/plans/100%.xlsx", "100%.xlsx"],
    ["C:\\plans\\50%25 full.xlsx", "50%25 full.xlsx"],
    ["Book1", "Book1"],
    ["", ""],
    [undefined, ""],
  ])("of %s is %s", (address, name) => {
    expect(documentName(address)).toBe(name);
  });
});

describe("the theme", () => {
  test.each([
    ["#FFFFFF", false, "light"],
    ["#f3f2f1", false, "light"],
    ["#262626", false, "dark"],
    ["0a0a0a", false, "dark"],
    [undefined, false, "light"],
    ["papaya", false, "light"],
    ["#262626", true, "contrast"],
  ] as const)("of a background %s, high contrast %s, is %s", (background, contrast, theme) => {
    expect(themeOf(background, contrast)).toBe(theme);
  });
});

describe("loading with the workbook", () => {
  const write: Edit = { kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 1 }]] };

  test("is set once, after the first thing written", async () => {
    let set = 0;
    const port = startWithWorkbook(hostWorkbook().port, () => Promise.resolve(void (set += 1)));
    await port.apply([{ kind: "select", sheet: "Sheet1", area: { row: 0, column: 0, rows: 1, columns: 1 } }]);
    expect(set).toBe(0);
    await port.apply([write]);
    await port.apply([write]);
    expect(set).toBe(1);
  });

  test("is not set where writing failed, and tried again where the host refused", async () => {
    let tries = 0;
    const book = hostWorkbook();
    const port = startWithWorkbook(book.port, () => ((tries += 1) === 1 ? Promise.reject(new Error("busy")) : Promise.resolve()));
    book.failAt({ sync: 1 });
    await expect(port.apply([write])).rejects.toThrow();
    expect(tries).toBe(0);
    await port.apply([write]);
    await port.apply([write]);
    await port.apply([write]);
    expect(tries).toBe(2);
  });
});
