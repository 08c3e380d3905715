import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";
import { problemOf } from "../../../support/sentence";

const rows = {
  sites: [{ site: "Mill" }, { site: "Yard" }],
  clusters: [{ cluster: "C", state: "new" }, { cluster: "E", state: "existing" }, { cluster: "Blank" }],
  pools: [{ pool: "P", cluster: "C" }, { pool: "Q", cluster: "none such" }, { pool: "R" }, { pool: "S", cluster: "E" }],
  arrays: [
    { array: "a1", site: "Mill", cluster: "C", clusterOrder: 3, pool: "P" },
    { array: "b1", site: "Mill", cluster: "E", clusterOrder: 2, pool: "R" },
    { array: "loose", site: "Mill", pool: "r" },
    { array: "a2", site: "mill", cluster: "c", clusterOrder: 1, pool: "Q" },
    { array: "a3", site: "Mill", cluster: "C", pool: "P" },
    { array: "far", site: "Yard", cluster: "C", clusterOrder: 2, pool: "Q" },
    { array: "b2", site: "Mill", cluster: "E", clusterOrder: 2 },
    { array: "b3", site: "Mill", cluster: "E", clusterOrder: 1, pool: "Q" },
    { array: "lost", site: "Mill", cluster: "nobody", clusterOrder: 1 },
    { array: "fresh", site: "Mill", cluster: "Blank", clusterOrder: 1 },
  ],
} satisfies TableRows;

function placesOf(job: TableRow<"jobs">) {
  const model = modelOf({ ...rows, jobs: [{ job: "J", site: "Mill", ...job }] });
  return model.places.of(model.rows("jobs")[0]!);
}

const model = modelOf(rows);

describe("the places of a job", () => {
  test("are its site and all arrays there; those of one cluster stand in cluster order, the others and the places of all stay", () => {
    const { site, arrays } = placesOf({ site: " MILL" });
    expect(site.site).toBe("Mill");
    expect(arrays.map(({ array }) => array)).toEqual(["a2", "b3", "loose", "a1", "a3", "b1", "b2", "lost", "fresh"]);
  });

  test("are the arrays that it names, each once, in the order of the table, wherever they stand", () => {
    expect(placesOf({ arrays: "loose, FAR,, a1 , far" }).arrays.map(({ array }) => array)).toEqual(["far", "loose", "a1"]);
  });

  test("are sorted by cluster order within a cluster only: arrays of none stay as the table has them", () => {
    const apart = modelOf({ sites: rows.sites, jobs: [{ job: "J", site: "Mill" }], arrays: [{ array: "x", site: "Mill", clusterOrder: 2 }, { array: "y", site: "Mill", clusterOrder: 1 }] });
    expect(apart.places.of(apart.rows("jobs")[0]!).arrays.map(({ array }) => array)).toEqual(["x", "y"]);
  });

  test("are no arrays where none stands at the site", () => {
    const empty = modelOf({ sites: rows.sites, jobs: [{ job: "J", site: "Yard" }] });
    expect(empty.places.of(empty.rows("jobs")[0]!).arrays).toEqual([]);
  });

  test.each([
    ["a site that nobody has", { site: "Hill" }, "Site", 'Job "J" is at "Hill", which the table Sites does not have. Write one of its sites.'],
    ["no site", { site: null }, "Site", 'Job "J" is at a blank, which the table Sites does not have. Write one of its sites.'],
    ["an array that nobody has", { arrays: "a1, a9" }, "Arrays", 'Job "J" names array "a9", which the table Arrays does not have. Write one of its arrays.'],
  ])("are refused with %s", (_, job, argument, sentence) => {
    expect(problemOf(() => placesOf(job))).toMatchObject({ kind: "invalid", argument, sentence });
  });
});

describe("the home of steps that stand once in the whole plan", () => {
  test.each([["C", "a2"], ["e", "b3"], ["nobody", "lost"], ["none", null], ["", null]])("is, of cluster %p, the array of the lowest order: %p", (cluster, home) => {
    expect(model.places.homeOfCluster(cluster)?.array ?? null).toBe(home);
  });

  test("is, of two arrays of one order, the first", () => {
    const alike = modelOf({ arrays: [{ array: "x", cluster: "C" }, { array: "y", cluster: "C", clusterOrder: 2 }, { array: "z", cluster: "C", clusterOrder: 2 }] });
    expect(alike.places.homeOfCluster("C")?.array).toBe("y");
    expect(modelOf({ arrays: [{ array: "x", cluster: "C" }, { array: "y", cluster: "C" }] }).places.homeOfCluster("C")?.array).toBe("x");
  });

  test("is, of a pool, that of its cluster, else the lowest of its own arrays", () => {
    expect(model.rows("pools").map((pool) => model.places.homeOfPool(pool)?.array ?? null)).toEqual(["a2", "a2", "b1", "b3"]);
    expect(modelOf({ pools: [{ pool: "none" }] }).rows("pools").map((pool) => model.places.homeOfPool(pool))).toEqual([null]);
  });
});

test("a job creates a new cluster with the array of order 1, all others join; no cluster is no act, nor is one that is neither new nor existing", () => {
  expect(model.rows("arrays").map((array) => model.places.clusterActOf(array))).toEqual(["join", "join", "", "create", "join", "join", "join", "join", "", ""]);
});
