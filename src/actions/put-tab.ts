import { buildJob, type AdjustReading, type BuildMoment, type CommissioningPlan, type JobBuild } from "../planning/commissioning/build";
import { idOfJob } from "../planning/commissioning/job";
import { isSpent, readPlannedTab, readTabs, sheetNameWith, stateCell, tabStates, type TabFamily, type TabReading } from "../planning/commissioning/tab";
import { andMore, Problem, quote } from "../planning/text";
import type { PlanRow } from "../planning/plan/read";
import { changedRows, sameSheetName, sameValues } from "../sheet";
import type { Edit, WorkbookPort } from "../workbook/port";
import type { LookingAt } from "./looking-formulas";
import { readPlanSheets, withTabsNamed } from "./read-plan";
import { tabInUse } from "./tab-in-use";

/** What became of one job of a run. */
export interface JobOutcome {
  readonly job: string;
  readonly built: boolean;
  /** What happened, and after a failure which tab is whole and what to do. */
  readonly sentence: string;
  readonly steps: number;
  /** Records that found their step again, that are in the kept block, and that ask to be seen again. */
  readonly carried: number;
  readonly kept: number;
  readonly again: number;
  readonly remarks: readonly string[];
}

/** How a tab is put in place. */
interface Putting {
  /** Changes what was read of the tab in use before it is carried over. */
  readonly adjust?: AdjustReading;
  /** Names of the sheets that are tabs of the job, to be read first; without it those of the plan are taken as they were read. */
  readonly tabs?: readonly string[];
  /** Tells where formulas look at a sheet: an earlier tab at which one looks stays, or the formula would be lost. */
  readonly lookingAt?: LookingAt;
}

/**
 * Builds the tab of one job and puts it in the place of the one in use.
 *
 * Never throws a `Problem`: a job that fails says so in its outcome. Answers also with the names of the sheets that are there afterwards.
 */
export async function putTab(
  port: WorkbookPort,
  plan: CommissioningPlan,
  job: PlanRow<"jobs">,
  moment: BuildMoment,
  { adjust, tabs = [], lookingAt = () => [] }: Putting = {},
): Promise<{ readonly outcome: JobOutcome; readonly sheets: readonly string[] }> {
  let source = plan;
  let build: JobBuild;
  try {
    source = await withTabsNamed(port, plan, tabs);
    build = buildJob(source, job, (family) => workingName(source, job, family), moment, adjust);
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return { outcome: failure(job, thrown.sentence), sheets: source.sheets };
  }
  try {
    const { counts, sheets } = await swapIn(port, source, job, build, moment, lookingAt, adjust);
    const askAgain = counts.again === 0 ? "" : `; ${counts.again} ${counts.again === 1 ? "record asks" : "records ask"} to be seen again`;
    const sentence = `Built with ${build.rows} steps${askAgain}.`;
    const remarks = [...build.remarks, ...remarksOnFormulas(build.family, lookingAt)];
    return { outcome: { job: job.job, built: true, sentence, steps: build.steps, carried: counts.carried, kept: counts.orphaned, again: counts.again, remarks }, sheets };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    const { advice, sheets } = await afterFailure(port, source, job);
    return { outcome: failure(job, `${thrown.sentence} ${advice}`), sheets };
  }
}

/** Names formulas that look at a tab which is now an earlier one: a program does not have them look at the new one. */
function remarksOnFormulas({ current, others }: TabFamily, lookingAt: LookingAt): string[] {
  const places = [...(current === null ? [] : [current]), ...others].flatMap(({ sheet }) => lookingAt(sheet));
  const [first, ...further] = places;
  if (first === undefined) return [];
  return [`The formula in ${andMore(first, further.length)} looks at an earlier tab, which stays, hidden. Write the name of the new one into it, and look at the cell.`];
}

/** Names a new tab until it is put in place; a first one has its name at once, as no other visible sheet can have it. */
function workingName({ sheets }: CommissioningPlan, { job }: PlanRow<"jobs">, { current, nextBuild }: TabFamily): string {
  return current === null ? job : sheetNameWith(job, `build ${nextBuild}`, sheets);
}

/**
 * Writes a new tab beside the one in use and swaps the two, so that every beginning of the edits leaves one whole tab visible.
 *
 * The new sheet is hidden at once and marked whole only when it is. Then the old one takes the name of an earlier tab, the new one the
 * job's name, comes into sight, and the old one leaves it. What people typed into the old one until that moment is read after it and
 * carried over; earlier tabs in which nothing is left to carry go.
 */
async function swapIn(
  port: WorkbookPort,
  source: CommissioningPlan,
  job: PlanRow<"jobs">,
  build: JobBuild,
  moment: BuildMoment,
  lookingAt: LookingAt,
  adjust?: AdjustReading,
): Promise<{ readonly counts: JobBuild["counts"]; readonly sheets: readonly string[] }> {
  const { name, tab, family } = build;
  const { current } = family;
  const inTheWay = family.others.find(({ sheet }) => sameSheetName(sheet, name));
  const aside = sheetNameWith(name, "left over", source.sheets);
  const others = family.others.map((other) => (other === inTheWay ? aside : other.sheet));
  const earlier = sheetNameWith(name, `before ${family.nextBuild}`, [...source.sheets, tab.name]);
  await port.apply([
    ...(inTheWay === undefined ? [] : [{ kind: "rename-sheet", sheet: inTheWay.sheet, name: aside } as const]),
    { kind: "add-sheet", plan: tab, ...(current === null ? {} : { after: current.sheet }) },
    { kind: "hide-sheet", sheet: tab.name },
    { kind: "write", sheet: tab.name, ...stateCell, cells: [[{ value: tabStates.whole }]] },
    ...(current === null ? [] : [{ kind: "rename-sheet", sheet: current.sheet, name: earlier } as const]),
    ...(current === null ? [] : [{ kind: "rename-sheet", sheet: tab.name, name } as const]),
    { kind: "show-sheet", sheet: name },
    ...(current === null ? [] : [{ kind: "hide-sheet", sheet: earlier } as const]),
    ...family.others.flatMap(({ visible }, index): Edit[] => (visible ? [{ kind: "hide-sheet", sheet: others[index]! }] : [])),
  ]);
  const untouched = source.sheets.filter((sheet) => sheet !== current?.sheet && sheet !== inTheWay?.sheet);
  const sheets = [...untouched, ...(inTheWay === undefined ? [] : [aside]), name, ...(current === null ? [] : [earlier])];
  if (current === null && others.length === 0) return { counts: build.counts, sheets };

  const nameNow = new Map([...(current === null ? [] : [[current.sheet, earlier] as const]), ...family.others.map((other, index) => [other.sheet, others[index]!] as const)]);
  const names = [...nameNow.values()];
  const now = (await port.read(names, "values")).sheets;
  const isAsRead = [...nameNow].every(([before, name]) => sameValues(source.tabSheets.find((sheet) => sheet.name === before), now.find((sheet) => sameSheetName(sheet.name, name))));
  const again = isAsRead ? family.others.map((other, index) => ({ ...other, sheet: others[index]! })) : readTabs(await port.read(names));
  const rest = again.filter(({ sheet }) => sheet !== earlier);
  const old = again.find(({ sheet }) => sheet === earlier);
  // The old tab plays its part once more, so that the same rules place what was typed meanwhile.
  const tabs = old === undefined || current === null ? rest : [{ ...old, sheet: current.sheet, visible: true }, ...rest];
  const later = isAsRead ? build : buildJob({ ...source, tabs, sheets: source.sheets.filter((sheet) => sheet !== inTheWay?.sheet) }, job, () => tab.name, moment, adjust);
  const carried = rest.length === 0 ? null : readPlannedTab(later.tab);
  const nameBefore = new Map([...nameNow].map(([before, after]) => [after, before]));
  const isLookedAt = ({ sheet }: TabReading): boolean => lookingAt(nameBefore.get(sheet) ?? sheet).length > 0;
  const spent = rest.filter((one) => carried !== null && isSpent(one, carried) && !isLookedAt(one)).map(({ sheet }) => sheet);
  const edits: Edit[] = [
    ...(isAsRead ? [] : changedRows(tab, later.tab)).map((block): Edit => ({ kind: "write", sheet: name, ...block })),
    ...spent.map((sheet): Edit => ({ kind: "delete-sheet", sheet })),
  ];
  if (edits.length > 0) await port.apply(edits);
  return { counts: later.counts, sheets: sheets.filter((sheet) => !spent.includes(sheet)) };
}

/** Says after a failure which tab is whole, and what to do. */
async function afterFailure(port: WorkbookPort, source: CommissioningPlan, job: PlanRow<"jobs">): Promise<{ readonly advice: string; readonly sheets: readonly string[] }> {
  try {
    const workbook = await readPlanSheets(port, { jobIds: [idOfJob(job)], only: "values" });
    const tab = tabInUse({ tabs: readTabs(workbook) }, job);
    const whole = tab === null ? "There is no tab of this job yet" : `Tab ${quote(tab.sheet)} is whole and holds every record`;
    return { advice: `${whole}. Put right what hindered it, then build again.`, sheets: workbook.sheets.map(({ name }) => name) };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    return { advice: "Nothing that was typed is lost. Once the workbook answers again, build again.", sheets: source.sheets };
  }
}

function failure({ job }: PlanRow<"jobs">, sentence: string): JobOutcome {
  return { job, built: false, sentence, steps: 0, carried: 0, kept: 0, again: 0, remarks: [] };
}
