import { impossibleCondition } from "../../../../../src/planning/checks/rules/procedure/impossible-condition";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function withWhen(when: string, forEach = "array"): EditableRows {
  const rows = sample();
  rows.procedures = [{ procedure: "Install a rack array", section: "Rails", forEach }];
  rows.steps = [{ stepId: "X-1", procedure: "Install a rack array", section: "Rails", do: "Do it.", record: "tick", when }];
  return rows;
}

test.each([
  ["a value that is none of a column's choices", "Port sharing = both"],
  ["a value that follows from the plan but is no such", "Cluster act = merge"],
  ["a row that the table referred to lacks", "Rack = RR-R9"],
  ["two values of one field at once", "Cluster act = create and cluster act = join"],
])("finds %s", (_, when) => {
  expect(cells(impossibleCondition, withWhen(when))).toEqual(["Steps 5 When"]);
});

test.each([["Port sharing = ARRAY"], ["Cluster act = create"], ["Rack = rr-r2"], ["Model = anything"], ["Cluster ="], [""]])("takes %s", (when) => {
  expect(cells(impossibleCondition, withWhen(when))).toEqual([]);
});

test("says what a field can be, the first four where it can be more", () => {
  const rows = withWhen("Rack = RR-R9");
  expect(found(impossibleCondition, rows)).toEqual(['Steps 5 When: Rack is never "RR-R9", so this never appears. It can be RR-R1, RR-R2, BI-R1, BI-R2 and others.']);
  rows.racks.pop();
  expect(found(impossibleCondition, rows)).toEqual(['Steps 5 When: Rack is never "RR-R9", so this never appears. It can be RR-R1, RR-R2, BI-R1, BI-R2.']);
});

test("finds it in the condition of a section", () => {
  const rows = withWhen("");
  rows.procedures[0]!.when = "State = broken";
  expect(cells(impossibleCondition, rows)).toEqual(["Procedures 5 When"]);
});

test("asks nothing of a procedure that no open job follows", () => {
  const rows = withWhen("Port sharing = both");
  for (const job of rows.jobs) job.state = "closed";
  expect(cells(impossibleCondition, rows)).toEqual([]);
});

test("leaves a feed to what is written there, for it may name a phase", () => {
  expect(cells(impossibleCondition, withWhen("Feed A = CS-A/L9"))).toEqual([]);
});

test("says which two values a field cannot have at once", () => {
  expect(found(impossibleCondition, withWhen("Cluster act = create and cluster act = join"))).toEqual([
    'Steps 5 When: cluster act cannot be "create" and "join" at once, so this never appears. Keep one of them.',
  ]);
});
