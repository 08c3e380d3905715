import { uncomparableExpectation } from "../../../../../src/planning/checks/rules/procedure/uncomparable-expectation";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withStep(record: string, expect: string): EditableRows {
  const rows = sample();
  rows.procedures = [{ procedure: "Install a rack array", section: "Rails", forEach: "array" }];
  rows.steps = [{ stepId: "X-1", procedure: "Install a rack array", section: "Rails", do: "Do it.", record, expect }];
  return rows;
}

test.each([
  ["number", "a few", "Expect"],
  ["number", "about {{Drives}}", "Expect"],
  ["size", "large", "Expect"],
  ["address", "the first one", "Expect"],
  ["address", "10.1.{{VLAN}}.{{Colour}}x", "Expect"],
  ["date", "soon", "Expect"],
  ["choice:Free|Taken", "Busy", "Expect"],
  ["choice:Free", "Free", "Record"],
  ["mood", "good", "Record"],
])("finds that a record of %s cannot be compared with %s", (record, text, column) => {
  expect(cells(uncomparableExpectation, withStep(record, text))).toEqual([`Steps 5 ${column}`]);
});

test.each([
  ["number", "12"],
  ["number", "{{Drives}}"],
  ["number", "{{Drives}}.5"],
  ["size", "12 TB"],
  ["address", "{{Shared address}}"],
  ["choice:Free|Taken", "Free"],
  ["text", "anything {{Array}}"],
  ["tick", "Done"],
  ["", "Done"],
])("takes a record of %s and %s", (record, text) => {
  expect(cells(uncomparableExpectation, withStep(record, text))).toEqual([]);
});

test("says what a text around fields cannot become", () => {
  expect(found(uncomparableExpectation, withStep("number: mm", "about {{Drives}}"))).toEqual([
    "Steps 5 Expect: However it is filled, this is no number to compare with. Write the field alone, or record text.",
  ]);
});
