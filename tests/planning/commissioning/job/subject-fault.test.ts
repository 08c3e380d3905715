import { subjectFault } from "../../../../src/planning/commissioning/job";
import { builtInProcedures } from "../../../../src/planning/commissioning/procedure";
import { PlanModel } from "../../../../src/planning/plan/model";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { planWorkbook, smallPlan } from "../../../support/commissioning-plan";

/** Says what is wrong with the subject of a job that follows a built-in procedure. */
function faultOf(procedure: string, job: Partial<TableRow<"jobs">>, more: TableRows = {}): string | null {
  const small = smallPlan();
  const rows = { ...small, ...builtInProcedures, ...more, jobs: [{ ...small.jobs![0]!, procedure, ...job }] };
  const model = new PlanModel(planWorkbook(rows));
  return subjectFault(model, model.rows("jobs")[0]!);
}

const shelves: TableRows = { shelves: [{ array: "n-1", shelf: "S1", rack: "N1", bottomUnit: 6 }, { array: "n-2", shelf: "S1" }] };

describe("a job of a procedure about one part of one array", () => {
  test.each([
    ["Replace a controller", "B", {}], ["Replace a controller", "n-1 controller b", {}],
    ["Replace a drive", "3", {}], ["Replace a drive", "Bay 3", {}],
    ["Add a drive shelf", "S1", shelves], ["Add a drive shelf", "shelf s1", shelves],
  ])("%s is told by its subject %s", (procedure, subject, more) => {
    expect(faultOf(procedure, { arrays: "n-1", subject }, more)).toBeNull();
  });

  test.each([
    ["no subject, which would mean every one of them", { arrays: "n-1" },
      'Job "North hall" follows "Replace a controller", which is about one controller. Write under Subject in Jobs which one, such as B.'],
    ["no array named at a site of two", { subject: "B" },
      'Job "North hall" follows "Replace a controller", which is about one controller, and has 2 arrays. Name the one under Arrays in Jobs.'],
    ["a controller that the array does not have", { arrays: "n-1", subject: "C" }, 'n-1 has no controller "C" in the plan. Write its row, or under Subject the name that it has there.'],
  ])("is refused with %s", (_, job, sentence) => {
    expect(faultOf("Replace a controller", job)).toBe(sentence);
  });

  test("is refused with a shelf that has no row, as its place and its feeds stand there, and with a bay beyond its drives", () => {
    expect(faultOf("Add a drive shelf", { arrays: "n-1", subject: "S1" })).toContain('n-1 has no shelf "S1"');
    expect(faultOf("Add a drive shelf", { arrays: "n-1", subject: "S2" }, shelves)).toContain('n-1 has no shelf "S2"');
    expect(faultOf("Replace a drive", { arrays: "n-1", subject: "bay 7" })).toContain('n-1 has no drive "bay 7"');
    expect(faultOf("Replace a drive", { arrays: "n-1", subject: "bay 6" })).toBeNull();
  });
});

test("a job that erases arrays names them: empty, it would be about all at the site", () => {
  expect(faultOf("Take an array out of service", {})).toBe('Job "North hall" follows "Take an array out of service", which wants its arrays named. Write them under Arrays in Jobs.');
  expect(faultOf("Take an array out of service", { arrays: "n-1, n-2" })).toBeNull();
});

test("a job that joins arrays to a cluster that exists names them: empty, it would empty those that hold its data", () => {
  const clusters = (state: "new" | "existing") => ({ clusters: smallPlan().clusters!.map((row) => ({ ...row, state })) });
  expect(faultOf("Add an array to a live cluster", {}, clusters("existing"))).toBe(
    'Job "North hall" empties drives, and cluster "North" is in use. Write under Arrays in Jobs which arrays are new.',
  );
  expect(faultOf("Add an array to a live cluster", { arrays: "n-2" }, clusters("existing"))).toBeNull();
  expect(faultOf("Install a rack array", {}, clusters("new"))).toBeNull();
});

test.each(["Install a rack array", "Yearly check", "Change firmware", "Site survey"])("a job of %s asks for no subject", (procedure) => {
  expect(faultOf(procedure, {})).toBeNull();
});
