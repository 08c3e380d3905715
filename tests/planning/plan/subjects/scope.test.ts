import { derivedFields, layerTables } from "../../../../src/planning/plan/schema";
import { lookupIn, planCellOf } from "../../../../src/planning/plan/subjects";
import { layerOf, layerOfFields, scopeOf } from "../../../../src/planning/plan/subjects/scope";
import { PlanModel } from "../../../../src/planning/plan/model";
import { workbookOf } from "../../../support/plain-workbook";

const model = new PlanModel(workbookOf({
  Racks: [["Table: Racks"], ["Rack", "Units", "Colour"], ["R1", 42, " green "]],
  Arrays: [["Table: Arrays"], ["Array", "Drive size", "Used", "Reserve", "Warranty until", "Rack", "Usable"], ["a", 4, "3.84TB", 0.125, 46173, "R1", 32]],
  Sites: [["Table: Sites"], ["Site", "Room"], ["Mill", "M.1"]],
  Jobs: [["Table: Jobs"], ["Job", "Site", "State"], ["J", "Mill", "OPEN"]],
}));
const rowOf = <Key extends "racks" | "arrays" | "sites" | "jobs">(key: Key) => model.rows(key)[0]!;
const layers = {
  Site: layerOf("Site", rowOf("sites")),
  Job: layerOf("Job", rowOf("jobs")),
  Array: layerOf("Array", rowOf("arrays"), { "Usable": "32 TB", "Cluster act": "join" }),
  Pool: layerOf("Pool", null),
  Cluster: layerOf("Cluster", null),
  Rack: layerOf("Rack", rowOf("racks")),
  Network: layerOf("Network", null),
};
const scope = scopeOf("array", layers);
const look = lookupIn(scope, "Step 1");

describe("a layer of fields", () => {
  test("shows sizes with their unit, shares in per cent, dates in ISO form and everything else as it stands", () => {
    expect(["Array", "Drive size", "Used", "Reserve", "Warranty until", "Colour"].map(look)).toEqual(["a", "4 TB", "3.84TB", "12.5%", "2026-05-31", "green"]);
  });

  test("has every column of its table, blank where the row or the table lacks it", () => {
    expect(["Serial", "Pool.Fill limit", "Shared address", "VLAN", "Depth mm"].map(look)).toEqual(["", "", "", "", ""]);
  });

  test("takes a derived field before a column of the same name", () => {
    expect(look("Usable")).toBe("32 TB");
  });

  test("of no table has what it is given and nothing else", () => {
    const controller = lookupIn(scopeOf("controller", { ...layers, Controller: layerOfFields("Controller", { "First controller": "yes" }) }), "Step 1");
    expect([controller("first controller"), controller("Controller.First controller"), controller("Rack.Units")]).toEqual(["yes", "yes", "42"]);
    expect(() => controller("Controller.Serial")).toThrow("which no table in reach has");
  });
});

describe("a field is looked up", () => {
  test("in the nearest layer that has it, or in the one that is named, without case", () => {
    expect(["rack", "Units", "Rack.Units", "RACK . units", "Job.Site", "state", "Job.State"].map(look)).toEqual(["R1", "", "42", "42", "Mill", "", "OPEN"]);
    expect(scope.map(({ name }) => name)).toEqual(["Array", "Pool", "Cluster", "Rack", "Network", "Site", "Job"]);
  });

  test.each(["Paint", "Rack.Paint", "Port.MTU", "constructor", "Rack.toString", "", "."])("and refused where no layer has %p", (name) => {
    expect(() => look(name)).toThrow(/^Step 1 names (".*"|a blank), which no table in reach has\. Write the header of a column, such as \{\{Array\}\}\.$/);
  });
});

describe("the cell of the plan behind a field", () => {
  test.each([
    ["Array", { table: "arrays", row: 2, column: "array" }],
    ["Rack.Units", { table: "racks", row: 2, column: "units" }],
    ["Room", { table: "sites", row: 2, column: "room" }],
    ["Warranty until", { table: "arrays", row: 2, column: "warrantyUntil" }],
    ["Serial", { table: "arrays", row: 2, column: "serial" }],
  ])("of %p is %p", (name, cell) => {
    expect(planCellOf(scope, name)).toEqual(cell);
  });

  test.each(["Cluster act", "Usable", "Rack.Colour", "Shared address", "Paint"])("of %p is none", (name) => {
    expect(planCellOf(scope, name)).toBeNull();
  });
});

test("only layers that a step can reach have derived fields", () => {
  for (const layer of Object.keys(derivedFields)) expect(Object.keys(layerTables)).toContain(layer);
});
