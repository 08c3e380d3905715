import { unknownPlaceholder } from "../../../../../src/planning/checks/rules/procedure/unknown-placeholder";
import { withCell } from "../../../../support/plain-workbook";
import { cells, sample, workbookWith, type EditableRows } from "../../../../support/plan-rows";

function withStep(step: Record<string, string>, forEach = "array"): EditableRows {
  const rows = sample();
  rows.procedures = [{ procedure: "Install a rack array", section: "Rails", forEach }];
  rows.steps = [{ stepId: "X-1", procedure: "Install a rack array", section: "Rails", do: "Do it.", record: "tick", ...step }];
  return rows;
}

test.each([
  ["a name that no table has", { do: "Look at {{Colour}}." }, "Steps 5 Do"],
  ["a column of a table out of reach", { expect: "{{Switch port}}" }, "Steps 5 Expect"],
  ["a column that the table it names lacks", { caution: "{{Rack.Serial}}" }, "Steps 5 Caution"],
  ["a section of the template language", { do: "{{#Array}}x{{/Array}}" }, "Steps 5 Do"],
  ["braces that do not close", { do: "Look at {{Array" }, "Steps 5 Do"],
  ["a field in When that no table has", { when: "Colour = red" }, "Steps 5 When"],
  ["a When that is no condition", { when: "always" }, "Steps 5 When"],
])("finds %s", (_, step, cell) => {
  expect(cells(unknownPlaceholder, withStep(step))).toEqual([cell]);
});

test("takes columns in reach, named outright, derived, and of the user's own", () => {
  const rows = withStep({ do: "{{Array}} {{Rack.Units}} {{Prefix}} {{Time servers}}", expect: "{{Top unit}}", when: "Cluster act = join" });
  const workbook = withCell(workbookWith(rows), "Racks", 3, 8, "Paint");
  const racks = { ...workbook, sheets: workbook.sheets.map((sheet) => (sheet.name === "Racks" ? { ...sheet, tables: [] } : sheet)) };
  expect(cells(unknownPlaceholder, racks)).toEqual([]);
  expect(cells(unknownPlaceholder, withStep({ do: "{{Switch}} {{Ping size}} {{Controller}}" }, "port"))).toEqual([]);
  expect(cells(unknownPlaceholder, withStep({ do: "{{Bay}} {{Serial}}" }, "drive"))).toEqual([]);
});

test("looks at prompts too", () => {
  const rows = sample();
  rows.prompts[1]!.value = "{{Shared adress}}";
  expect(cells(unknownPlaceholder, rows)).toEqual(["Prompts 6 Value"]);
});
