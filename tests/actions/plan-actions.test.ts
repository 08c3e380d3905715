import { readFileSync } from "node:fs";
import { join } from "node:path";
import { findSelectedPortPlan } from "../../src/actions/find-port-plan";
import { loadSample } from "../../src/actions/load-sample";
import { addTable, setUp } from "../../src/actions/set-up";
import { writeShownChanges } from "../../src/actions/write-changes";
import { assignPlanAddresses } from "../../src/planning/assignment";
import { checkPlan, mendsOf, rules } from "../../src/planning/checks";
import { readPlan, rowsOf } from "../../src/planning/plan/read";
import { isFurther, tableKeys, tables } from "../../src/planning/plan/schema";
import { missingTables, sampleRows } from "../../src/planning/plan/set-up";
import { columnLetters, type Area, type CellValue, type SheetSnapshot, type WorkbookSnapshot } from "../../src/sheet";
import { PlainPort, withCell, workbookOf } from "../support/plain-workbook";
import { sample, workbookWith } from "../support/plan-rows";

/** Tables that set-up adds, without those that come when they are asked for. */
const ofSetUp = tableKeys.filter((key) => !isFurther(key));

describe("setting up", () => {
  test("adds every table to an empty workbook in one go", async () => {
    const port = new PlainPort();
    expect(missingTables(port.workbook)).toEqual(ofSetUp);
    expect(await setUp(port)).toEqual({ added: ofSetUp.map((key) => tables[key].name), kept: [], broughtUp: [], mended: [] });
    expect(missingTables(port.workbook)).toEqual([]);
    expect(port.applied).toHaveLength(1);
  });

  test("fills in thresholds and procedures, and leaves a plan in which nothing can be found", async () => {
    const port = new PlainPort();
    await setUp(port);
    expect(checkPlan(port.workbook, rules, "2026-06-01")).toEqual([]);
    expect(rowsOf(readPlan(port.workbook), "steps").length).toBeGreaterThan(100);
  });

  test("does not touch a table that is there, however little it holds", async () => {
    const own = workbookOf({ Ours: [["Table: Racks"], ["Rack", "Site"], ["R1", "Mill"]] });
    const port = new PlainPort(own);
    const { kept } = await setUp(port);
    expect(kept).toEqual(["Racks"]);
    expect(port.workbook.sheets[0]).toEqual(own.sheets[0]);
    expect(await setUp(port)).toEqual({ added: [], kept: ofSetUp.map((key) => tables[key].name), broughtUp: [], mended: [] });
    expect(port.applied).toHaveLength(1);
  });
});

describe("adding one more table", () => {
  test("puts its sheet behind that of the table before it, shows it, and leaves every other sheet as it was", async () => {
    const port = new PlainPort();
    await setUp(port);
    const before = port.workbook;
    await addTable(port, "models");
    expect(port.applied[1]!.map((edit) => [edit.kind, edit.kind === "add-sheet" && edit.after])).toEqual([["add-sheet", "Pools"], ["select", false]]);
    expect(port.workbook.sheets.filter(({ name }) => name !== "Models")).toEqual(before.sheets);
    expect(checkPlan(port.workbook, rules, "2026-06-01")).toEqual([]);
  });

  test("adds nothing where the table is there already, and one alone to a workbook without any", async () => {
    const port = new PlainPort(workbookOf({ Ours: [["Table: Models"], ["Model", "Units"], ["M", 4]] }));
    await addTable(port, "models");
    expect(port.applied).toEqual([]);
    const bare = new PlainPort();
    await addTable(bare, "models");
    expect(bare.workbook.sheets.map(({ name }) => name)).toEqual(["Models"]);
  });
});

describe("bringing up a plan of the first layout", () => {
  const layout1 = JSON.parse(readFileSync(join(__dirname, "..", "planning", "plan", "schema", "layout-1.json"), "utf8")) as Record<string, string[]>;
  /** The sample as the first layout held it, with a column of people's own behind the last of each table that will grow. */
  const earlier = (own = false): WorkbookSnapshot => ({
    sheets: workbookWith(sample()).sheets.filter(({ name }) => name in layout1).map((sheet) => {
      const width = layout1[sheet.name]!.length;
      const cut = <Value>(lines: readonly (readonly Value[])[], none: Value, mark: Value): Value[][] =>
        lines.map((line, row) => [...line.slice(0, width), ...Array<Value>(Math.max(0, width - line.length)).fill(none), ...(own && row === 3 ? [mark] : [])]);
      const area = { ...sheet.tables[0]!.area, columns: width };
      return { ...sheet, values: cut(sheet.values, null, "Ours"), formulas: cut(sheet.formulas, null, null), tables: [{ ...sheet.tables[0]!, area }] };
    }),
  });

  test("adds the columns that a table lacks behind its last one, with their formulas, and changes no cell that is there", async () => {
    const before = earlier();
    const port = new PlainPort(before);
    const { added, broughtUp } = await setUp(port);
    expect(added).toEqual(["Volumes", "Access"]);
    expect(broughtUp).toEqual(["Sites", "Networks", "Switches", "Hosts", "Arrays", "Procedures", "Steps", "Jobs", "Quote"]);
    for (const sheet of before.sheets) {
      const now = port.workbook.sheets.find(({ name }) => name === sheet.name)!;
      sheet.values.forEach((line, row) => expect(now.values[row]!.slice(0, line.length)).toEqual(line));
    }
    const networks = port.workbook.sheets.find(({ name }) => name === "Networks")!;
    expect(networks.values[3]).toEqual([...layout1.Networks!, "Role", "Side", "Kind"]);
    expect(networks.tables[0]!.area.columns).toBe(layout1.Networks!.length + 3);
    const formulas = port.applied[0]!.flatMap((edit) => (edit.kind === "write" && edit.sheet === "Quote" ? [edit.cells[1]!.map((cell) => cell?.formula)] : []));
    expect(formulas[0]![1]).toMatch(/^=IF\(\$B5="","",IFERROR\(IF\(COUNTIF\(Arrays!\$B\$5:\$B\$2004,\$B5\)>0,INDEX\(Arrays!\$AF\$5/);
    expect(await setUp(port)).toMatchObject({ added: [], broughtUp: [], mended: [] });
  });

  test("writes the formulas of today over those that stand as the first layout wrote them, and leaves one that somebody changed", async () => {
    const before = earlier();
    const [sellPrice, changed] = ['=IF($D5="","",$C5*BAY.SELLPRICE($D5,$E5,"margin",0.01))', '=IF($D6="","",$C6*BAY.SELLPRICE($D6,$E6,"margin",1))'];
    const perTb = '=IF(OR($H5="",$I5=""),"",BAY.UNITPRICE($I5,$H5))';
    const withFormer = (line: readonly (string | null)[], row: number) => (row === 4 ? [...line.slice(0, 8), sellPrice, perTb] : row === 5 ? [...line.slice(0, 8), changed, null] : line);
    const sheets = before.sheets.map((sheet) => (sheet.name === "Quote" ? { ...sheet, formulas: sheet.formulas.map(withFormer) } : sheet));
    const port = new PlainPort({ sheets });
    expect((await setUp(port)).mended).toEqual(["Quote"]);
    const quote = port.workbook.sheets.find(({ name }) => name === "Quote")!;
    const unitPrice = columnLetters(quote.values[3]!.indexOf("Unit price"));
    const written = port.applied[0]!.flatMap((edit) => (edit.kind === "write" && edit.sheet === "Quote" && edit.column === 8 ? [edit] : []));
    expect(written).toHaveLength(1);
    expect(written[0]).toMatchObject({ row: 4, cells: [[{ formula: `=IF(OR($${unitPrice}5="",$C5=""),"",$C5*$${unitPrice}5)` }, { formula: expect.stringContaining(`<>"array"`) as string }]] });
  });

  test("leaves a table alone where something stands in the way; it works without", async () => {
    const before = earlier(true);
    const own = { sheets: before.sheets.map((sheet) => ({ ...sheet, tables: sheet.tables })) };
    const port = new PlainPort(own);
    expect((await setUp(port)).broughtUp).toEqual([]);
    expect(port.applied[0]!.map(({ kind }) => kind)).toEqual(["add-sheet", "add-sheet"]);
    expect(checkPlan(own, rules, "2026-06-01").filter(({ weight }) => weight === "stop")).toEqual([]);
  });
});

describe.each([1, 2, 3, 4])("bringing up a plan of layout %i in which people have put things of their own", (version) => {
  const layout = JSON.parse(readFileSync(join(__dirname, "..", "planning", "plan", "schema", `layout-${version}.json`), "utf8")) as Record<string, string[]>;

  /**
   * The sample as that layout held it: its columns back to front, one of people's own in their midst and one behind them, a row of their own under its
   * own headers below each table, a note far to the right, and a sheet that reads from the plan.
   */
  const earlier = (): WorkbookSnapshot => {
    const sheets = workbookWith(sample()).sheets.filter(({ name }) => name in layout).map((sheet): SheetSnapshot => {
      const headers = layout[sheet.name]!;
      const at = headers.map((header) => sheet.values[3]!.indexOf(header)).reverse();
      const middle = Math.ceil(at.length / 2);
      const [first, ...more] = sheet.tables;
      const lastRow = first!.area.row + first!.area.rows - 1;
      const values = sheet.values.map((line, row): CellValue[] => {
        if (row < 3 || row > lastRow) return [...line];
        const own = row === 3 ? ["Ours", "Our remark"] : [`ours ${row}`, row === 4 ? "look" : null];
        const cells = at.map((column) => line[column] ?? null);
        return [...cells.slice(0, middle), own[0]!, ...cells.slice(middle), own[1]!, ...Array<CellValue>(24).fill(null), row === 3 ? "a note" : null];
      });
      values.push([], ["Spare parts", "Where"], ["fan", "shelf 3"]);
      const formulas = values.map((line) => line.map(() => null));
      return { ...sheet, values, formulas, tables: [{ ...first!, area: { ...first!.area, columns: headers.length + 2 } }, ...more] };
    });
    return { sheets: [...sheets, { ...workbookOf({ "Our list": [["Array", "Bought"], ["rr-array-1", 46_000]] }).sheets[0]! }] };
  };

  test("leaves every cell where it is and as it is, and every row reads as before, with the columns that were lacking", async () => {
    const before = earlier();
    const port = new PlainPort(before);
    const { broughtUp } = await setUp(port);
    expect(broughtUp.length).toBeGreaterThan(4);
    for (const sheet of before.sheets) {
      const now = port.workbook.sheets.find(({ name }) => name === sheet.name)!;
      sheet.values.forEach((line, row) => line.forEach((cell, column) => {
        if (cell !== null) expect([sheet.name, row, column, now.values[row]![column]]).toEqual([sheet.name, row, column, cell]);
      }));
    }
    const [then, now] = [readPlan(before), readPlan(port.workbook)];
    for (const key of ofSetUp) {
      rowsOf(then, key).forEach((row, at) => expect(rowsOf(now, key)[at]!.shown).toMatchObject({ ...row.shown }));
      expect(rowsOf(then, key).map(({ shown }) => shown.Ours).every((text) => text?.startsWith("ours"))).toBe(true);
    }
    expect(checkPlan(port.workbook, rules, "2026-06-01").filter(({ rule }) => rule.startsWith("missing") || rule === "unreadable-cell")).toEqual([]);
    expect(await setUp(port)).toMatchObject({ added: [], broughtUp: [], mended: [] });
  });
});

describe("loading the sample", () => {
  test("fills an empty workbook, and one that was only set up, with the same plan", async () => {
    const fresh = new PlainPort();
    await loadSample(fresh);
    const before = new PlainPort();
    await setUp(before);
    await loadSample(before);
    const listed = (workbook: WorkbookSnapshot): unknown => (["sites", "arrays", "ports", "jobs", "steps"] as const).map((key) => rowsOf(readPlan(workbook), key).map(({ shown }) => ({ ...shown })));
    expect(listed(before.workbook)).toEqual(listed(fresh.workbook));
    expect(rowsOf(readPlan(before.workbook), "ports")).toHaveLength(sampleRows().ports!.length);
    expect(checkPlan(before.workbook, rules, "2026-06-01").filter(({ weight }) => weight !== "note")).toEqual([]);
  });

  test("refuses a workbook that holds a plan, and leaves it as it was", async () => {
    const own = workbookOf({ Ours: [["Table: Racks"], ["Rack", "Site"], ["R1", "Mill"]] });
    const port = new PlainPort(own);
    await expect(loadSample(port)).rejects.toThrow("Table Racks holds 1 rows already");
    expect(port.applied).toEqual([]);
  });
});

describe("writing what was shown", () => {
  const bare = (): WorkbookSnapshot => workbookWith({ ...sample(), ports: [] });

  test("grows the table, then writes whole blocks", async () => {
    const port = new PlainPort(bare());
    await writeShownChanges(port, assignPlanAddresses(port.workbook), assignPlanAddresses);
    expect(port.applied[0]!.map(({ kind }) => kind)).toEqual(["resize-table", "write"]);
    expect(rowsOf(readPlan(port.workbook), "ports")).toHaveLength(48);
    expect(assignPlanAddresses(port.workbook).writes).toEqual([]);
  });

  test("writes nothing once somebody's edit makes the changes come out otherwise", async () => {
    const port = new PlainPort(bare());
    const shown = assignPlanAddresses(port.workbook);
    const networks = port.workbook.sheets.find(({ name }) => name === "Networks")!;
    const reserved = networks.values[3]!.indexOf("Reserved");
    port.workbook = withCell(port.workbook, "Networks", 4, reserved, "10.64.11.1-10.64.11.9");
    await expect(writeShownChanges(port, shown, assignPlanAddresses)).rejects.toThrow("edited after this was shown");
    expect(port.applied).toEqual([]);
  });

  test("writes nothing once a row was inserted above", async () => {
    const rows = sample();
    rows.ports[3]!.address = null;
    const port = new PlainPort(workbookWith(rows));
    const shown = assignPlanAddresses(port.workbook);
    rows.ports.unshift({ array: "rr-array-9" });
    port.workbook = workbookWith(rows);
    await expect(writeShownChanges(port, shown, assignPlanAddresses)).rejects.toThrow("edited after this was shown");
    expect(port.applied).toEqual([]);
  });

  test("is not put off by an edit that changes nothing of it", async () => {
    const port = new PlainPort(bare());
    const shown = assignPlanAddresses(port.workbook);
    port.workbook = withCell(port.workbook, "Sites", 4, 2, "Night desk");
    await writeShownChanges(port, shown, assignPlanAddresses);
    expect(port.applied).toHaveLength(1);
  });

  test("passes a refusal of the workbook on, such as a protected sheet", async () => {
    const port = new PlainPort(bare());
    port.refuse = new Error("Sheet Ports is protected.");
    await expect(writeShownChanges(port, assignPlanAddresses(port.workbook), assignPlanAddresses)).rejects.toThrow("Sheet Ports is protected.");
  });

  test("says so when a table was deleted in between", async () => {
    const port = new PlainPort(bare());
    const shown = assignPlanAddresses(port.workbook);
    port.workbook = { sheets: port.workbook.sheets.filter(({ name }) => name !== "Networks") };
    await expect(writeShownChanges(port, shown, assignPlanAddresses)).rejects.toThrow("The workbook has no table Networks");
  });
});

test("mending everything that has a mend leaves nothing that has one", async () => {
  const rows = sample();
  Object.assign(rows.arrays[0]!, { id: null, rack: "RR R1", drives: "24" });
  rows.arrays[1]!.liftBy = "one";
  rows.ports[0]!.mtu = 1500;
  rows.ports[1]!.network = null;
  rows.jobs[0]!.job = "Reading Room: day 1";
  const port = new PlainPort(workbookWith(rows));
  const plan = (workbook: WorkbookSnapshot) => mendsOf(checkPlan(workbook, rules, "2026-06-01"));
  await writeShownChanges(port, plan(port.workbook), plan);
  expect(checkPlan(port.workbook, rules, "2026-06-01").map(({ rule }) => rule)).toEqual(["pool-without-scheme"]);
});

describe("finding the PORTPLAN table that is selected", () => {
  class SpillPort extends PlainPort {
    constructor(
      private readonly at: { readonly row: number; readonly column: number },
      private readonly spill: Area | null,
    ) {
      const { sheets } = workbookOf({ Quick: [["=", null], [null, null]] });
      super({ sheets: [{ ...sheets[0]!, formulas: [["=BAY.PORTPLAN(A9:C12,E9:G12)", null], [null, null]] }] });
    }

    override selection() {
      return Promise.resolve({ sheet: "Quick", area: { ...this.at, rows: 1, columns: 1 } }) as Promise<never>;
    }

    override spillAreas() {
      return Promise.resolve([this.spill]) as Promise<null[]>;
    }
  }
  const spill = { row: 0, column: 0, rows: 9, columns: 7 };

  test.each([[0, 0], [8, 6], [4, 2]])("finds it from row %i, column %i of it", async (row, column) => {
    expect(await findSelectedPortPlan(new SpillPort({ row, column }, spill))).toEqual({ sheet: "Quick", area: spill });
  });

  test.each([[9, 0], [0, 7]])("refuses a cell outside of it: row %i, column %i", async (row, column) => {
    await expect(findSelectedPortPlan(new SpillPort({ row, column }, spill))).rejects.toThrow("Select one of its cells");
  });

  test("refuses a formula that does not spill", async () => {
    await expect(findSelectedPortPlan(new SpillPort({ row: 0, column: 0 }, null))).rejects.toThrow("Select one of its cells");
  });
});
