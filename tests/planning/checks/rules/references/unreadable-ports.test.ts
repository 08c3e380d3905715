import { unreadablePorts } from "../../../../../src/planning/checks/rules/references/unreadable-ports";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds controllers and ports that cannot be read, of a model once, and of an array that says its own", () => {
  const rows = sample();
  Object.assign(rows.models[0]!, { controllers: "A,A", ports: "3-0" });
  rows.arrays[2]!.ports = "0,,2";
  expect(cells(unreadablePorts, rows)).toEqual(["Models 5 Controllers", "Models 5 Ports", "Arrays 7 Ports"]);
  expect(found(unreadablePorts, rows)[0]).toBe('Models 5 Controllers: Controllers "A,A" names "A" twice. Write a count such as 2, or names such as "A,B".');
});

test("takes counts, names and runs", () => {
  const rows = sample();
  Object.assign(rows.models[0]!, { controllers: "2", ports: "0-2" });
  rows.arrays[2]!.ports = "e0, e1, e2";
  expect(cells(unreadablePorts, rows)).toEqual([]);
});
