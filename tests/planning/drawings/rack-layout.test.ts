import { describeRack, layoutRack } from "../../../src/planning/drawings";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { snapshotOf } from "../../support/plain-workbook";

function rackOf(rows: TableRows, name = "R1") {
  const model = new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows)));
  return layoutRack(model.racks.all().find(({ rack }) => rack.rack === name)!);
}

const rack = { rack: "R1", site: "Mill", units: 12, numberedFrom: "bottom", limitKg: 300 } as const;

describe("the layout of a rack", () => {
  test("lists arrays and switches of that rack alone, from the lowest unit up, without case", () => {
    const { devices } = rackOf({
      racks: [rack, { rack: "R2", site: "Mill", units: 12 }],
      arrays: [
        { array: "high", rack: "r1", bottomUnit: 6, units: 2, weightKg: 30 }, { array: "low", rack: "R1", bottomUnit: 1, units: 4, weightKg: 46 },
        { array: "elsewhere", rack: "R2", bottomUnit: 1, units: 4 },
      ],
      switches: [{ switch: "sw", rack: "R1", bottomUnit: 12, units: 1 }],
    });
    expect(devices.map(({ name, lowest, highest, fault }) => [name, lowest, highest, fault])).toEqual([["low", 1, 4, null], ["high", 6, 7, null], ["sw", 12, 12, null]]);
  });

  test.each([
    ["share a unit", 4, 2, "overlaps"],
    ["touch", 5, 2, null],
    ["reach above the top", 12, 2, "outside"],
    ["begin below the first unit", 0, 1, "outside"],
  ])("marks units that %s", (_, bottomUnit, units, fault) => {
    const { devices } = rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", bottomUnit: 1, units: 4 }, { array: "b", rack: "R1", bottomUnit, units }] });
    expect(devices.find(({ name }) => name === "b")!.fault).toBe(fault);
  });

  test("names what has no unit yet instead of leaving it out", () => {
    const layout = rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", units: 4 }] });
    expect(layout.unplaced).toEqual(["a"]);
  });

  test("counts a unit once that two things fill, and adds the weights up", () => {
    const layout = rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", bottomUnit: 1, units: 4, weightKg: 46 }, { array: "b", rack: "R1", bottomUnit: 4, units: 2, weightKg: 30 }] });
    expect(describeRack(layout)).toBe("R1: 12 units, numbered from the bottom, 5 filled. Arrays and shelves weigh 76 kg of 300 kg. a in units 1 to 4 (overlaps), b in units 4 to 5 (overlaps).");
  });
});
