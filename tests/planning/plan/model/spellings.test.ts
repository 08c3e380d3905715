import { modelOf } from "../../../support/plan-model";

const { spellings } = modelOf({
  racks: [{ rack: "Rack-1" }, { rack: "RACK 2" }, { rack: "rack 2" }, { rack: "A.B" }, { rack: "AB" }, { rack: "a b" }, { rack: "--" }, { rack: "Öl/7" }, { rack: null, units: 3 }],
});

describe("names that differ in marks alone", () => {
  test.each([
    ["rack1", "Rack-1"], ["R_A_C_K 1", "Rack-1"], ["Rack 10", null], ["öl 7", "Öl/7"], ["Ol 7", null],
    ["Rack-2", "rack 2"], ["A-B", null], ["", null], ["??", null],
  ])("of %p are %p", (name, known) => {
    expect(spellings.alike("racks", name)).toBe(known);
  });

  test("are looked for in the table that is asked for", () => {
    expect(spellings.alike("sites", "rack1")).toBeNull();
  });
});
