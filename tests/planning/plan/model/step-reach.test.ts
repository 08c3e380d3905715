import { ownersOf, sectionOf } from "../../../../src/planning/plan/model";
import { forEachKinds, type ForEach } from "../../../../src/planning/plan/schema";
import { planSheets } from "../../../support/commissioning-plan";
import { workbookOf } from "../../../support/plain-workbook";
import { PlanModel } from "../../../../src/planning/plan/model";
import { modelOf } from "../../../support/plan-model";

describe("what a step reaches", () => {
  const model = modelOf({});

  test.each<[ForEach | "", string]>([
    ["", "Site Job"],
    ["site", "Site Job"],
    ["cluster", "Cluster Network Site Job"],
    ["pool", "Pool Cluster Network Site Job"],
    ["array", "Array Pool Cluster Rack Network Site Job"],
    ["controller", "Controller Array Pool Cluster Rack Network Site Job"],
    ["port", "Port Controller Array Pool Cluster Rack Network Site Job"],
    ["drive", "Drive Array Pool Cluster Rack Network Site Job"],
    ["prompt", "Prompt Array Pool Cluster Rack Network Site Job"],
  ])("in a section for each %p is %s, nearest first", (kind, layers) => {
    expect(model.reach.layersOf(kind).map(({ name }) => name).join(" ")).toBe(layers);
  });

  test("is known for every kind of section", () => {
    expect(Object.keys(forEachKinds)).toHaveLength(17);
  });

  test("has the columns of a table, derived fields, and nothing blank", () => {
    const [port, controller, array] = model.reach.layersOf("port");
    expect(port).toMatchObject({ name: "Port", table: "ports" });
    expect(["switch port", "ping size", "first controller"].every((field) => port!.fields.has(field))).toBe(true);
    expect(controller).toMatchObject({ table: null, fields: new Set(["controller", "first controller", "is subject"]) });
    expect(["bottom unit", "cluster act", "usable"].every((field) => array!.fields.has(field))).toBe(true);
    expect(["bay", "shelf", "serial"].every((field) => model.reach.layersOf("drive")[0]!.fields.has(field))).toBe(true);
    expect(port!.fields.has("")).toBe(false);
  });

  test("has the user's own columns too, from the first to the last of the table", () => {
    const sheets = Object.fromEntries(planSheets({ racks: [{ rack: "R1" }] }).map(({ name, values }) => [name, values]));
    const racks = sheets.Racks!.map((line, row) => (row === 3 ? [...line, " Colour ", null, "Beyond"] : line));
    const own = new PlanModel(workbookOf({ ...sheets, Racks: racks })).reach.layersOf("array").find(({ name }) => name === "Rack")!;
    expect(own.fields.has("colour")).toBe(true);
    expect(own.fields.has("beyond")).toBe(false);
  });

  test("leaves out what stands right beside a named table", () => {
    const [sheet] = workbookOf({ Racks: [["Mine", "Rack", "Site", "Colour", "Beside"], ["x", "R1", "Mill", "grey", "y"]] }).sheets;
    const named = { ...sheet!, tables: [{ name: "BayRacks", area: { row: 0, column: 1, rows: 2, columns: 3 } }] };
    const { fields } = new PlanModel({ sheets: [named] }).reach.layersOf("array").find(({ name }) => name === "Rack")!;
    expect(["mine", "colour", "beside"].map((field) => fields.has(field))).toEqual([false, true, false]);
  });

  test("is worked out once", () => {
    expect(model.reach.layersOf("array")).toBe(model.reach.layersOf("array"));
    expect(model.reach.layersOf("port")[2]).toBe(model.reach.layersOf("array")[0]);
  });
});

describe("the layers that a field may come from", () => {
  const owners = (kind: ForEach, field: string) => ownersOf(modelOf({}).reach.layersOf(kind), field).map(({ name }) => name);

  test.each<[ForEach, string, readonly string[]]>([
    ["port", "Units", ["Array", "Rack"]],
    ["port", " site ", ["Array", "Rack", "Network", "Site", "Job"]],
    ["array", "Rack.Units", ["Rack"]],
    ["array", "rack . depth mm", ["Rack"]],
    ["array", "Rack.Colour", []],
    ["site", "Rack.Units", []],
    ["array", "Colour", []],
    ["array", "Controller count", ["Array"]],
    ["drive", "Bay", ["Drive"]],
    ["array", "Bay", []],
  ])("in a section for each %s: %p is one of %p", (kind, field, names) => {
    expect(owners(kind, field)).toEqual(names);
  });
});

describe("the steps that have a place", () => {
  test("are those whose section is one of their own procedure, without case", () => {
    const { reach } = modelOf({
      procedures: [{ procedure: "One", section: "Start", forEach: "array" }, { procedure: "Two", section: "End" }],
      steps: [{ stepId: "1", procedure: "one", section: " START" }, { stepId: "2", procedure: "One", section: "End" }, { stepId: "3", procedure: "Two", section: "end" }],
    });
    expect(reach.steps().map(({ row, section }) => [row.stepId, section.section, section.forEach])).toEqual([["1", "Start", "array"], ["3", "End", ""]]);
  });

  test("have a section that is told apart by procedure and section", () => {
    expect(sectionOf({ procedure: "A", section: "B c" })).toBe(sectionOf({ procedure: " a", section: "b C " }));
    expect(sectionOf({ procedure: "A b", section: "c" })).not.toBe(sectionOf({ procedure: "A", section: "b c" }));
  });
});
