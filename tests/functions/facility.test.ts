import { circuitUse, current, heat, liftLimit, rackFit } from "../../src/functions/facility";
import { cellAnswer } from "../support/cell-answer";

describe("facility functions", () => {
  test("blank optional arguments mean their defaults", () => {
    expect(heat(1000, "")).toBe(heat(1000));
    expect(heat(1000, "BTU/h")).toBe(heat(1000));
    expect(current(1840, 230, null, "")).toBe(8);
    expect(circuitUse(1840, 230, 16)).toBe(0.625);
    expect(circuitUse(1840, 230, 16, "80%", 1, 1)).toBe(0.625);
    expect(liftLimit(40, 30, 120)).toBe(liftLimit(40, 30, 120, 0, 0.2, 1, "Fair"));
    expect(liftLimit(40, 30, 120, 45, "", "", "", "", "")).toBe(liftLimit(40, 30, 120, 45, 0.2, 1, "fair", 40, 45));
  });

  test("RACKFIT answers in the order of the items", () => {
    const items = [["Name", "Units", "kg", "Bottom unit"], ["Array 1", 4, 60, ""], ["", "", "", ""], ["Switch", 1, 5, 40], ["Array 2", 2, 90, ""]];
    expect(rackFit(42, items, [["Bottom unit", "Units"], [1, 2]])).toEqual([
      ["Item", "Bottom unit", "Top unit"],
      ["Array 1", 5, 8],
      ["Switch", 40, 40],
      ["Array 2", 3, 4],
    ]);
  });

  test("LIFTLIMIT takes reach and turn at the far end from their own arguments, and the lower of both ends", () => {
    // 23 kg, hands 25 cm away at 75 cm where it begins: nothing stands against it there; 50 cm and 90 degrees at the far end.
    expect(liftLimit(25, 75, 75, 0, 0.2, 1, "good", 50, 90)).toBeCloseTo(23 * 0.5 * (1 - 0.0032 * 90), 12);
    expect(liftLimit(50, 75, 75, 90, 0.2, 1, "good", 25, 0)).toBe(liftLimit(50, 75, 75, 90, 0.2, 1, "good"));
    // What is left out at the far end is as where the lift begins.
    expect(liftLimit(25, 75, 75, 90, 0.2, 1, "good", 50)).toBeCloseTo(23 * 0.5 * (1 - 0.0032 * 90), 12);
    expect(liftLimit(50, 75, 75, 0, 0.2, 1, "good", "", 90)).toBeCloseTo(23 * 0.5 * (1 - 0.0032 * 90), 12);
  });

  test("LIFTLIMIT is 0 where the hands are out of reach", () => {
    expect(liftLimit(64, 30, 120)).toBe(0);
    expect(liftLimit(40, 0, 176)).toBe(0);
    expect(liftLimit(40, 30, 120, 0, 0.2, 1, "fair", 64)).toBe(0);
  });

  test.each<[string, () => unknown, string]>([
    ["no watts", () => heat(0), "#VALUE! watts is 0. Write a number above 0 and at most 1000000000, such as 1000."],
    ["an unknown unit", () => heat(1000, "horses"), '#VALUE! unit is "horses". Choose "btu/h" or "tons".'],
    ["a power factor over 1", () => current(1840, 230, 1.2), "#VALUE! powerFactor is 1.2. Write a number above 0 and at most 1, such as 0.95."],
    ["a percentage without its sign", () => circuitUse(1840, 230, 16, 80), "#VALUE! continuousShare is 80, which means 8000%. Write 80% or 0.8."],
    ["two phases", () => current(1840, 230, 1, 2), "#VALUE! phases is 2. Choose 1 or 3."],
    ["an item that has no units", () => rackFit(42, [["a", "", 5]]), "#VALUE! items row 1 units is blank. Write a whole number from 1 to 100, such as 42."],
    ["an item outside the rack", () => rackFit(42, [["a", 4, 5, 41]]), "#VALUE! items row 1: units 41 to 44 are outside a rack of 42. Write a lower bottom unit."],
    ["items in each other's units", () => rackFit(42, [["a", 4, 5, 3], ["b", 1, 5, 4]]), '#VALUE! items row 2 at unit 4 meets "a" in unit 4. Write another bottom unit.'],
    ["no room", () => rackFit(4, [["a", 4, 5], ["b", 1, 5]]), "#N/A items need 5 rack units and 4 are free. Take a larger rack or fewer items."],
    ["more than eight hours", () => liftLimit(40, 30, 120, 0, 0.2, 9), "#VALUE! hours is 9. Write a number above 0 and at most 8, such as 2."],
    ["no reach at the end", () => liftLimit(40, 30, 120, 0, 0.2, 1, "fair", 0), "#VALUE! reachAtEnd is 0. Write a number above 0 and at most 300, such as 60."],
    ["a turn at the end that is text", () => liftLimit(40, 30, 120, 0, 0.2, 1, "fair", 60, "45"), '#VALUE! angleAtEnd is the text "45". Write it as a number, without quotes.'],
    ["an unknown grip", () => liftLimit(40, 30, 120, 0, 0.2, 1, "firm"), '#VALUE! grip is "firm". Choose "fair" or "good" or "poor".'],
  ])("answers %s with a sentence", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });
});
