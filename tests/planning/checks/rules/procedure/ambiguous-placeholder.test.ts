import { ambiguousPlaceholder } from "../../../../../src/planning/checks/rules/procedure/ambiguous-placeholder";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withStep(text: string, forEach = "array"): EditableRows {
  const rows = sample();
  rows.procedures = [{ procedure: "Install a rack array", section: "Rails", forEach }];
  rows.steps = [{ stepId: "X-1", procedure: "Install a rack array", section: "Rails", do: text, record: "tick" }];
  return rows;
}

test("finds a column of two tables where none is named", () => {
  expect(found(ambiguousPlaceholder, withStep("Units {{Units}}."))).toEqual([
    'Steps 5 Do: "Units" is a column of Array and of Rack; Array is taken. Write {{Array.Units}} or {{Rack.Units}}.',
  ]);
});

test("takes one that names its table, a column that only one has, and names of rows, which are the same everywhere", () => {
  expect(cells(ambiguousPlaceholder, withStep("{{Rack.Units}} {{Array.Units}} {{Serial}} {{Site}} {{Cluster}} {{Rack}}"))).toEqual([]);
});
