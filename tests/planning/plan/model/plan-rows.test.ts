import { groupBy } from "../../../../src/planning/plan/model";
import { modelOf } from "../../../support/plan-model";

const racks = [
  { rack: "R1", site: "Mill", units: 42 },
  { rack: " r1 ", site: "mill", units: 12 },
  { rack: "R2", site: " MILL", units: 24 },
  { rack: null, site: null, units: 6 },
  { rack: "R3", site: "Yard", units: 8 },
];

describe("the rows of a plan", () => {
  test("are found by name without case and spaces, the first of two that are spelt alike", () => {
    const model = modelOf({ racks });
    expect(model.find("racks", "R1")?.units).toBe(42);
    expect(model.find("racks", " r1")?.units).toBe(42);
    expect(model.find("racks", "r2")?.units).toBe(24);
    expect(model.find("racks", "R9")).toBeNull();
  });

  test("have no name where the cell is blank: a blank finds nothing", () => {
    const model = modelOf({ racks });
    expect(model.find("racks", "")).toBeNull();
    expect(model.find("racks", "  ")).toBeNull();
    expect(model.rowsWith("racks", "site", "")).toEqual([]);
  });

  test("are grouped by the text of a column, in the order of the rows, and those with a blank there are left out", () => {
    const groups = modelOf({ racks }).groupBy("racks", "site");
    expect([...groups].map(([site, rows]) => [site, rows.map(({ units }) => units)])).toEqual([["mill", [42, 12, 24]], ["yard", [8]]]);
    expect(modelOf({ racks }).rowsWith("racks", "site", " Yard ").map(({ rack }) => rack)).toEqual(["R3"]);
    expect(modelOf({ racks }).rowsWith("racks", "site", "Nowhere")).toEqual([]);
  });

  test("that share a name are told", () => {
    expect([...modelOf({ racks }).namesakes("racks")].map(([name, rows]) => [name, rows.length])).toEqual([["r1", 2], ["r2", 1], ["r3", 1]]);
  });

  test("are none where the table is not there", () => {
    const model = modelOf({});
    expect(model.rows("racks")).toEqual([]);
    expect(model.table("racks")).not.toBeNull();
    expect(model.sheet("Racks")?.name).toBe("Racks");
    expect(model.sheet("Nothing")).toBeNull();
  });

  test("are written to cell by cell, and not at all where the table lacks the column", () => {
    const model = modelOf({ racks });
    expect(model.write({ table: "racks", row: 4, column: "units" }, 20)).toEqual({ sheet: "Racks", row: 4, column: 2, before: 42, value: 20 });
    expect(model.write({ table: "racks", row: 4, column: "weight" }, 20)).toBeNull();
  });

  test("bring their settings along, and what of those cannot be read", () => {
    const model = modelOf({ settings: [{ setting: "Fill limit", value: "75%" }, { setting: "Colour", value: "red" }, { setting: "Lift reach cm", value: "far" }] });
    expect(model.settings.fillLimit).toBe(0.75);
    expect(model.settings.liftReachCm).toBe(35);
    expect(model.settingFaults.map(({ row, kind }) => [row.setting, kind])).toEqual([["Colour", "unknown"], ["Lift reach cm", "unreadable"]]);
  });
});

test("items are grouped in the order in which their keys first come", () => {
  expect([...groupBy(["b1", "a1", "b2", "a2"], ([key]) => key)]).toEqual([["b", ["b1", "b2"]], ["a", ["a1", "a2"]]]);
});
