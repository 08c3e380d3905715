// Tabs: our own time for a tab of 1,000 steps, the syncs it costs, and a hundred jobs of 300 steps in one go without a page.
import { spawnSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { buildTabs } from "../src/actions/build-tabs";
import { readShown } from "../src/actions/read-plan";
import { openHeadless } from "../src/headless/open-headless";
import { buildJob, jobsOf, readCommissioningPlan } from "../src/planning/commissioning/build";
import type { TableRows } from "../src/planning/plan/schema";
import { planSetUp } from "../src/planning/plan/set-up";
import type { Edit } from "../src/workbook/port";
import { hostWorkbook, type HostWorkbook } from "../tests/support/host-workbook/host-workbook";
import { moment, planWorkbook, smallPlan, step } from "../tests/support/commissioning-plan";
import { medianMs, printBench } from "./support";

/** A plan whose job has so many steps. */
function planOf(steps: number): TableRows {
  const asked = { record: "number", expect: "48", tolerance: 2, do: "Read {{Room}} once more and enter what {{Contact}} says." };
  return { ...smallPlan(), steps: Array.from({ length: steps }, (_, index) => step(`B-${index}`, "Start", asked)) };
}

/** A plan of so many jobs, each of so many steps. */
function planOfJobs(count: number, steps: number): TableRows {
  const rows = planOf(steps);
  return { ...rows, jobs: Array.from({ length: count }, (_, index) => ({ ...rows.jobs![0]!, id: `J${index}`, job: `Job ${index}` })) };
}

/** A plan behind the vendor's client, in tables as set-up makes them. */
async function planInHost(rows: TableRows): Promise<HostWorkbook> {
  const workbook = hostWorkbook({ calculate: () => "" });
  await workbook.port.apply(setUpEdits(rows));
  return workbook;
}

function setUpEdits(rows: TableRows): Edit[] {
  return planSetUp({ sheets: [] }, rows).map((plan) => ({ kind: "add-sheet", plan }));
}

async function buildAll(workbook: HostWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(workbook.port, moment)) if (!outcome.built) throw new Error(outcome.sentence);
}

/** Counts the requests of building tabs that are there already, and the cells of a tab. */
async function rebuildOf(jobs: number, steps: number): Promise<{ readonly requests: number; readonly cells: number }> {
  const workbook = await planInHost(planOfJobs(jobs, steps));
  await buildAll(workbook);
  const before = workbook.syncs();
  await buildAll(workbook);
  const { rows, columns } = workbook.sheet("Job 0").used()!;
  return { requests: workbook.syncs() - before, cells: rows * columns };
}

interface Sizes {
  readonly request: number;
  readonly answer: number;
  readonly requests: number;
  /** Requests and bytes answered when a view of the pane reads what the sheets show. */
  readonly view: { readonly requests: number; readonly bytes: number };
}

/** Builds a hundred tabs through the vendor's client, builds them again, and reads them as a view does, and whole: the largest request and the largest answer, in bytes. */
async function sizesOfHundred(): Promise<Sizes> {
  const workbook = await planInHost(planOfJobs(100, 300));
  await buildAll(workbook);
  await buildAll(workbook);
  const before = workbook.syncs();
  await readShown(workbook.port);
  const view = workbook.exchanges().slice(before);
  const { sheets } = await workbook.port.read();
  if (sheets.filter(({ name, visible }) => visible && name.startsWith("Job ")).length !== 100) throw new Error("Not every job has its tab");
  const exchanges = workbook.exchanges();
  return {
    request: Math.max(...exchanges.map(({ bytes }) => bytes)),
    answer: Math.max(...exchanges.map(({ answerBytes }) => answerBytes)),
    requests: exchanges.length,
    view: { requests: view.length, bytes: view.reduce((sum, { answerBytes }) => sum + answerBytes, 0) },
  };
}

/** A module that tells, when its process ends, the most memory it had resident, in KiB. */
const tellPeak = "data:text/javascript,process.on('exit',()=>console.error(process.resourceUsage().maxRSS))";

interface BuildRun {
  readonly seconds: number;
  readonly megabytes: number;
  readonly built: number;
}

/** Runs `build-tabs` as a person does, in a process of its own: reads, builds, computes and saves. Time and peak memory are that process's. */
function runBuild(plan: string, out: string): BuildRun {
  const start = performance.now();
  const { stdout, stderr } = spawnSync("npm", [...command, plan, "-o", out], { encoding: "utf8", maxBuffer: 1e8, env: { ...process.env, NODE_OPTIONS: `--import=${tellPeak}` } });
  const seconds = (performance.now() - start) / 1000;
  // npm's own process tells its peak too, and it is the smaller one.
  const kilobytes = Math.max(...stderr.trim().split("\n").map(Number));
  return { seconds, megabytes: (kilobytes * 1024) / 1e6, built: (JSON.parse(stdout) as { built: number }).built };
}

const command = ["run", "-s", "build-tabs", "--"];

/** Builds a hundred jobs of 300 steps from file to file, and once more over the file that is built. */
async function hundredJobs(): Promise<readonly [first: BuildRun, second: BuildRun]> {
  const workbook = await openHeadless();
  await workbook.port.apply(setUpEdits(planOfJobs(100, 300)));
  const folder = await mkdtemp(join(tmpdir(), "bench-tabs-"));
  try {
    const [plan, built, again] = [join(folder, "plan.xlsx"), join(folder, "built.xlsx"), join(folder, "again.xlsx")];
    await writeFile(plan, await workbook.close());
    // A first call, which ends with the usage, makes the bundle.
    spawnSync("npm", command);
    return [runBuild(plan, built), runBuild(built, again)];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export default async function tabs(): Promise<void> {
  const workbook = planWorkbook(planOf(1000));
  const ours = medianMs(() => {
    const source = readCommissioningPlan(workbook);
    return buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  });
  const [short, long] = [await rebuildOf(1, 20), await rebuildOf(1, 1000)];
  // A tab is read once with its formulas, and once for what was typed meanwhile, by its values.
  const forced = Math.ceil(long.cells / 20_000) - 1 + Math.ceil(long.cells / 100_000) - 1;
  const [three, fifteen] = [await rebuildOf(3, 20), await rebuildOf(15, 20)];
  const aJob = (fifteen.requests - three.requests) / 12;
  const { request, answer, requests, view } = await sizesOfHundred();
  const runs = await hundredJobs();
  printBench("Commissioning tabs", [
    { what: "a tab of 1,000 steps, our own time", measured: `${ours.toFixed(0)} ms`, target: "under 500 ms", holds: ours < 500 },
    { what: "requests of a rebuild, 20 and 1,000 steps", measured: `${short.requests} and ${long.requests}`,
      target: `alike, but for ${forced} that ${long.cells} cells ask for`, holds: long.requests === short.requests + forced },
    { what: "requests of a rebuild of 1, 3 and 15 jobs", measured: [short, three, fifteen].map((one) => one.requests).join(", "),
      target: "3 and 6 a job", holds: aJob === 6 && short.requests === 9 && three.requests === 21 },
    { what: `largest of ${requests} requests for 100 jobs, built twice and read`, measured: `${(request / 1000).toFixed(0)} kB`, target: "under 4,500 kB", holds: request < 4_500_000 },
    { what: `100 tabs read by a view of the pane in ${view.requests} requests`, measured: `${(view.bytes / 1e6).toFixed(1)} MB`, target: "under 15 MB", holds: view.bytes < 15e6 },
    { what: "largest answer", measured: `${(answer / 1000).toFixed(0)} kB`, target: "under 2,000 kB", holds: answer < 2_000_000 },
    ...runs.flatMap(({ seconds, megabytes, built }, index) => [
      { what: `${built} jobs of 300 steps by build-tabs, ${index === 0 ? "file to file" : "again over what was built"}`,
        measured: `${seconds.toFixed(1)} s`, target: "100 under 10 s", holds: built === 100 && seconds < 10 },
      { what: "its peak resident memory", measured: `${megabytes.toFixed(0)} MB`, target: "under 300 MB", holds: megabytes < 300 },
    ]),
  ]);
}
