import { sameSheetName, sheetNameFault } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import { tableKeys } from "../../plan/schema";
import { andMore, cutSentence, foldName, invalid, quote } from "../../text";
import { clusterStepFault, idOfJob, subjectFault } from "../job";
import { withdrawnFault } from "../procedure";
import { isClosed } from "../record";
import { isTagged, type TabFamily, type TabReading } from "../tab";
import type { CommissioningPlan } from "./commissioning-plan";

/** Refuses a job for what the plan says of it, whatever stands on its tab. */
export function refuseJob(source: CommissioningPlan, job: PlanRow<"jobs">, family: TabFamily): void {
  refuseIds(source, job, family);
  refuseName(source, job, family);
  refuseWithdrawn(source, job);
  refuseEmptying(source, job);
  refuseWithoutClusterStep(source, job);
  refuseWithoutSubject(source, job);
  refuseAssumed(source, job);
}

/** Refuses to build the tab of a job that is closed: its seal would be lost. */
export function refuseClosed(job: PlanRow<"jobs">, current: TabReading | null): void {
  refuseUnsealed(job, current);
  if (current === null || !isClosed(current)) return;
  throw invalid("State", job.state, `Job ${quote(job.job)} is closed and sealed, so its tab is not built again. Reopen it first, with name and reason.`);
}

/** Refuses a job that the plan says is closed while no seal of its tab is: the line of the seal is gone, or somebody typed the state. */
export function refuseUnsealed(job: PlanRow<"jobs">, current: TabReading | null): void {
  if (job.state !== "closed" || current === null || isClosed(current)) return;
  throw invalid("State", job.state, `Job ${quote(job.job)} is closed by its State, its tab by no seal. Write the line of the seal back from the signed page, or open under State.`);
}

/**
 * Refuses an id that two have: two jobs, or an array of the job and another, would fill each other's records, and nobody can tell which of two
 * tabs in sight holds what is true.
 */
export function refuseIds({ model, tabs }: Pick<CommissioningPlan, "model" | "tabs">, job: PlanRow<"jobs">, { current, others, copies }: TabFamily): void {
  const refuse = (argument: string, id: string, sentence: string): never => {
    throw invalid(argument, id, sentence);
  };
  if (isTagged(idOfJob(job))) refuse("Id", job.id, `Job ${quote(job.job)} has the id ${quote(job.id)}, which begins as the marks of a tab do: #, kept: or slots:. Write another one.`);
  const isSame = (one: string, other: string): boolean => one !== "" && foldName(one) === foldName(other);
  const twin = model.rows("jobs").find((other) => other.row !== job.row && isSame(other.id, job.id));
  if (twin !== undefined) refuse("Id", job.id, `Jobs ${quote(job.job)} and ${quote(twin.job)} have one id, ${job.id}. Empty that of the newer one: the build gives it another.`);
  for (const array of model.places.of(job).arrays) {
    const other = model.rows("arrays").find((one) => one.row !== array.row && isSame(one.id, array.id));
    if (other !== undefined) refuse("Id", array.id, `Arrays ${quote(array.array)} and ${quote(other.array)} have one id, ${array.id}. Empty that of the newer one: the build gives it another.`);
  }
  const stray = tabs.find(({ jobId }) => jobId !== idOfJob(job) && isSame(jobId, idOfJob(job)));
  if (stray !== undefined) refuse("Id", job.id, `Tab ${quote(stray.sheet)} has the id ${stray.jobId}, job ${quote(job.job)} has ${idOfJob(job)}. Write it in Jobs as the tab has it.`);
  const [copy] = copies;
  if (current === null) return;
  if (copy !== undefined) refuse("tab", copy.sheet, `Tabs ${quote(current.sheet)} and ${quote(copy.sheet)} are of one job. Bring back the copy as a file, or delete it, then build.`);
  const foreign = others.find(({ born }) => born !== current.born);
  if (foreign !== undefined) refuse("tab", foreign.sheet, `Tab ${quote(foreign.sheet)} has the id of this job, ${job.id}, but is of another plan. Move it to a file of its own.`);
}

/** Refuses a job whose procedure has a step that was withdrawn because it is unsafe: a tab would have people do it. */
function refuseWithdrawn({ model }: Pick<CommissioningPlan, "model">, job: PlanRow<"jobs">): void {
  for (const { stepId } of model.rowsWith("steps", "procedure", job.procedure)) {
    const fault = withdrawnFault(stepId);
    if (fault !== null) throw invalid("Step id", stepId, fault);
  }
}

/**
 * Refuses a job whose steps would empty drives where the plan does not say that they may: those of an array that was installed, or of a cluster that
 * is neither new nor existing.
 */
function refuseEmptying({ model }: Pick<CommissioningPlan, "model">, job: PlanRow<"jobs">): void {
  const again = model.places.installedAgain(job);
  if (again !== null) {
    const sentence = `${again.array.array} was installed by job ${quote(again.by.job)}, which is closed: this one would empty its drives. Name the new arrays under Arrays.`;
    throw invalid("Arrays", job.arrays, cutSentence(sentence));
  }
  if (!model.places.emptiesDrives(job.procedure)) return;
  const unsaid = model.places.of(job).arrays.find(({ cluster }) => model.find("clusters", cluster)?.state === "");
  if (unsaid !== undefined) {
    throw invalid("State", "", cutSentence(`Whether ${unsaid.array} creates ${unsaid.cluster} or joins it is not known, and both empty drives. Write State in Clusters.`));
  }
}

/** Refuses a job whose procedure says nothing of what an array does with its cluster: an installation would create one beside a live one, or over it. */
function refuseWithoutClusterStep({ model }: Pick<CommissioningPlan, "model">, job: PlanRow<"jobs">): void {
  const fault = clusterStepFault(model, job);
  if (fault !== null) throw invalid("Procedure", job.procedure, fault);
}

/** Refuses a job that does not say which one of several is pulled, opened or erased. */
export function refuseWithoutSubject({ model }: Pick<CommissioningPlan, "model">, job: PlanRow<"jobs">): void {
  const fault = subjectFault(model, job);
  if (fault !== null) throw invalid("Subject", job.subject, fault);
}

/** Refuses a job that empties drives at a site of which something is assumed that people or data depend on: feeds and networks. */
function refuseAssumed({ model }: Pick<CommissioningPlan, "model">, job: PlanRow<"jobs">): void {
  const [first, ...others] = model.assumptions.reliedOnBy(job);
  if (first === undefined) return;
  const { header, by } = first;
  const what = `${andMore(`${header} of ${by.named}`, others.length)} ${others.length === 0 ? "is" : "are"} assumed`;
  throw invalid(header, by.value, cutSentence(`${what}. Write what is so, or tick Settled in Assumptions: an installation is not built on a guess.`));
}

/** Refuses a job whose name no sheet can have, or that a sheet has which is no tab of this job in use. */
function refuseName({ model, sheets }: CommissioningPlan, { job }: PlanRow<"jobs">, { current, others }: TabFamily): void {
  const refuse = (sentence: string): never => {
    throw invalid("Job", job, sentence);
  };
  const fault = sheetNameFault(job);
  if (fault !== null) refuse(`Job ${quote(job)} ${fault}, so no tab can have that name. Give it another one.`);
  if (model.rowsWith("jobs", "job", job).length > 1) refuse(`Job ${quote(job)} stands twice in the table Jobs. Give each job a name of its own.`);
  if (tableKeys.some((key) => sameSheetName(model.table(key)?.sheet ?? "", job))) {
    refuse(`Job ${quote(job)} has the name of a planning sheet. Give it another one.`);
  }
  const taken = sheets.find((name) => sameSheetName(name, job));
  if (taken !== undefined && ![current, ...others].some((tab) => tab?.sheet === taken)) {
    refuse(`A sheet named ${quote(taken)} is there already and is no tab in use of this job. Rename that sheet, then build.`);
  }
}
