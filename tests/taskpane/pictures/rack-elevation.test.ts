import { layoutRack } from "../../../src/planning/drawings";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { drawRack } from "../../../src/taskpane/pictures/rack-elevation";
import { snapshotOf } from "../../support/plain-workbook";

function rackOf(rows: TableRows, name = "R1") {
  const model = new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows)));
  return layoutRack(model.racks.all().find(({ rack }) => rack.rack === name)!);
}

const rack = { rack: "R1", site: "Mill", units: 12, numberedFrom: "bottom", limitKg: 300 } as const;

describe("the picture of a rack", () => {
  test("names what has no unit yet instead of leaving it out", () => {
    expect(drawRack(rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", units: 4 }] })).shapes.some(({ text }) => text?.includes("a has no place yet"))).toBe(true);
  });

  const yOf = (numberedFrom: "bottom" | "top", bottomUnit: number) => {
    const picture = drawRack(rackOf({ racks: [{ ...rack, numberedFrom }], arrays: [{ array: "a", rack: "R1", bottomUnit, units: 1 }] }));
    return Number(picture.shapes.find(({ attributes }) => attributes["class"] === "item arrays")!.attributes["y"]);
  };

  test("puts unit 1 where the rack counts from", () => {
    expect(yOf("bottom", 1)).toBeGreaterThan(yOf("bottom", 12));
    expect(yOf("top", 1)).toBeLessThan(yOf("top", 12));
    expect(yOf("top", 1)).toBe(yOf("bottom", 12));
  });

  test("says an overlap by a sign and a filling, not by colour alone", () => {
    const picture = drawRack(rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", bottomUnit: 1, units: 4 }, { array: "b", rack: "R1", bottomUnit: 4, units: 2 }] }));
    expect(picture.shapes.filter(({ attributes }) => attributes["class"] === "item alarm")).toHaveLength(2);
    expect(picture.shapes.filter(({ text }) => text?.startsWith("!"))).toHaveLength(2);
  });
});

test("a shelf stands in the picture of its rack, and what is not known of its weight is said", () => {
  const layout = rackOf({ racks: [rack], arrays: [{ array: "a", rack: "R1", bottomUnit: 1, units: 4, weightKg: 40 }], shelves: [{ array: "a", shelf: "S1", rack: "R1", bottomUnit: 5, units: 2 }] });
  const picture = drawRack(layout);
  expect(picture.shapes.filter(({ attributes }) => attributes["class"] === "item shelves")).toHaveLength(1);
  expect(picture.summary).toContain("Arrays and shelves weigh 40 kg of 300 kg, without a S1: not known.");
});
