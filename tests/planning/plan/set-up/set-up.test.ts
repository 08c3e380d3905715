import { locateTable, readPlan, rowsOf } from "../../../../src/planning/plan/read";
import { columnsOf, isFurther, tableKeys, tables } from "../../../../src/planning/plan/schema";
import { furtherTables, missingTables, planSetUp, planTables, sampleRows } from "../../../../src/planning/plan/set-up";
import { columnLetters } from "../../../../src/sheet";
import { snapshotOf, workbookOf } from "../../../support/plain-workbook";

const empty = { sheets: [] };

describe("setting up an empty workbook", () => {
  const plans = planSetUp(empty);

  test("adds one sheet a planning table, named like it, in the order of the tables, without those that come when they are asked for", () => {
    expect(plans.map(({ name }) => name)).toEqual(tableKeys.filter((key) => !isFurther(key)).map((key) => tables[key].name));
    expect(plans.map(({ name }) => name)).not.toContain("Models");
  });

  test.each(tableKeys.filter((key) => !isFurther(key)))("makes a sheet on which the table %s is found by its marker alone, with every column", (key) => {
    const plan = plans.find(({ name }) => name === tables[key].name)!;
    const workbook = snapshotOf([{ ...plan, tables: [] }]);
    const found = locateTable(workbook, key)!;
    expect(found.headerRow).toBe(3);
    expect(Object.keys(readPlan(workbook)[key]!.columns)).toEqual(Object.keys(tables[key].columns));
  });

  test("names each table for the host over its headers and rows", () => {
    const racks = plans.find(({ name }) => name === "Racks")!;
    expect(racks.tables).toEqual([{ name: "BayRacks", area: { row: 3, column: 0, rows: racks.rows.length - 3, columns: racks.rows[3]!.length } }]);
  });

  test("keeps what is typed in text columns as text, down to the last blank row", () => {
    const ports = plans.find(({ name }) => name === "Ports")!;
    const styles = ports.rows.slice(4).map((row) => ports.styles[row[7]!.style!]!.format);
    expect(new Set(styles)).toEqual(new Set(["@"]));
  });

  test("lets no list, and no formula, point at a sheet that is not there yet", () => {
    const earlier = new Set<string>();
    for (const plan of plans) {
      const formulas = [
        ...plan.rows.flat().map(({ formula }) => formula ?? ""),
        ...(plan.validations ?? []).map(({ rule }) => (rule.kind === "list-of" ? rule.formula : "")),
      ];
      const named = formulas.flatMap((text) => [...text.matchAll(/([A-Za-z]+)!/g)].map(([, sheet]) => sheet!));
      earlier.add(plan.name); // a sheet may speak of itself
      for (const sheet of named) expect(earlier).toContain(sheet);
    }
  });

  test.each([
    ["Racks", 1, "=Sites!$A$5:$A$2004"],
    ["Arrays", 25, "=Clusters!$A$5:$A$2004"],
    ["Arrays", 2, "=Sites!$A$5:$A$2004"],
  ])("offers on %s in column %i the rows of the table it refers to", (sheet, column, formula) => {
    const validation = plans.find(({ name }) => name === sheet)!.validations!.find(({ area }) => area.column === column)!;
    expect(validation.rule).toEqual({ kind: "list-of", formula });
    expect(validation.strict).toBe(false);
  });

  test("writes formulas of the same row and of plain ranges", () => {
    const quote = plans.find(({ name }) => name === "Quote")!;
    expect(quote.rows[4]![9]!.formula).toMatch(/^=IF\(OR\(\$K5<>"array",\$L5="",\$X5="",\$C5=0\),"",BAY\.UNITPRICE\(\$X5\/\$C5\*IF\(COUNTIF\(Arrays!\$B\$5:\$B\$2004,\$B5\)>0,1,/);
    expect(quote.rows[5]![7]!.formula).toContain("MATCH($B6,Arrays!$B$5:$B$2004,0)");
  });

  test("reads as a plan without rows and without faults", () => {
    const plan = readPlan(snapshotOf(plans));
    expect(plan.faults).toEqual([]);
    for (const key of tableKeys) expect(rowsOf(plan, key)).toEqual([]);
  });
});

describe("a table that comes when it is asked for", () => {
  const setUp = snapshotOf(planSetUp(empty));

  test("is none that set-up misses", () => {
    expect(missingTables(empty)).not.toContain("models");
    expect([furtherTables(setUp).includes("models"), furtherTables(snapshotOf(planTables(setUp, ["models"]))).includes("models")]).toEqual([true, false]);
  });

  test.each(tableKeys.filter(isFurther))("%s is added alone, with every column, and is found by its marker", (key) => {
    const [plan, ...others] = planTables(setUp, [key]);
    expect(others).toEqual([]);
    const added = snapshotOf([{ ...plan!, tables: [] }]);
    expect(Object.keys(readPlan(added)[key]!.columns)).toEqual(Object.keys(tables[key].columns));
    expect(planTables({ sheets: [...setUp.sheets, ...added.sheets] }, [key])).toEqual([]);
  });

  test("comes with set-up where it has rows", () => {
    expect(planSetUp(empty, { models: [{ model: "M" }] }).map(({ name }) => name)).toContain("Models");
  });

  test("offers no list out of a table that is not there", () => {
    expect(planTables(empty, ["racks"])[0]!.validations!.filter(({ rule }) => rule.kind === "list-of")).toEqual([]);
  });
});

describe("setting up a workbook that has something", () => {
  const own = workbookOf({ Sites: [["our visitors"]], "Our places": [["Table: Sites"], [null, "Notes", "site", "Contact"], [null, "x", "Mill", "desk"]] });

  test("leaves out the tables that are there, wherever they stand", () => {
    expect(missingTables(own)).not.toContain("sites");
    expect(planSetUp(own).map(({ name }) => name)).not.toContain("Sites");
  });

  test("points its lists at the table that is there", () => {
    const racks = planSetUp(own).find(({ name }) => name === "Racks")!;
    expect(racks.validations![0]!.rule).toEqual({ kind: "list-of", formula: "='Our places'!$C$3:$C$2002" });
  });

  test("numbers a sheet whose name is taken by something else", () => {
    const taken = workbookOf({ sites: [["our visitors"]], "Sites 2": [] });
    expect(planSetUp(taken).map(({ name }) => name)).toContain("Sites 3");
  });
});

describe("the sample plan", () => {
  const plan = readPlan(snapshotOf(planSetUp(empty, sampleRows())));

  test("reads without a fault", () => {
    expect(plan.faults.map(({ sheet, header, problem }) => `${sheet} ${header}: ${problem.sentence}`)).toEqual([]);
  });

  test("has three sites, six arrays, two clusters, and one installation job a site whose name holds the site's", () => {
    expect([rowsOf(plan, "sites").length, rowsOf(plan, "arrays").length, rowsOf(plan, "clusters").length]).toEqual([3, 6, 2]);
    for (const { site, job } of rowsOf(plan, "jobs")) expect(job).toContain(site);
    expect(new Set(rowsOf(plan, "jobs").map(({ site }) => site))).toEqual(new Set(rowsOf(plan, "sites").map(({ site }) => site)));
  });

  test("gives every port an address, a switch and a port of it", () => {
    for (const port of rowsOf(plan, "ports")) expect([port.address, port.switch, port.switchPort]).not.toContain("");
    expect(rowsOf(plan, "ports")).toHaveLength(48);
  });

  test("writes dates as the sheet counts them", () => {
    expect(rowsOf(plan, "jobs").map(({ plannedDate }) => plannedDate)).toEqual(["2026-10-06", "2026-10-13", "2026-10-20"]);
  });
});

test.each([[0, "A"], [25, "Z"], [26, "AA"], [51, "AZ"], [701, "ZZ"], [702, "AAA"]])("column %i is %s", (column, letters) => {
  expect(columnLetters(column)).toBe(letters);
});

test("every column that refers to a table refers to one that stands before its own, or to its own", () => {
  const before = new Set<string>();
  for (const key of tableKeys) {
    before.add(key);
    for (const [, { from }] of columnsOf(key)) if (from !== undefined) expect(before).toContain(from);
  }
});
