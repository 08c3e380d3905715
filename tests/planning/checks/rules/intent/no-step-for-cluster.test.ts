import { noStepForCluster } from "../../../../../src/planning/checks/rules/intent/no-step-for-cluster";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds an installation whose arrays join a cluster that exists, or that another job creates", () => {
  const rows = sample();
  rows.jobs[1]!.procedure = "Install a rack array";
  expect(found(noStepForCluster, rows)).toEqual([
    'Jobs 6 Procedure: bi-array-1 joins "Scans", which is live: "Install a rack array" has no step for that. Follow one such as Add an array to a live cluster.',
  ]);
  rows.clusters[0]!.state = "existing";
  expect(cells(noStepForCluster, rows)).toEqual(["Jobs 5 Procedure", "Jobs 6 Procedure"]);
});

test("finds an array that is to be added to a live cluster and creates a new one", () => {
  const rows = sample();
  rows.jobs[2]!.procedure = "Add an array to a live cluster";
  expect(found(noStepForCluster, rows)).toEqual([
    'Jobs 7 Procedure: cs-array-1 creates "Deep Store": "Add an array to a live cluster" has no step for that. Follow one such as Install a rack array.',
  ]);
});

test("takes the sample plan, a closed job, other work, and a procedure of a firm's own that does not tell live clusters from others", () => {
  const rows = sample();
  expect(cells(noStepForCluster, rows)).toEqual([]);
  rows.jobs[1]!.procedure = "Yearly check";
  expect(cells(noStepForCluster, rows)).toEqual([]);
  rows.jobs[1]!.procedure = "Install a rack array";
  rows.jobs[1]!.state = "closed";
  expect(cells(noStepForCluster, rows)).toEqual([]);
  rows.jobs[1]!.state = "planned";
  for (const row of [...rows.procedures, ...rows.steps]) if (String(row.when ?? "").includes("Cluster live")) row.when = "Cluster act = join";
  expect(cells(noStepForCluster, rows)).toEqual([]);
});
