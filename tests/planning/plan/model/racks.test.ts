import { topUnit, unitFromBottom, unitsOf } from "../../../../src/planning/plan/model";
import type { TableRow } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const arrays = [
  { array: "high", rack: "r1", bottomUnit: 6, units: 2, weightKg: 30, watts: 100 },
  { array: "low", rack: "R1", bottomUnit: 1, units: 4, weightKg: 46.5, watts: 250 },
  { array: "loose", rack: "R1", units: 4, weightKg: 10 },
  { array: "elsewhere", rack: "R2", bottomUnit: 1, units: 4, weightKg: 99 },
];
const switches = [{ switch: "sw", rack: "R1", bottomUnit: 6, watts: 50 }, { switch: "free", rack: "R1" }];

function contentsOf(more: TableRow<"racks"> = {}) {
  const model = modelOf({ racks: [{ rack: "R1", units: 12, numberedFrom: "bottom", ...more }], arrays, switches });
  return model.racks.of(model.rows("racks")[0]!);
}

describe("the contents of a rack", () => {
  test("are the arrays and switches whose unit is known, from the bottom up, an array before a switch at one height", () => {
    expect(contentsOf().devices.map(({ table, name, lowest, highest, kg }) => [table, name, lowest, highest, kg])).toEqual([
      ["arrays", "low", 1, 4, 46.5], ["arrays", "high", 6, 7, 30], ["switches", "sw", 6, 6, null],
    ]);
    expect(contentsOf().devices[0]!.row).toMatchObject({ array: "low" });
  });

  test("name those whose unit is not known", () => {
    expect(contentsOf().unplaced).toEqual(["loose", "free"]);
  });

  test("weigh what all arrays weigh, and give off the heat of all devices, wherever they stand", () => {
    expect(contentsOf()).toMatchObject({ kg: 86.5, heat: 400 });
  });

  test("weigh and heat nothing where nothing is said of an array", () => {
    const model = modelOf({ racks: [{ rack: "R1" }], arrays: [{ array: "a", rack: "R1" }, { array: "b", rack: "R1", weightKg: 30, watts: 100 }] });
    expect(model.racks.of(model.rows("racks")[0]!)).toMatchObject({ kg: 30, heat: 100 });
  });

  test("are counted from the bottom where the rack counts from the top, if its height is known", () => {
    expect(contentsOf({ numberedFrom: "top" }).devices.map(({ name, lowest, highest }) => [name, lowest, highest])).toEqual([["high", 7, 8], ["sw", 7, 7], ["low", 12, 15]]);
    expect(contentsOf({ numberedFrom: "top", units: null })).toMatchObject({ devices: [], unplaced: ["high", "low", "loose", "sw", "free"] });
  });

  test("are listed rack by rack, the first of two of one name, and none without a name", () => {
    const { racks } = modelOf({ racks: [{ rack: "R1", units: 1 }, { rack: "r1", units: 2 }, { rack: null, units: 3 }, { rack: "R2", units: 4 }], arrays });
    expect(racks.all().map(({ rack, devices }) => [rack.units, devices.map(({ name }) => name)])).toEqual([[1, ["low", "high"]], [4, ["elsewhere"]]]);
  });
});

describe("the units of a rack", () => {
  const [bottom, top, open] = modelOf({ racks: [{ rack: "a", units: 12, numberedFrom: "bottom" }, { rack: "b", units: 12, numberedFrom: "top" }, { rack: "c", numberedFrom: "top" }] }).rows("racks");
  const [device] = contentsOf().devices;

  test("are counted from the bottom, whichever way the rack counts", () => {
    expect([unitFromBottom(1, bottom!), unitFromBottom(1, top!), unitFromBottom(12, top!), unitFromBottom(1, open!)]).toEqual([1, 12, 1, null]);
  });

  test("are written as the rack counts them", () => {
    expect(unitsOf({ ...device!, lowest: 2, highest: 4 }, bottom!)).toBe("units 2 to 4");
    expect(unitsOf({ ...device!, lowest: 2, highest: 4 }, top!)).toBe("units 9 to 11");
    expect(unitsOf({ ...device!, lowest: 12, highest: 12 }, top!)).toBe("unit 1");
    expect(unitsOf({ ...device!, lowest: 3, highest: 3 }, bottom!)).toBe("unit 3");
    expect(unitsOf({ ...device!, lowest: 3, highest: 4 }, open!)).toBe("units 3 to 4");
  });

  test.each([[5, 3, 7, 3], [5, 1, 5, 5], [5, null, 5, 5], [5, 0, 5, 5]])("reach from %i with a height of %p up to %i, and to %i where the rack counts from the top", (from, units, up, fromTop) => {
    expect([bottom!, top!, null].map((rack) => topUnit(from, units, rack))).toEqual([up, fromTop, up]);
  });
});

describe("shelves in a rack", () => {
  const rack = { rack: "R1", units: 12, numberedFrom: "bottom" } as const;

  test("fill units, weigh and give off heat beside the arrays", () => {
    const model = modelOf({ racks: [rack], arrays, shelves: [{ array: "low", shelf: "S1", rack: "R1", bottomUnit: 8, units: 2, weightKg: 20, watts: 90 }] });
    const { devices, kg, heat } = model.racks.of(model.rows("racks")[0]!);
    expect(devices.map(({ table, name, lowest, highest }) => [table, name, lowest, highest])).toContainEqual(["shelves", "low S1", 8, 9]);
    expect([kg, heat]).toEqual([30 + 46.5 + 10 + 20, 100 + 250 + 90]);
  });

  test("are named where their place, height or weight is not known; a switch has no weight to know", () => {
    const both = [{ switch: "sw", rack: "R1", bottomUnit: 1, units: 1 }, { switch: "tall", rack: "R1", bottomUnit: 2 }];
    const model = modelOf({ racks: [rack], shelves: [{ array: "a", shelf: "S1", rack: "R1" }], switches: both });
    expect(model.racks.of(model.rows("racks")[0]!)).toMatchObject({ unplaced: ["a S1"], unweighed: ["a S1"], unmeasured: ["a S1", "tall"], kg: 0 });
  });
});
