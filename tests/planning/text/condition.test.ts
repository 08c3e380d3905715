import { conditionHolds, parseCondition } from "../../../src/planning/text";
import { problemOf } from "../../support/sentence";

const is = (field: string, ...values: string[]) => ({ field, operator: "=", values });

describe("a condition is comparisons joined by and", () => {
  test.each([
    ["", []],
    ["  ", []],
    ["Cluster act = join", [is("Cluster act", "join")]],
    ["Cluster act=join", [is("Cluster act", "join")]],
    [" Site = North and Role = data AND Rack = ", [is("Site", "North"), is("Role", "data"), is("Rack", "")]],
    ["Note = a = b", [is("Note", "a = b")]],
    ["Site <> North|South", [{ field: "Site", operator: "<>", values: ["North", "South"] }]],
    ["Drives > 24 and Controllers<3", [{ field: "Drives", operator: ">", values: ["24"] }, { field: "Controllers", operator: "<", values: ["3"] }]],
    ["Brand = Sand", [is("Brand", "Sand")]],
  ])("%j", (text, comparisons) => {
    expect(parseCondition(text, "When")).toEqual(comparisons);
  });

  test.each(["always", "= join", "Site = North and later", "Cluster act == join", "Drives => 24", "Drives =< 24", "Drives >= 24", "Drives < > 24"])("%j is refused with what to write", (text) => {
    expect(problemOf(() => parseCondition(text, "When"))).toMatchObject({
      kind: "invalid",
      argument: "When",
      received: text,
      sentence: `When "${text}" is no condition. Write field = value, joined by and, such as Cluster act = join.`,
    });
  });
});

test("a number must stand behind > and <", () => {
  expect(problemOf(() => parseCondition("Drives > many", "When"))).toMatchObject({ sentence: 'When "Drives > many" compares with no number. Write digits behind >, such as Drives > 2.' });
});

describe("a condition holds when every comparison does", () => {
  const fields: Readonly<Record<string, string>> = { Site: " North ", Role: "DATA", Rack: "", Drives: "24" };
  test.each([
    ["", true],
    ["Site = north", true],
    ["Site = north and Role = data", true],
    ["Site = north and Role = management", false],
    ["Rack = ", true],
    ["Rack = R1", false],
    ["Site = South|north", true],
    ["Site <> South|East", true],
    ["Site <> South|North", false],
    ["Rack <> ", false],
    ["Site <> ", true],
    ["Drives > 23", true],
    ["Drives > 24", false],
    ["Drives < 24.5", true],
    ["Site > 1", false],
    ["Rack < 1", false],
  ])("%j: %p", (text, holds) => {
    expect(conditionHolds(parseCondition(text, "When"), (name) => fields[name]!)).toBe(holds);
  });
});
