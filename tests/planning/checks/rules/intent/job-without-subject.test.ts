import { jobWithoutSubject } from "../../../../../src/planning/checks/rules/intent/job-without-subject";
import { cells, found, sample } from "../../../../support/plan-rows";

const withJob = (job: Readonly<Record<string, string>>) => {
  const rows = sample();
  rows.jobs[1] = { ...rows.jobs[1]!, procedure: "Replace a controller", ...job };
  return rows;
};

test("finds a job that replaces a controller and does not say which, or of which array", () => {
  expect(found(jobWithoutSubject, withJob({ arrays: "bi-array-1" }))).toEqual([
    'Jobs 6 Subject: Job "Bindery installation" follows "Replace a controller", which is about one controller. Write under Subject in Jobs which one, such as B.',
  ]);
  expect(cells(jobWithoutSubject, withJob({ subject: "B" }))).toEqual(["Jobs 6 Subject"]);
  expect(cells(jobWithoutSubject, withJob({ arrays: "bi-array-1", subject: "Z" }))).toEqual(["Jobs 6 Subject"]);
});

test("takes the sample plan, a job that says it, and a closed one", () => {
  expect(cells(jobWithoutSubject, sample())).toEqual([]);
  expect(cells(jobWithoutSubject, withJob({ arrays: "bi-array-1", subject: "B" }))).toEqual([]);
  expect(cells(jobWithoutSubject, withJob({ state: "closed" }))).toEqual([]);
});
