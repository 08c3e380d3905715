import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { builtInProcedures } from "../../../../src/planning/commissioning/procedure";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import { expandJob, type JobStep } from "../../../../src/planning/commissioning/job/job-steps";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { sampleRows } from "../../../../src/planning/plan/set-up";
import { jobName, moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";

function stepsOf(rows: TableRows, job = 0): JobStep[] {
  const source = readCommissioningPlan(planWorkbook(rows));
  return expandJob(source.model, jobsOf(source)[job]!).sections.flatMap(({ steps }) => steps);
}

const keysOf = (rows: TableRows, job = 0): string[] => stepsOf(rows, job).map(({ key }) => key);
const small = smallPlan();

describe("the steps of a job", () => {
  test("run section by section, subject by subject, in table order", () => {
    expect(keysOf(small)).toEqual([
      "J0001/T-01/site",
      "J0001/T-10/A0001", "J0001/T-11/A0001", "J0001/T-12/A0001",
      "J0001/T-10/A0002", "J0001/T-11/A0002", "J0001/T-12/A0002", "J0001/T-13/A0002",
      "J0001/T-20/A0001.A.0", "J0001/T-21/A0001.A.0", "J0001/T-20/A0001.B.0", "J0001/T-21/A0001.B.0",
      "J0001/T-20/A0002.A.0", "J0001/T-21/A0002.A.0", "J0001/T-20/A0002.B.0", "J0001/T-21/A0002.B.0",
      "J0001/T-30/A0001.cluster",
      "J0001/T-90/site",
    ]);
  });

  test("carry the values of their own subject", () => {
    const shown = Object.fromEntries(stepsOf(small).map(({ key, expectation }) => [key.slice(6), expectation.shown]));
    expect(shown).toMatchObject({
      "T-01/site": "Agreed with Desk",
      "T-10/A0002": "N-0002",
      "T-11/A0001": "4",
      "T-12/A0001": "16 TB ±2%",
      "T-20/A0002.B.0": "192.0.2.4",
      "T-21/A0001.A.0": "8972",
    });
  });

  test("keep their keys when arrays, cluster and pool are renamed", () => {
    const renamed = {
      ...small,
      arrays: small.arrays!.map((row) => ({ ...row, array: `new-${String(row.array)}`, cluster: "South", pool: "South" })),
      ports: small.ports!.map((row) => ({ ...row, array: `new-${String(row.array)}` })),
      clusters: small.clusters!.map((row) => ({ ...row, cluster: "South" })),
      pools: small.pools!.map((row) => ({ ...row, pool: "South", cluster: "South" })),
    };
    expect(keysOf(renamed)).toEqual(keysOf(small));
  });

  test("know a port with an address of each family as two", () => {
    const dual = { ...small, ports: [small.ports![0]!, { ...small.ports![0]!, address: "2001:db8::1" }] };
    expect(keysOf(dual).filter((key) => key.includes("T-21"))).toEqual(["J0001/T-21/A0001.A.0", "J0001/T-21/A0001.A.0.v6"]);
    const sizes = stepsOf(dual).filter(({ stepId }) => stepId === "T-21").map(({ expectation }) => expectation.shown);
    // RFC 791 and RFC 792: 20 + 8 bytes of headers; RFC 8200 and RFC 4443: 40 + 8.
    expect(sizes).toEqual(["8972", "8952"]);
  });
});

describe("a cluster", () => {
  const installed = (rows: TableRows): TableRows => ({ ...rows, ...builtInProcedures, jobs: rows.jobs!.map((row) => ({ ...row, procedure: "Install a rack array" })) });
  const acts = (rows: TableRows, job = 0): string[] => keysOf(installed(rows), job).filter((key) => /INS-12[0-3]/.test(key)).map((key) => key.split("/").slice(1).join(" "));

  test("is created once and joined behind its gate by the second array", () => {
    expect(acts(small)).toEqual(["INS-120 A0001", "INS-121 A0002", "INS-122 A0002", "INS-123 A0002"]);
  });

  test("is created first even where its table has the arrays the other way round", () => {
    const [one, two] = small.arrays!;
    expect(acts({ ...small, arrays: [two!, one!] })[0]).toBe("INS-120 A0001");
  });

  test("over two sites has its steps once, on the job of the array of order 1", () => {
    const twoSites = {
      ...small,
      sites: [...small.sites!, { site: "South hall" }],
      arrays: small.arrays!.map((row, index) => (index === 1 ? { ...row, site: "South hall" } : row)),
      jobs: [...small.jobs!, { id: "J0002", job: "South hall", site: "South hall", procedure: "Try out" }],
    };
    expect(keysOf(twoSites, 0).filter((key) => key.includes("T-30"))).toHaveLength(1);
    expect(keysOf(twoSites, 1).filter((key) => key.includes("T-30"))).toHaveLength(0);
    expect(acts(twoSites, 1)).toEqual(["INS-121 A0002", "INS-122 A0002", "INS-123 A0002"]);
  });

  test("that exists is joined by a later job", () => {
    const later: TableRows = {
      ...small,
      clusters: small.clusters!.map((row) => ({ ...row, state: "existing" })),
      jobs: [...small.jobs!, { id: "J0002", job: "One more array", site: "North hall", procedure: "Try out", arrays: "n-2" }],
    };
    expect(acts(later, 1)).toEqual(["INS-121 A0002", "INS-122 A0002", "INS-123 A0002"]);
  });
});

describe("the built-in procedures", () => {
  const procedures = [...new Set(builtInProcedures.procedures.map(({ procedure }) => String(procedure)))];

  test.each(procedures)("%s can be worked out on the sample plan, every field filled", (procedure) => {
    const sample = sampleRows();
    const rows = { ...sample, ...builtInProcedures, jobs: sample.jobs!.map((row) => ({ ...row, procedure })) };
    for (let job = 0; job < sample.jobs!.length; job += 1) {
      const steps = stepsOf(rows, job);
      expect(steps.length).toBeGreaterThan(20);
      expect(steps.filter((one) => [one.do, one.caution, one.expectation.shown].join().includes("{{"))).toEqual([]);
    }
  });

  test("test failures after the first redundancy build and before capacity is put into use", () => {
    const sections = builtInProcedures.procedures.filter(({ procedure }) => procedure === "Install a rack array").map(({ section }) => section);
    const order = ["Rack and earth", "Rails and lift", "Drives by bay", "Power", "Create or join the cluster", "Redundancy build over", "Failure tests: cables", "Failure tests: controllers", "Failure tests: feeds", "Acceptance", "Put into use"];
    expect(order.map((section) => sections.indexOf(section))).toEqual([...order.keys()].map((index) => sections.indexOf(order[index]!)).sort((a, b) => a - b));
    expect(order.every((section) => sections.includes(section))).toBe(true);
  });
});

test("a tab of 5,000 steps is planned with every step under its own key", () => {
  const source = readCommissioningPlan(planWorkbook({ ...small, steps: Array.from({ length: 5000 }, (_, index) => step(`L-${index}`, "Start", { record: index % 2 === 0 ? "tick" : "number" })) }));
  const { tab, steps } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  expect(steps).toBe(5000);
  expect(new Set(readPlannedTab(tab).steps.map(({ key }) => key)).size).toBe(5000);
});

describe("what cannot be built", () => {
  const withSteps = (steps: TableRows["steps"]): TableRows => ({ ...small, steps });
  test.each<[string, TableRows, string]>([
    ["an unknown placeholder", withSteps([step("T-1", "Start", { do: "See {{Colour}}" })]), 'Step T-1 names "Colour", which no table in reach has. Write the header of a column, such as {{Array}}.'],
    ["an unknown field in When", withSteps([step("T-1", "Start", { when: "Colour = red" })]), 'Step T-1 names "Colour", which no table in reach has.'],
    ["a When that is no condition", withSteps([step("T-1", "Start", { when: "always" })]), 'Step T-1 "always" is no condition.'],
    ["a step id twice", withSteps([step("T-1", "Start"), step("t-1", "End")]), 'Step id "t-1" stands twice.'],
    ["a step of an unknown section", withSteps([step("T-1", "Middle")]), 'Step T-1 is in section "Middle", which its procedure lacks.'],
    ["a procedure nobody has", { ...small, jobs: [{ ...small.jobs![0]!, procedure: "Other" }] }, 'follows procedure "Other", which the table Procedures does not have.'],
    ["a job without arrays", { ...small, arrays: [] }, 'Job "North hall" has no arrays: none stands at "North hall".'],
    ["an array nobody has", { ...small, jobs: [{ ...small.jobs![0]!, arrays: "n-9" }] }, 'names array "n-9", which the table Arrays does not have.'],
    ["a name that no sheet can have", { ...small, jobs: [{ ...small.jobs![0]!, job: "North/South" }] }, 'Job "North/South" holds the character /'],
    ["the name of a planning sheet", { ...small, jobs: [{ ...small.jobs![0]!, job: "arrays" }] }, 'Job "arrays" has the name of a planning sheet.'],
    ["a job twice", { ...small, jobs: [small.jobs![0]!, { ...small.jobs![0]!, id: "J0002" }] }, 'Job "North hall" stands twice'],
    ["a step too long for a cell", withSteps([step("T-1", "Start", { do: "x".repeat(32_760) })]), "Step T-1 has 32820 characters when filled; a cell takes 32767."],
  ])("is said in a sentence: %s", (_, rows, sentence) => {
    const source = readCommissioningPlan(planWorkbook(rows));
    const attempt = (): unknown => buildJob(source, jobsOf(source)[0]!, () => "new", moment);
    expect(attempt).toThrow(sentence);
    expect(attempt).toThrow(/^.{20,160}$/);
  });

  test("is said of a sheet that has the job's name and is no tab", () => {
    const workbook = planWorkbook(small);
    const source = readCommissioningPlan({ sheets: [...workbook.sheets, { ...workbook.sheets[0]!, name: jobName, values: [["mine"]] }] });
    expect(() => buildJob(source, jobsOf(source)[0]!, () => "new", moment)).toThrow('A sheet named "North hall" is there already');
  });
});
