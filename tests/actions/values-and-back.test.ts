import { callsOurs, withOurNames } from "../../src/actions/bay-formula";
import { registerName } from "../../src/actions/formula-register";
import { reEnterFormulas } from "../../src/actions/re-enter-formulas";
import { turnBack, turnIntoValues } from "../../src/actions/values-and-back";
import { hostWorkbook } from "../support/host-workbook/host-workbook";

const sheets = [
  // The last one comes to "2-1", which a spreadsheet program takes for a date where it is typed.
  { name: "Quote", values: [["Usable", '=BAY.USABLE("RAID 6",12,4)', "=SUM(1,2)"], [null, '=BAY.NETWORK("192.0.2.9/24")', '=MID(BAY.NETWORK("192.0.2.9/24"),7,1)&"-1"']] },
  { name: "Net", values: [["x", '=BAY.SUBNET("192.0.2.0/24")'], [], [], [], ["=BAY.HOSTCOUNT(1)"]] },
];

const book = () => hostWorkbook({ sheets });

const everything = async ({ port }: ReturnType<typeof hostWorkbook>) =>
  (await port.read()).sheets.filter(({ name }) => name !== registerName).map(({ name, values, formulas }) => ({ name, values, formulas }));

describe("turning our formulas into values", () => {
  test("writes what they show, spilled cells too, and leaves native formulas and errors", async () => {
    const mock = book();
    const before = await everything(mock);
    const report = await turnIntoValues(mock.port, "workbook", "1.0.0");
    const after = await everything(mock);
    expect(report).toEqual({ turned: 4, left: [{ sheet: "Net", cell: "A5", reason: "it shows an error; mend it or re-enter it first" }] });
    expect(after[0]!.values).toEqual(before[0]!.values);
    expect(after[0]!.formulas).toEqual([[null, null, "=SUM(1,2)"], [null, null, null]]);
    expect(after[0]!.values[1]).toEqual([null, "192.0.2.0", "2-1"]);
    expect(after[1]!.values).toEqual(before[1]!.values);
    expect(after[1]!.values.slice(0, 3)).toEqual([["x", "Fact", "Value", "Note"], [null, "Prefix", "192.0.2.0/24", "RFC 4632 section 3.1"], [null, "Address", "192.0.2.0", "as given"]]);
    expect(after[1]!.formulas.flat().filter((one) => one !== null)).toEqual(["=BAY.HOSTCOUNT(1)"]);
  });

  test("and back gives the workbook as it was, and takes the register away", async () => {
    const mock = book();
    const before = await everything(mock);
    await turnIntoValues(mock.port, "workbook", "1.0.0");
    expect(mock.sheetNames()).toEqual(["Quote", "Net", registerName]);
    expect(await turnBack(mock.port)).toEqual({ turned: 4, left: [] });
    expect(await everything(mock)).toEqual(before);
    expect(mock.sheetNames()).toEqual(["Quote", "Net"]);
  });

  test("takes a spilled table for one formula where the host shows it in every cell of the table", async () => {
    const shown = hostWorkbook({ sheets, repeatsSpilled: true });
    const before = await everything(shown);
    expect((await turnIntoValues(shown.port, "workbook", "1.0.0")).turned).toBe(4);
    expect(shown.sheet("Net").formula(1, 2)).toBeNull();
    expect((await turnBack(shown.port)).turned).toBe(4);
    expect(await everything(shown)).toEqual(before);
  });

  test("is confined to a sheet or an area where asked", async () => {
    const mock = book();
    expect((await turnIntoValues(mock.port, { sheet: "quote", area: { row: 0, column: 1, rows: 1, columns: 1 } }, "1.0.0")).turned).toBe(1);
    expect((await everything(mock))[0]!.formulas[1]).toEqual(sheets[0]!.values[1]);
    expect((await turnIntoValues(mock.port, { sheet: "Quote" }, "1.0.0")).turned).toBe(2);
    expect((await turnBack(mock.port)).turned).toBe(3);
  });

  test("survives being turned twice, and a formula typed anew over a turned value", async () => {
    const mock = book();
    const before = await everything(mock);
    await turnIntoValues(mock.port, "workbook", "1.0.0");
    expect((await turnIntoValues(mock.port, "workbook", "1.0.0")).turned).toBe(0);
    mock.sheet("Quote").setFormat(0, 1, "General");
    mock.type("Quote", 0, 1, '=BAY.USABLE("RAID 6",12,4)');
    expect((await turnIntoValues(mock.port, "workbook", "1.1.0")).turned).toBe(1);
    expect((await turnBack(mock.port)).turned).toBe(4);
    expect(await everything(mock)).toEqual(before);
  });

  test("does not turn back a cell whose value was changed, one of a spilled table included, and says which", async () => {
    const mock = book();
    await turnIntoValues(mock.port, "workbook", "1.0.0");
    mock.type("Quote", 0, 1, 41);
    mock.type("Net", 1, 2, "192.0.2.0/25");
    const report = await turnBack(mock.port);
    expect(report.turned).toBe(2);
    expect(report.left.map(({ sheet, cell }) => `${sheet}!${cell}`)).toEqual(["Quote!B1", "Net!B1"]);
    expect(mock.value("Quote", 0, 1)).toBe(41);
    mock.type("Quote", 0, 1, 40);
    expect((await turnBack(mock.port)).turned).toBe(1);
    expect(mock.sheetNames()).toContain(registerName);
  });

  test("names a formula whose sheet is gone and keeps it", async () => {
    const mock = book();
    await turnIntoValues(mock.port, "workbook", "1.0.0");
    await mock.port.apply([{ kind: "rename-sheet", sheet: "Net", name: "Network" }]);
    expect((await turnBack(mock.port)).left).toEqual([{ sheet: "Net", cell: "B1", reason: "its sheet is gone or renamed" }]);
  });

  test.each([0, 1, 5, "half", "all"] as const)("loses no formula where the host fails after %s operations", async (after) => {
    const mock = book();
    const before = await everything(mock);
    mock.failAt({ sync: 5, after });
    await expect(turnIntoValues(mock.port, "workbook", "1.0.0")).rejects.toThrow("refused (GeneralException)");
    await turnBack(mock.port);
    expect(await everything(mock)).toEqual(before);
  });

  test.each([0, 3, "half", "all"] as const)("loses no formula where the host fails on the way back after %s operations", async (after) => {
    const mock = book();
    const before = await everything(mock);
    await turnIntoValues(mock.port, "workbook", "1.0.0");
    mock.failAt({ sync: 4, after });
    await expect(turnBack(mock.port)).rejects.toThrow("refused (GeneralException)");
    await turnBack(mock.port);
    expect(await everything(mock)).toEqual(before);
    expect(mock.sheetNames()).not.toContain(registerName);
  });

  test("refuses a protected sheet before anything is written", async () => {
    const mock = book();
    mock.sheet("Net").protected = true;
    await expect(turnIntoValues(mock.port, "workbook", "1.0.0")).rejects.toThrow('Sheet "Net" is protected');
    expect(mock.sheetNames()).toEqual(["Quote", "Net"]);
  });
});

describe("re-entering our formulas", () => {
  test("enters again those stuck at #NAME?, under the names people type, and no other", async () => {
    let loaded = false;
    const answers: Readonly<Record<string, string | number>> = { '=BAY.USABLE("RAID 6",12,4)': 40, '=BAY.NETWORK("192.0.2.9/24")': "192.0.2.0" };
    const mock = hostWorkbook({
      sheets: [{ name: "Old", values: [['=_xldudf_BAY_USABLE("RAID 6",12,4)', "=NOSUCH(1)", '=BAY.NETWORK("192.0.2.9/24")']] }],
      calculate: (formula) => (loaded ? (answers[formula] ?? { error: "#NAME?" }) : { error: "#NAME?" }),
    });
    expect(await reEnterFormulas(mock.port)).toBe(2);
    loaded = true;
    expect((await mock.port.read()).sheets[0]).toMatchObject({
      values: [[40, { error: "#NAME?" }, "192.0.2.0"]],
      formulas: [['=BAY.USABLE("RAID 6",12,4)', "=NOSUCH(1)", '=BAY.NETWORK("192.0.2.9/24")']],
    });
    expect(await reEnterFormulas(mock.port)).toBe(0);
  });
});

describe("telling our formulas", () => {
  test.each([
    ["=BAY.USABLE(1)", true],
    ["=bay.usable(1)", true],
    ["=1+BAY.CONVERTSIZE(A1)", true],
    ["=IF(A1,-BAY.CONVERTSIZE(B1),0)", true],
    ["=_xldudf_BAY_CONVERTSIZE(1)", true],
    ['="BAY.CONVERTSIZE(1)"', false],
    ["='BAY.CONVERTSIZE'!A1", false],
    ["=SUBAY.CONVERTSIZE(1)", false],
    ["=MY_BAY.CONVERTSIZE(1)", false],
    ["=BAY", false],
  ])("%s: %s", (formula, expected) => {
    expect(callsOurs(formula)).toBe(expected);
  });

  test("names are written as people type them", () => {
    expect(withOurNames("=_xldudf_BAY_CONVERTSIZE(_xldudf_BAY_USABLE(1))")).toBe("=BAY.CONVERTSIZE(BAY.USABLE(1))");
  });
});
