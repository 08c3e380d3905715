import fc from "fast-check";
import { planImport, proposeMatches, questionOf, readList, waysToFind, type Import } from "../../../../src/planning/plan/lists";
import { PlanModel } from "../../../../src/planning/plan/model";
import { columnsOf, tableKeys, type TableRows } from "../../../../src/planning/plan/schema";
import { planTables } from "../../../../src/planning/plan/set-up";
import type { CellValue, WorkbookSnapshot } from "../../../../src/sheet";
import { carryOut } from "../../../support/plan-changes";
import { snapshotOf } from "../../../support/plain-workbook";

const bookOf = (rows: TableRows = {}): WorkbookSnapshot => snapshotOf(planTables({ sheets: [] }, tableKeys, rows));
const sites = [{ site: "North" }, { site: "South" }];

/** Fifty arrays as a firm keeps them, in its own words and order. */
const headers = ["Serial no.", "Device", "Cabinet", "U", "Location", "Disks", "Capacity per drive", "Owner"];
const firmList = (change: (row: number) => Partial<Record<string, CellValue>> = () => ({})): CellValue[][] => [
  ["Storage register", null, null, null, null, null, null, null],
  headers,
  ...Array.from({ length: 50 }, (_, at) => headers.map((header): CellValue => {
    const place = { "Cabinet": `R${at % 5}`, "U": at + 1, "Location": at % 2 === 0 ? "North" : "South" };
    const usual: Record<string, CellValue> = { "Serial no.": `00${4710 + at}`, "Device": `a-${at + 1}`, ...place, "Disks": 12, "Capacity per drive": "8 TB", "Owner": "B" };
    return change(at)[header] ?? usual[header]!;
  })),
];

function importing(book: WorkbookSnapshot, cells: CellValue[][], more: Partial<Import> = {}) {
  const [list, model] = [readList(cells), new PlanModel(book)];
  const given: Import = { table: "arrays", list, matches: proposeMatches(model, "arrays", list), keyColumns: ["array"], ...more };
  const plan = planImport(model, given);
  return { ...plan, given, book: carryOut(book, plan.changes) };
}

const arraysOf = (book: WorkbookSnapshot) => new PlanModel(book).rows("arrays").map(({ array, serial, site, rack, bottomUnit, drives }) => [array, serial, site, rack, bottomUnit, drives]);

test("a list in other words and another order goes where it belongs, below a title, its own columns left out", () => {
  const { added, updated, refused, book, given } = importing(bookOf({ sites }), firmList());
  expect(given.matches.map(({ column }) => column)).toEqual(["serial", "array", "rack", "bottomUnit", "site", "drives", "driveSize", null]);
  expect({ added, updated, refused }).toEqual({ added: 50, updated: 0, refused: [] });
  expect(arraysOf(book)[1]).toEqual(["a-2", "004711", "South", "R1", 2, 12]);
  expect(arraysOf(book)).toHaveLength(50);
});

test("the same list again changes nothing, and with ten rows changed ten", () => {
  const { book } = importing(bookOf({ sites }), firmList());
  expect(importing(book, firmList()).changes.writes).toEqual([]);
  const changed = importing(book, firmList((at) => (at < 10 ? { Disks: 24 } : {})));
  expect([changed.added, changed.updated, changed.changes.writes.length]).toEqual([0, 10, 10]);
  expect(arraysOf(changed.book).map((row) => row[5])).toEqual([...new Array<number>(10).fill(24), ...new Array<number>(40).fill(12)]);
});

test("how the columns went is remembered by their headers, in the workbook", () => {
  const first = importing(bookOf({ sites }), firmList());
  const own = { ...first.given, matches: first.given.matches.map((match, at) => (headers[at] === "Owner" ? { column: "firmware", readAs: "" } : match)) };
  const book = carryOut(bookOf({ sites }), planImport(new PlanModel(bookOf({ sites })), own).changes);
  expect(proposeMatches(new PlanModel(book), "arrays", readList(firmList())).at(-1)).toEqual({ column: "firmware", readAs: "" });
});

test("any order of columns comes in alike", () => {
  const plain = arraysOf(importing(bookOf({ sites }), firmList()).book);
  fc.assert(fc.property(fc.shuffledSubarray([...headers.keys()], { minLength: headers.length }), (order) => {
    const shuffled = firmList().map((line) => order.map((at) => line[at]!));
    expect(arraysOf(importing(bookOf({ sites }), shuffled).book)).toEqual(plain);
  }), { numRuns: 20 });
});

test("no import changes a cell that is not among its writes, nor a blank of the list one that is filled", () => {
  const before = importing(bookOf({ sites }), firmList()).book;
  const { changes, book } = importing(before, firmList((at) => (at % 7 === 0 ? { Cabinet: "", Disks: 10 } : {})));
  const written = new Set(changes.writes.map(({ sheet, row, column }) => `${sheet} ${row} ${column}`));
  for (const sheet of before.sheets) {
    const now = book.sheets.find(({ name }) => name === sheet.name)!;
    sheet.values.forEach((line, row) => line.forEach((cell, column) => {
      if (!written.has(`${sheet.name} ${row} ${column}`)) expect(now.values[row]![column]).toEqual(cell);
    }));
  }
  expect(arraysOf(book).every(([, , , rack]) => rack !== "")).toBe(true);
});

test.each<[string, Partial<Record<string, CellValue>>, string]>([
  ["a serial number that is a number", { "Serial no.": 4.71e8 }, "Row 3: Serial came as the number 471000000, which loses zeros and digits. Make its column text in the list, and type it again."],
  ["a serial number that a program rounded", { "Serial no.": "4.71E+08" }, 'Row 3: Serial "4.71E+08" is a rounded number. Write the digits in the list, as text.'],
  ["a count in words", { Disks: "twelve" }, 'Row 3: Drives "twelve" is not a number. Write digits, such as 42 or 0.5.'],
  ["an error", { Disks: { error: "#N/A" } }, "Row 3: Drives shows #N/A. Mend that cell of the list."],
  ["a size that is none", { "Capacity per drive": "large" }, 'Row 3: Drive size "large" is not a size.'],
  ["a row without its key", { Device: "" }, "Row 3 has no key, and is left out."],
  ["a key that stands twice", { Device: "a-2" }, 'Row 4 has the key "a-2", which stood in the list before, and is left out.'],
])("%s is told by its row, and the rest comes in", (_, wrong, sentence) => {
  const { refused, added } = importing(bookOf({ sites }), firmList((at) => (at === 0 ? wrong : {})));
  expect(refused).toHaveLength(1);
  expect(refused[0]).toContain(sentence);
  expect(added).toBeGreaterThanOrEqual(49);
});

test("a formula of the table stays, and so does a name that stands there twice", () => {
  const rows = bookOf({ sites, arrays: [{ array: "a-1", drives: 10 }, { array: "a-2" }, { array: "A-2" }] });
  const drives = columnsOf("arrays").findIndex(([name]) => name === "drives");
  const withFormula = (line: readonly (string | null)[], row: number) => (row === 4 ? line.map((cell, at) => (at === drives ? "=5*2" : cell)) : line);
  const sheets = rows.sheets.map((sheet) => (sheet.name !== "Arrays" ? sheet : { ...sheet, formulas: sheet.formulas.map(withFormula) }));
  const { refused } = importing({ sheets }, firmList());
  expect(refused).toEqual(["Row 3: Drives in row 5 of Arrays is a formula, which stays.", 'Row 4 has the key "a-2", which stands twice in Arrays, and is left out.']);
});

test("text that begins as a formula stays text, and a header called __proto__ is a header", () => {
  const { book, refused } = importing(bookOf(), [["Array", "__proto__", "Model"], ["=1+1", "x", "+3"], ["-2", "y", "@all"]], {});
  expect(refused).toEqual([]);
  expect(new PlanModel(book).rows("arrays").map(({ array, model }) => [array, model])).toEqual([["=1+1", "+3"], ["-2", "@all"]]);
});

describe("what can be read in two ways is asked", () => {
  const column = (name: string) => columnsOf("arrays").find(([one]) => one === name)![1];
  const jobDate = columnsOf("jobs").find(([one]) => one === "plannedDate")![1];
  test.each<[string, ReturnType<typeof column>, CellValue[], string | null]>([
    ["dates that may begin with the month", jobDate, ["03/04/2026", "05/06/2026"], "Which comes first"],
    ["dates of which one decides", jobDate, ["03/04/2026", "25/06/2026"], null],
    ["dates in the order of ISO 8601", jobDate, ["2026-04-03"], null],
    ["sizes without a unit", column("driveSize"), [8, 8], "In which unit"],
    ["sizes with their unit", column("driveSize"), ["8 TB", "7.68 TB"], null],
    ["a mark with three digits behind it", column("weightKg"), ["1.234"], "What is the mark"],
    ["a mark of which another cell tells", column("weightKg"), ["1.234", "12,5"], null],
    ["marks that tell otherwise", column("weightKg"), ["1.234", "12,5", "7.5"], "What is the mark"],
    ["dates that tell otherwise", jobDate, ["03/04/2026", "25/06/2026", "06/25/2026"], "Which comes first"],
    ["dates with points", jobDate, ["03.04.2026"], null],
    ["one day and month alike", jobDate, ["04/04/2026"], null],
    ["numbers", column("weightKg"), [1.234], null],
  ])("%s", (_, described, cells, asks) => {
    const question = questionOf(described, cells);
    if (asks === null) expect(question).toBeNull();
    else expect(question?.asks).toContain(asks);
  });

  const one = (header: string, value: CellValue, readAs: string) => {
    const book = bookOf({ sites });
    const [list, model] = [readList([["Array", header], ["a-1", value]]), new PlanModel(book)];
    const matches = proposeMatches(model, "arrays", list).map((match, at) => (at === 1 ? { ...match, readAs } : match));
    const { changes, refused } = planImport(model, { table: "arrays", list, matches, keyColumns: [] });
    return refused[0] ?? changes.writes.find(({ sheet, value: written }) => sheet === "Arrays" && written !== "a-1")?.value;
  };
  test.each<[string, CellValue, string, unknown]>([
    ["Warranty until", "03/04/2026", "day first", 46_115],
    ["Warranty until", "03/04/2026", "month first", 46_085],
    ["Warranty until", "31.02.2026", "day first", 'Row 2: Warranty until "31.02.2026" is no day that there is. Write it as 2026-05-31.'],
    ["Drive size", 8, "TiB", "8 TiB"],
    ["Drive size", "7,68", "TB", "7.68 TB"],
    ["Weight", "1.234", "decimal comma", 1234],
    ["Weight", "1.234", "decimal point", 1.234],
    ["Weight", "1.234,5", "decimal comma", 1234.5],
    ["Weight", "12,5", "", 12.5],
    ["Weight", "1,234.5", "decimal point", 1234.5],
  ])("%s %j read as %s", (header, value, readAs, wanted) => {
    expect(one(header, value, readAs)).toBe(wanted);
  });
});

test("what other cells of a column tell is how its doubtful ones are read, and what nobody tells is refused", () => {
  const read = (header: string, ...cells: CellValue[]) => {
    const model = new PlanModel(bookOf({ sites }));
    const list = readList([["Array", header], ...cells.map((cell, at) => [`a-${at}`, cell])]);
    const { changes, refused } = planImport(model, { table: "arrays", list, matches: proposeMatches(model, "arrays", list), keyColumns: [] });
    return [...changes.writes.filter(({ sheet, column }) => sheet === "Arrays" && column > 1).map(({ value }) => value), ...refused];
  };
  expect(read("Weight", "1.234", "12,5")).toEqual([1234, 12.5]);
  expect(read("Weight", "1.234", "12.5")).toEqual([1.234, 12.5]);
  expect(read("Weight", "1.234", "1.234.567")).toEqual([1234, 1_234_567]);
  expect(read("Weight", "1,234", "1.234,5")).toEqual([1.234, 1234.5]);
  // 2026-03-04 and 2026-06-25.
  expect(read("Warranty until", "03/04/2026", "06/25/2026")).toEqual([46_085, 46_198]);
  expect(read("Reserve", "12,5%", "10%")).toEqual([0.125, 0.1]);
  expect(read("Drive size", "7,68 TB", "7,680 GB")).toEqual(["7.68 TB", "7.680 GB"]);
  expect(read("Drive size", "7,680 GB")).toEqual(['Row 2: Drive size "7,680 GB" can be read in two ways. Write it without a mark, or with one or two decimals.']);
  expect(read("Warranty until", "03/04/2026")).toEqual(['Row 2: Warranty until "03/04/2026" can be read in two ways. Write it as 2026-05-31.']);
});

test("rows without a name of their own are found by all that tells them apart", () => {
  const rows = { arrays: [{ array: "a" }], ports: [{ array: "a", controller: "A", port: "0", switch: "sw1" }, { array: "a", controller: "A", port: "1", switch: "sw2" }] };
  const [book, list] = [bookOf(rows), readList([["Array", "Controller", "Port", "Switch"], ["a", "A", "1", "sw9"], ["a", "B", "1", "sw8"]])];
  const model = new PlanModel(book);
  const plan = planImport(model, { table: "ports", list, matches: proposeMatches(model, "ports", list), keyColumns: waysToFind("ports")[0]! });
  expect([plan.updated, plan.added, plan.refused]).toEqual([1, 1, []]);
  const ports = new PlanModel(carryOut(book, plan.changes)).rows("ports");
  expect(ports.map(({ controller, port, switch: to }) => [controller, port, to])).toEqual([["A", "0", "sw1"], ["A", "1", "sw9"], ["B", "1", "sw8"]]);
});

test("cables keep the ids of a firm's list, by which the next one finds them, and ports of models are found with a blank controller", () => {
  const cables = { cables: [{ id: "K-7", from: "a port A/0", to: "s1 port 1" }] };
  const [book, list] = [bookOf(cables), readList([["Id", "Colour", "Length m"], ["K-7", "aqua", 3], ["K-8", "grey", 5]])];
  const model = new PlanModel(book);
  const { changes, refused } = planImport(model, { table: "cables", list, matches: proposeMatches(model, "cables", list), keyColumns: waysToFind("cables")[0]! });
  expect(refused).toEqual([]);
  expect(new PlanModel(carryOut(book, changes)).rows("cables").map(({ id, from, colour }) => [id, from, colour])).toEqual([["K-7", "a port A/0", "aqua"], ["K-8", "", "grey"]]);
  expect(waysToFind("modelPorts")).toEqual([["model", "controller", "port"]]);
  expect(waysToFind("driveSets")).toEqual([["array", "set"]]);
});

test("drives are found by array, shelf and bay, though the bay is a number and the shelf blank", () => {
  const [book, list] = [bookOf({ drives: [{ array: "a", bay: 1, serial: "S1" }] }), readList([["Array", "Bay", "Serial"], ["a", 1, "S7"], ["a", 2, "S2"]])];
  const model = new PlanModel(book);
  const plan = planImport(model, { table: "drives", list, matches: proposeMatches(model, "drives", list), keyColumns: waysToFind("drives")[0]! });
  expect([plan.updated, plan.added, plan.refused]).toEqual([1, 1, []]);
});

test("a firm's own ids do not become ours, and no column of ours is filled by two of the list", () => {
  const book = bookOf({ arrays: [{ id: "Q7K2M9PX", array: "a" }] });
  const { given, changes } = importing(book, [["ID", "Array", "Drives"], ["own-1", "a", 12]]);
  expect(given.matches[0]!.column).toBeNull();
  expect(changes.writes.filter(({ sheet }) => sheet === "Arrays").map(({ value }) => value)).toEqual([12]);
  const both = [{ column: "serial", readAs: "" }, { column: "array", readAs: "" }, { column: "serial", readAs: "" }];
  expect(() => importing(book, [["old", "Array", "new"], ["S1", "a", "S2"]], { matches: both })).toThrow("Two columns of the list go to Serial. Leave one of them out.");
});

test.each<[string, CellValue, string]>([
  ["Warranty until", 20_260_304, "Row 2: Warranty until came as the number 20260304, which is no day of our time. Write it as 2026-05-31."],
  ["Warranty until", 2026, "Row 2: Warranty until came as the number 2026, which is no day of our time. Write it as 2026-05-31."],
  ["Model", 4.71e21, "Row 2: Model came as the rounded number 4.71e+21. Make its column text in the list."],
  ["Model", "x".repeat(32_768), "Row 2: Model has 32768 characters; 32767 is the most that a cell holds. Shorten it."],
])("%s of %p is refused", (header, value, sentence) => {
  expect(importing(bookOf(), [["Array", header], ["a", value]]).refused).toEqual([sentence]);
});

test("a serial number that reads like a power is one", () => {
  expect(importing(bookOf(), [["Array", "Serial"], ["a", "5E12"]]).refused).toEqual([]);
});

describe("a list is found among cells", () => {
  test("below a title of two cells", () => {
    expect(readList([["Register", "2026 Q3"], ["Site", "Room", "Contact", "Access"], ["North", "1", "Desk", "Lift"]]).headers).toEqual(["Site", "Room", "Contact", "Access"]);
  });

  test("below a title and above a total, blank rows passed over", () => {
    const list = readList([["Register of 2026"], [], ["Site", "Room"], ["North", "1"], [null, null], ["South", "2"], ["Total", 2]]);
    expect(list.headers).toEqual(["Site", "Room"]);
    expect(list.rows.map(({ number, cells }) => [number, ...cells])).toEqual([[4, "North", "1"], [6, "South", "2"]]);
    expect(list.leftOut.map(({ number }) => number)).toEqual([7]);
  });
  test("with one column, and with a header twice or blank", () => {
    expect(readList([["Site"], ["North"]]).headers).toEqual(["Site"]);
    expect(readList([["Site", "Site", ""], ["North", "x", "y"]]).headers).toEqual(["Site", "Site (2)", "column C"]);
  });
  test.each<[string, CellValue[][], string]>([
    ["nothing", [], "No row of headers was found in the list."],
    ["numbers alone", [[1, 2], [3, 4]], "No row of headers was found in the list."],
    ["301 columns", [Array.from({ length: 301 }, (_, at) => `c${at}`)], "The list has 301 columns; 300 is the most."],
  ])("but not in %s", (_, cells, sentence) => {
    expect(() => readList(cells)).toThrow(sentence);
  });
});

test("ten thousand rows are planned, each once", () => {
  const cells = [["Array", "Serial"], ...Array.from({ length: 10_000 }, (_, at) => [`a-${at}`, `S${at}`])];
  const { added, refused } = importing(bookOf(), cells);
  expect([added, refused.length]).toEqual([10_000, 0]);
});
