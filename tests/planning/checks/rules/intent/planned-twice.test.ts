import { plannedTwice } from "../../../../../src/planning/checks/rules/intent/planned-twice";
import { cells, found, sample } from "../../../../support/plan-rows";

const again = { id: "J0009", job: "Once more", site: "Reading Room", procedure: "Install a rack array", state: "planned" };

test("finds an open job that installs an array of another", () => {
  const rows = sample();
  rows.jobs.push({ ...again, arrays: "rr-array-2" });
  expect(found(plannedTwice, rows)).toEqual(["Jobs 8 Arrays: Once more would install rr-array-2, and so would Reading Room installation. Name in each the arrays that it is about."]);
});

test("takes a job that empties no drives, one of other arrays, and a closed one, which another rule tells", () => {
  const rows = sample();
  rows.jobs.push({ ...again, procedure: "Yearly check" });
  rows.jobs[0]!.arrays = "rr-array-1";
  rows.jobs.push({ ...again, id: "J0010", arrays: "rr-array-2" });
  rows.jobs[2]!.state = "closed";
  rows.jobs.push({ ...again, id: "J0011", site: "Cold Store" });
  expect(cells(plannedTwice, rows)).toEqual([]);
});
