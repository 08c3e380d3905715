import { jobsInCircle } from "../../../../../src/planning/checks/rules/intent/jobs-in-circle";
import { cells, found, sample } from "../../../../support/plan-rows";

/** The jobs of the sample, each after what is said. */
function after(...names: readonly string[]) {
  const rows = sample();
  names.forEach((name, place) => (rows.jobs[place]!.after = name));
  return rows;
}

test("finds two jobs that wait for each other, a longer circle, and a job that waits for itself", () => {
  const [first, second, third] = sample().jobs.map(({ job }) => job!) as [string, string, string];
  expect(found(jobsInCircle, after(second, first))).toEqual([
    `Jobs 5 After: ${first} comes after ${second}, which waits for it in turn. Clear After of the one that can begin first.`,
    `Jobs 6 After: ${second} comes after ${first}, which waits for it in turn. Clear After of the one that can begin first.`,
  ]);
  expect(cells(jobsInCircle, after(second, third, first.toUpperCase()))).toEqual(["Jobs 5 After", "Jobs 6 After", "Jobs 7 After"]);
  expect(found(jobsInCircle, after("", second))).toEqual([`Jobs 6 After: ${second} waits for itself. Clear After of the one that can begin first.`]);
});

test("takes jobs one after the other, one that waits for a circle without being in it, and a circle that a closed job opens", () => {
  const [first, second, third] = sample().jobs.map(({ job }) => job!) as [string, string, string];
  expect(cells(jobsInCircle, after("", first, `${first}, ${second}`))).toEqual([]);
  expect(cells(jobsInCircle, after(second, first, second))).toEqual(["Jobs 5 After", "Jobs 6 After"]);
  const rows = after(second, third, first);
  rows.jobs[1]!.state = "closed";
  expect(cells(jobsInCircle, rows)).toEqual([]);
});
