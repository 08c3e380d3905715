import { buildJob, jobNamed, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { WorkbookSnapshot } from "../../../../src/sheet";
import { jobName, moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";
import { sealLine } from "../../../support/job-records";
import { tabSheet } from "../../../support/tab-workbook";

const small = smallPlan();

/** Builds the first job of a workbook, beside tabs that are there. */
function build(workbook: WorkbookSnapshot, ...tabs: WorkbookSnapshot["sheets"]) {
  const source = readCommissioningPlan({ sheets: [...workbook.sheets, ...tabs] });
  return buildJob(source, jobsOf(source)[0]!, ({ nextBuild }) => `build ${nextBuild}`, { ...moment, instant: "later" });
}

const workbook = planWorkbook(small);
const first = buildJob(readCommissioningPlan(workbook), jobsOf(readCommissioningPlan(workbook))[0]!, () => "new", moment);
const tab = tabSheet(first.tab, jobName);

test("a tab of 5,000 steps is planned with every step under its own key", () => {
  const steps = Array.from({ length: 5000 }, (_, index) => step(`L-${index}`, "Start", { record: index % 2 === 0 ? "tick" : "number" }));
  const built = build(planWorkbook({ ...small, steps }));
  expect(built.steps).toBe(5000);
  expect(new Set(readPlannedTab(built.tab).steps.map(({ key }) => key)).size).toBe(5000);
});

describe("a build", () => {
  test("is the first one of its job, born at its moment, where there is no tab", () => {
    expect(first).toMatchObject({ name: jobName, steps: 18, counts: { carried: 0, orphaned: 0, again: 0 }, remarks: [] });
    expect(first.family).toEqual({ current: null, others: [], copies: [], nextBuild: 1 });
    expect(readPlannedTab(first.tab)).toMatchObject({ sheet: "new", title: jobName, jobId: "J0001", build: 1, born: moment.instant, whole: true });
  });

  test("is the next one under a working name, and stays born when the first one was", () => {
    const next = build(workbook, tab);
    expect(next.family.current?.sheet).toBe(jobName);
    expect(readPlannedTab(next.tab)).toMatchObject({ sheet: "build 2", build: 2, born: moment.instant });
  });

  test("carries what its caller makes of the tab in use", () => {
    const source = readCommissioningPlan({ sheets: [...workbook.sheets, tab] });
    const adjusted = buildJob(source, jobsOf(source)[0]!, () => "new", moment, (reading) => ({ ...reading, born: "adjusted", remarks: ["r"] }));
    expect(readPlannedTab(adjusted.tab).born).toBe("adjusted");
    expect(adjusted.remarks).toEqual(["r"]);
  });

  test("remarks on a tab with another name, and on what people added", () => {
    const ahead = tabSheet({ ...first.tab, rows: first.tab.rows.map((row, index) => (index === 0 ? row.map((cell) => (cell.value === 1 ? { value: 2 } : cell)) : row)) }, "Mine");
    const isHeader = (_: unknown, row: number) => row === 1;
    const wider = { ...ahead, attachments: 3, values: ahead.values.map((line, row) => [...line, isHeader(line, row) ? "My column" : null]) };
    expect(build(workbook, wider).remarks).toEqual([
      'The tab was called "Mine". It has the job\'s name again.',
      "2 texts stand under Found elsewhere, with the place: typed beside, between or over our cells.",
      "Comments or pictures (3) stay on the hidden earlier sheet: a new tab cannot carry them.",
    ]);
  });

  test("remarks on earlier tabs that stay because their notes cannot be counted, once there are any", () => {
    const earlier = { ...tabSheet(first.tab, `${jobName} before 2`), visible: false };
    const current = tabSheet(build(workbook, tab).tab, jobName);
    const stays = "Earlier tabs of this job stay, hidden: this program does not tell whether notes are on them. Delete those that hold nothing you need.";
    expect(build(workbook, { ...current, mayHoldNotes: true }, earlier).remarks).toEqual([stays]);
    expect(build(workbook, { ...current, mayHoldNotes: true }).remarks).toEqual([]);
    expect(build(workbook, current, earlier).remarks).toEqual([]);
  });

  test("remarks on arrays without an id", () => {
    const arrays = small.arrays!.map((row, index) => (index === 1 ? { ...row, id: null } : row));
    expect(build(planWorkbook({ ...small, arrays })).remarks).toEqual(['Array "n-2" has no Id: its records go by its name until Check has written one.']);
  });
});

describe("what cannot be built", () => {
  const named = (...jobs: string[]): TableRows => ({ ...small, jobs: jobs.map((job, index) => ({ ...small.jobs![0]!, id: `J000${index + 1}`, job })) });

  test.each<[string, TableRows, string]>([
    ["a name that no sheet can have", named("North/South"), 'Job "North/South" holds the character /, so no tab can have that name. Give it another one.'],
    ["the name of a planning sheet", named("arrays"), 'Job "arrays" has the name of a planning sheet. Give it another one.'],
    ["a job twice", named("North hall", "north HALL"), 'Job "North hall" stands twice in the table Jobs. Give each job a name of its own.'],
    ["a step that cannot be worked out", { ...small, steps: [step("T-1", "Middle")] }, 'Step T-1 is in section "Middle", which its procedure lacks.'],
  ])("is said in a sentence: %s", (_, rows, sentence) => {
    expect(() => build(planWorkbook(rows))).toThrow(sentence);
    expect(() => build(planWorkbook(rows))).toThrow(/^.{20,160}$/);
  });

  test("is said of a sheet that has the job's name and is no tab in use of it", () => {
    const sentence = 'A sheet named "NORTH hall" is there already and is no tab in use of this job. Rename that sheet, then build.';
    expect(() => build(workbook, { ...workbook.sheets[0]!, name: "NORTH hall", values: [["mine"]] })).toThrow(sentence);
    // A tab that an earlier build has left under the name is no obstacle.
    expect(build(workbook, { ...tab, name: "NORTH hall", visible: false }, { ...tab, name: "Mine" }).family.current?.sheet).toBe("Mine");
  });

  test("is said with the column it is about", () => {
    const refusal = (attempt: () => unknown): unknown => {
      try {
        return attempt();
      } catch (thrown) {
        return thrown;
      }
    };
    const source = readCommissioningPlan({ sheets: [...workbook.sheets, tab] });
    expect(refusal(() => build(planWorkbook(named("North/South"))))).toMatchObject({ kind: "invalid", argument: "Job", received: "North/South" });
    expect(refusal(() => jobNamed(source, "East hall"))).toMatchObject({ kind: "invalid", argument: "Jobs", received: "East hall" });
    const closed = () => buildJob(source, jobsOf(source)[0]!, () => "new", moment, (reading) => ({ ...reading, seals: [sealLine()] }));
    expect(refusal(closed)).toMatchObject({ kind: "invalid", argument: "State" });
  });

  const twice = <Row extends object>(rows: readonly Row[] | undefined, id: string, more: Partial<Row>): Row[] => [...rows!, { ...rows![0]!, id, ...more }];

  test("is said of two jobs or arrays with one id, in whatever capitals", () => {
    const jobs = planWorkbook({ ...small, jobs: twice(small.jobs, "j0001", { job: "South hall" }) });
    expect(() => build(jobs)).toThrow('Jobs "North hall" and "South hall" have one id, J0001. Empty that of the newer one: the build gives it another.');
    const arrays = planWorkbook({ ...small, arrays: twice(small.arrays, "A0001", { array: "n-3" }) });
    expect(() => build(arrays)).toThrow('Arrays "n-1" and "n-3" have one id, A0001. Empty that of the newer one: the build gives it another.');
  });

  test("is said of two tabs of one job that are in sight, and of a tab of another plan", () => {
    expect(() => build(workbook, tab, { ...tab, name: "North hall (2)" })).toThrow('Tabs "North hall" and "North hall (2)" are of one job. Bring back the copy as a file, or delete it, then build.');
    const other = { ...tab, name: "Mine", visible: false, values: tab.values.map((line) => line.map((cell) => (cell === moment.instant ? "2020-01-01T00:00:00.000Z" : cell))) };
    expect(() => build(workbook, tab, other)).toThrow('Tab "Mine" has the id of this job, J0001, but is of another plan. Move it to a file of its own.');
  });

  test("is said of an installation at a site of which something is assumed that people or data depend on", () => {
    const [feed, network] = [{ feed: "N A", site: small.jobs![0]!.site as string, volts: 230 }, { network: "lan", prefix: "10.64.9.0/24" }];
    const assumptions = [{ named: "N A", table: "Feeds", column: "Volts", value: "230" }, { named: "lan", table: "Networks", column: "Prefix", value: "10.64.9.0/24" }];
    const assuming = (rows: TableRows) => planWorkbook({ ...small, feeds: [feed], networks: [network], ...rows });
    expect(() => build(assuming({ assumptions }))).toThrow("Volts of N A and 1 more are assumed. Write what is so, or tick Settled in Assumptions: an installation is not built on a guess.");
    expect(() => build(assuming({ assumptions: assumptions.slice(1) }))).toThrow("Prefix of lan is assumed.");
    expect(build(assuming({ assumptions: assumptions.map((row) => ({ ...row, settled: "yes" })) })).name).toBe("North hall");
    expect(build(assuming({ assumptions, feeds: [{ ...feed, volts: 400 }], networks: [{ ...network, prefix: "10.64.8.0/24" }] })).name).toBe("North hall");
  });

  test("is said of a job that would empty the drives of an array in use", () => {
    const second = twice(small.jobs, "J0002", { job: "Second visit", state: "planned" });
    const jobs = (arrays: string | null) => planWorkbook({ ...small, jobs: [{ ...second[1]!, arrays }, { ...second[0]!, state: "closed" }] });
    expect(() => build(jobs(null))).toThrow('n-1 was installed by job "North hall", which is closed: this one would empty its drives. Name the new arrays under Arrays.');
    expect(() => build(jobs("n-2"))).toThrow('n-2 was installed by job "North hall"');
    // Work that creates and joins nothing goes on.
    const unconditional = <Row extends object>(rows: readonly Row[] | undefined) => rows!.map((row) => ({ ...row, when: null }));
    const harmless = { ...small, steps: unconditional(small.steps), procedures: unconditional(small.procedures) };
    expect(build(planWorkbook({ ...harmless, jobs: [second[1]!, { ...second[0]!, state: "closed" }] })).name).toBe("Second visit");
  });

  test("is said of a cluster that is neither new nor existing, as both ways empty drives", () => {
    const clusters = [{ ...small.clusters![0]!, state: null }];
    expect(() => build(planWorkbook({ ...small, clusters }))).toThrow("Whether n-1 creates North or joins it is not known, and both empty drives. Write State in Clusters.");
  });

  test("is said of a step that was withdrawn because it is unsafe", () => {
    const steps = [...small.steps!, step("ins-152", "Start")];
    expect(() => build(planWorkbook({ ...small, steps }))).toThrow("ins-152 was withdrawn: it puts capacity into a pool that may be live before the array was built and tested.");
    expect(build(planWorkbook({ ...small, steps: [...small.steps!, { ...step("INS-152", "Start"), procedure: "Another one" }] })).name).toBe(jobName);
  });

  test("is said of a job that is closed", () => {
    const source = readCommissioningPlan({ sheets: [...workbook.sheets, tab] });
    const attempt = () => buildJob(source, jobsOf(source)[0]!, () => "new", moment, (reading) => ({ ...reading, seals: [sealLine()] }));
    expect(attempt).toThrow('Job "North hall" is closed and sealed, so its tab is not built again. Reopen it first, with name and reason.');
  });
});

describe("a workbook", () => {
  const without = (...names: string[]): WorkbookSnapshot => ({ sheets: workbook.sheets.filter(({ name }) => !names.includes(name)) });

  test.each(["Jobs", "Procedures", "Steps", "Sites", "Arrays"])("is refused without the table %s", (name) => {
    expect(() => readCommissioningPlan(without(name))).toThrow(`The workbook has no table ${name}. Choose Set up tables, or name the table Bay${name}.`);
  });

  test("is content without the tables that no step asks for", () => {
    expect(build(without("Pools", "Hosts", "Links", "Quote")).name).toBe(jobName);
  });
});

describe("the jobs of a plan", () => {
  const rows = { ...small, jobs: [...small.jobs!, { id: "J0002", job: null, site: "North hall" }, { id: "J0003", job: "South hall", site: "North hall" }] };
  const source = readCommissioningPlan(planWorkbook(rows));

  test("are those with a name, in table order", () => {
    expect(jobsOf(source).map(({ job }) => job)).toEqual(["North hall", "South hall"]);
  });

  test("are found by their name without case, and refused by another", () => {
    expect(jobNamed(source, " SOUTH hall ").id).toBe("J0003");
    expect(() => jobNamed(source, "East hall")).toThrow('No job is named "East hall". Write the name as it stands in the table Jobs.');
    expect(() => jobNamed(source, "")).toThrow("No job is named a blank. Write the name as it stands in the table Jobs.");
  });

  test("are read with the tabs and the names of all sheets", () => {
    const both = readCommissioningPlan({ sheets: [...workbook.sheets, tab] });
    expect(both.tabs.map(({ sheet }) => sheet)).toEqual([jobName]);
    expect(both.sheets).toEqual([...workbook.sheets.map(({ name }) => name), jobName]);
  });
});
