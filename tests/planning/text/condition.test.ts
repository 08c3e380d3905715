import { conditionHolds, parseCondition } from "../../../src/planning/text";
import { problemOf } from "../../support/sentence";

describe("a condition is comparisons joined by and", () => {
  test.each([
    ["", []],
    ["  ", []],
    ["Cluster act = join", [{ field: "Cluster act", value: "join" }]],
    ["Cluster act=join", [{ field: "Cluster act", value: "join" }]],
    [" Site = North and Role = data AND Rack = ", [{ field: "Site", value: "North" }, { field: "Role", value: "data" }, { field: "Rack", value: "" }]],
    ["Note = a = b", [{ field: "Note", value: "a = b" }]],
    ["Brand = Sand", [{ field: "Brand", value: "Sand" }]],
  ])("%j", (text, comparisons) => {
    expect(parseCondition(text, "When")).toEqual(comparisons);
  });

  test.each(["always", "= join", "Site = North and later"])("%j is refused with what to write", (text) => {
    expect(problemOf(() => parseCondition(text, "When"))).toMatchObject({
      kind: "invalid",
      argument: "When",
      received: text,
      sentence: `When "${text}" is no condition. Write field = value, joined by and, such as Cluster act = join.`,
    });
  });
});

describe("a condition holds when every comparison does", () => {
  const fields: Readonly<Record<string, string>> = { Site: " North ", Role: "DATA", Rack: "" };
  test.each([
    ["", true],
    ["Site = north", true],
    ["Site = north and Role = data", true],
    ["Site = north and Role = management", false],
    ["Rack = ", true],
    ["Rack = R1", false],
  ])("%j: %p", (text, holds) => {
    expect(conditionHolds(parseCondition(text, "When"), (name) => fields[name]!)).toBe(holds);
  });
});
