import { installedAgain } from "../../../../../src/planning/checks/rules/intent/installed-again";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a further installation at a site that names no arrays, and one that names an installed array", () => {
  const rows = sample();
  rows.jobs[0]!.state = "closed";
  rows.jobs.push({ id: "J0004", job: "Second rack", site: "Reading Room", procedure: "Install a rack array", state: "planned" });
  expect(found(installedAgain, rows)).toEqual(["Jobs 8 Arrays: Second rack would empty the drives of rr-array-1, which Reading Room installation installed. Name the new arrays here."]);
  rows.jobs[3]!.arrays = "rr-array-2";
  expect(found(installedAgain, rows)).toEqual(["Jobs 8 Arrays: Second rack would empty the drives of rr-array-2, which Reading Room installation installed. Name the new arrays here."]);
});

test("finds a workshop job that would burn in what stands at its site already", () => {
  const rows = sample();
  rows.jobs[0]!.state = "closed";
  rows.jobs.push({ id: "J0004", job: "Bench", site: "Reading Room", procedure: "Workshop preparation", state: "planned" });
  expect(found(installedAgain, rows)).toEqual(["Jobs 8 Arrays: Bench would empty the drives of rr-array-1, which Reading Room installation installed. Name the new arrays here."]);
});

test("takes new arrays, other work at the site, and an installation that is not closed", () => {
  const rows = sample();
  rows.jobs[0]!.state = "closed";
  rows.arrays.push({ ...rows.arrays[0]!, id: "A0007", array: "rr-array-3" });
  rows.jobs[0]!.arrays = "rr-array-1, rr-array-2";
  rows.jobs.push({ id: "J0004", job: "Third array", site: "Reading Room", procedure: "Install a rack array", arrays: "rr-array-3", state: "planned" });
  rows.jobs.push({ id: "J0005", job: "Year one", site: "Reading Room", procedure: "Yearly check", state: "planned" });
  rows.jobs.push({ id: "J0006", job: "Bindery once more", site: "Bindery", procedure: "Install a rack array", state: "planned" });
  expect(cells(installedAgain, rows)).toEqual([]);
});
