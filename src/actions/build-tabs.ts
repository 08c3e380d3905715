import {
  buildJob, changedRows, idOfJob, isSpent, jobsOf, readCommissioningPlan, readPlannedTab, readTabs, sheetNameWith, stateCell, tabFamily, wholeState,
  type BuildMoment, type CommissioningPlan, type JobBuild,
} from "../planning/commissioning";
import { invalid, Problem, quote } from "../planning/problem";
import type { PlanRow } from "../planning/workbook-model";
import type { Edit, WorkbookPort } from "../workbook/port";

/** What became of one job of a run. */
export interface JobOutcome {
  readonly job: string;
  readonly built: boolean;
  /** What happened, and after a failure which tab is whole and what to do. */
  readonly sentence: string;
  readonly steps: number;
  readonly carried: number;
  readonly kept: number;
  readonly again: number;
  readonly remarks: readonly string[];
}

/** How far a run is. */
export interface BuildProgress {
  readonly done: number;
  readonly all: number;
  readonly outcome: JobOutcome;
}

/**
 * Builds the tabs of the named jobs, or of every job that is not closed, one after the other; yields after each.
 *
 * Whoever drives it stops it by not asking for the next one: tabs are whole at every yield. A job that fails does not stop the others.
 * Throws a `Problem` where the plan itself cannot be read or a name is no job.
 */
export async function* buildTabs(port: WorkbookPort, moment: BuildMoment, names?: readonly string[]): AsyncGenerator<BuildProgress, void, undefined> {
  let source = readCommissioningPlan(await port.read());
  const jobs = names === undefined ? jobsOf(source).filter(({ state }) => state !== "closed") : names.map((name) => jobNamed(source, name));
  if (jobs.length === 0) throw invalid("Jobs", null, "The table Jobs has no job to build. Write one row a piece of work: its name, site and procedure.");
  for (const [index, job] of jobs.entries()) {
    const { outcome, sheets } = await buildOne(port, source, job, moment);
    source = { ...source, sheets };
    yield { done: index + 1, all: jobs.length, outcome };
  }
}

function jobNamed(source: CommissioningPlan, name: string): PlanRow<"jobs"> {
  const found = jobsOf(source).find(({ job }) => job.toLowerCase() === name.trim().toLowerCase());
  if (found === undefined) throw invalid("Jobs", name, `No job is named ${quote(name)}. Write the name as it stands in the table Jobs.`);
  return found;
}

async function buildOne(port: WorkbookPort, source: CommissioningPlan, job: PlanRow<"jobs">, moment: BuildMoment): Promise<{ readonly outcome: JobOutcome; readonly sheets: readonly string[] }> {
  let build: JobBuild;
  try {
    build = planBuild(source, job, moment);
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return { outcome: failure(job, thrown.sentence), sheets: source.sheets };
  }
  try {
    const { counts, spent } = await putInPlace(port, source, job, build, moment);
    const sentence = counts.again > 0 ? `Built with ${build.steps} steps; ${counts.again} records ask to be seen again.` : `Built with ${build.steps} steps.`;
    const sheets = [...source.sheets.filter((name) => !spent.includes(name) && name !== build.name), build.name];
    return { outcome: { job: job.job, built: true, sentence, steps: build.steps, carried: counts.carried, kept: counts.kept, again: counts.again, remarks: build.remarks }, sheets };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    const { advice, sheets } = await afterFailure(port, source, job);
    return { outcome: failure(job, `${thrown.sentence} ${advice}`), sheets };
  }
}

function planBuild(source: CommissioningPlan, job: PlanRow<"jobs">, moment: BuildMoment): JobBuild {
  return buildJob(source, job, ({ nextBuild }) => sheetNameWith(job.job, `build ${nextBuild}`, source.sheets), moment);
}

/**
 * Writes a new tab beside the old one and puts it in its place, so that every beginning of the edits leaves one whole tab in sight.
 *
 * The new sheet is hidden at once and marked whole only then. In one request the old one takes its earlier name, the new one the job's,
 * comes into sight, and the old one leaves it. What people typed into the old one until that moment is read afterwards and carried over.
 */
async function putInPlace(port: WorkbookPort, source: CommissioningPlan, job: PlanRow<"jobs">, build: JobBuild, moment: BuildMoment): Promise<{ readonly counts: JobBuild["counts"]; readonly spent: readonly string[] }> {
  const { name, tab, family } = build;
  const { current, others } = family;
  const blocking = others.find(({ sheet }) => sheet.toLowerCase() === name.toLowerCase());
  const moved = sheetNameWith(name, "left over", source.sheets);
  await port.apply([
    ...(blocking === undefined ? [] : [{ kind: "rename-sheet", sheet: blocking.sheet, name: moved } as const]),
    { kind: "add-sheet", plan: tab, ...(current === null ? {} : { after: current.sheet }) },
    { kind: "hide-sheet", sheet: tab.name },
  ]);
  const earlier = current === null ? "" : sheetNameWith(name, `before ${family.nextBuild}`, [...source.sheets, tab.name]);
  await port.apply([
    { kind: "write", sheet: tab.name, ...stateCell, cells: [[{ value: wholeState }]] },
    ...(current === null ? [] : [{ kind: "rename-sheet", sheet: current.sheet, name: earlier } as const]),
    { kind: "rename-sheet", sheet: tab.name, name },
    { kind: "show-sheet", sheet: name },
    ...(current === null ? [] : [{ kind: "hide-sheet", sheet: earlier } as const]),
    ...others.filter(({ visible }) => visible).map(({ sheet }): Edit => ({ kind: "hide-sheet", sheet: sheet === blocking?.sheet ? moved : sheet })),
  ]);
  if (current === null) return { counts: build.counts, spent: [] };

  const named = others.map((tabBefore) => (tabBefore === blocking ? moved : tabBefore.sheet));
  const again = readTabs(await port.read([earlier, ...named]));
  const old = again.find(({ sheet }) => sheet === earlier);
  const rest = again.filter(({ sheet }) => sheet !== earlier);
  if (old === undefined) return { counts: build.counts, spent: [] };
  // The old tab plays its part once more, so that the same rules place what was typed meanwhile.
  const asCurrent = { ...old, sheet: current.sheet, visible: true };
  const later = buildJob({ ...source, tabs: [asCurrent, ...rest] }, job, () => tab.name, moment);
  const carriedTab = readPlannedTab(later.tab);
  const spent = rest.filter((one) => isSpent(one, carriedTab)).map(({ sheet }) => sheet);
  const edits: Edit[] = [
    ...changedRows(tab, later.tab).map((block): Edit => ({ kind: "write", sheet: name, ...block })),
    ...spent.map((sheet): Edit => ({ kind: "delete-sheet", sheet })),
  ];
  if (edits.length > 0) await port.apply(edits);
  return { counts: later.counts, spent };
}

/** Says after a failure which tab is whole, and what to do. */
async function afterFailure(port: WorkbookPort, source: CommissioningPlan, job: PlanRow<"jobs">): Promise<{ readonly advice: string; readonly sheets: readonly string[] }> {
  try {
    const workbook = await port.read();
    const { current } = tabFamily(readTabs(workbook), idOfJob(job), job.job);
    const whole = current === null ? "There is no tab of this job yet" : `Tab ${quote(current.sheet)} is whole and holds every record`;
    return { advice: `${whole}. Mend that, then build again.`, sheets: workbook.sheets.map(({ name }) => name) };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return { advice: "Nothing that was typed is lost. Once the workbook answers again, build again.", sheets: source.sheets };
  }
}

function failure({ job }: PlanRow<"jobs">, sentence: string): JobOutcome {
  return { job, built: false, sentence, steps: 0, carried: 0, kept: 0, again: 0, remarks: [] };
}
