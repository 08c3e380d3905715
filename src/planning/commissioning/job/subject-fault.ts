import { controllersOf, orNull, type PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { derivedFieldsOf, forEachKinds, forEachOf, type ForEach } from "../../plan/schema";
import { JobSubjects, lookupIn } from "../../plan/subjects";
import { conditionHolds, cutSentence, fieldsOf, foldName, parseCondition, parseTemplate, quote } from "../../text";

/** Condition under which a section is about the part alone that the job names. */
const isSubject = "is subject";

/**
 * Says why a job does not tell what it is about, where its procedure is about one controller, shelf or drive, names the arrays of the job in its steps, or
 * empties the drives of those that join a cluster that exists; null where it does. An empty cell means everything there, which nobody wants pulled or erased.
 *
 * Refuses a site or an array that the plan does not have.
 */
export function subjectFault(model: PlanModel, job: PlanRow<"jobs">): string | null {
  const follows = `Job ${quote(job.job)} follows ${quote(job.procedure)}`;
  if (job.arrays === "" && namesArrays(model, job)) return cutSentence(`${follows}, which wants its arrays named. Write them under Arrays in Jobs.`);
  const live = emptiedWithOthers(model, job);
  if (live !== null) return cutSentence(`Job ${quote(job.job)} empties drives, and cluster ${quote(live)} is in use. Write under Arrays in Jobs which arrays are new.`);
  const sections = model.rowsWith("procedures", "procedure", job.procedure).filter(isAboutSubject);
  const [first] = sections;
  if (first === undefined) return null;
  const kind = forEachOf(first.forEach);
  if (job.subject === "") return cutSentence(`${follows}, which is about one ${kind}. Write under Subject in Jobs which one, such as ${examples[kind] ?? "B"}.`);
  const places = model.places.of(job);
  if (places.arrays.length !== 1) return cutSentence(`${follows}, which is about one ${kind}, and has ${places.arrays.length} arrays. Name the one under Arrays in Jobs.`);
  const subjects = new JobSubjects(model, places, job);
  const stray = sections.find(({ forEach, when, section }) => {
    const named = parseCondition(when, section).filter(({ field }) => foldName(field) === isSubject);
    return !subjects.list(forEach).some(({ scope }) => conditionHolds(named, lookupIn(scope, section)));
  });
  if (stray === undefined) return null;
  return cutSentence(`${places.arrays[0]!.array} has no ${forEachOf(stray.forEach)} ${quote(job.subject)} in the plan. Write its row, or under Subject the name that it has there.`);
}

/** Names the first part that a job with one array could be about, for whoever wants to see its procedure; "" where that is about none, or there is none. */
export function anySubject(model: PlanModel, job: PlanRow<"jobs">): string {
  const [asked] = model.rowsWith("procedures", "procedure", job.procedure).filter(isAboutSubject);
  const [array] = model.places.of(job).arrays;
  if (asked === undefined || array === undefined) return "";
  const [drive] = model.drives.expectedIn(array);
  const first: Partial<Record<ForEach, string>> = {
    controller: controllersOf(array)?.[0] ?? "",
    shelf: model.drives.shelvesOf(array)[0]?.shelf ?? "",
    drive: drive === undefined ? "" : `${drive.shelf} bay ${drive.bay}`.trim(),
  };
  return first[forEachOf(asked.forEach)] ?? "";
}

const examples: Partial<Record<ForEach, string>> = { controller: "B", shelf: "S1", drive: "bay 7" };

/** Names the cluster that exists already all whose arrays at the site a job would empty, as it names none; null where there is none. */
function emptiedWithOthers(model: PlanModel, job: PlanRow<"jobs">): string | null {
  if (job.arrays !== "" || !model.places.emptiesDrives(job.procedure)) return null;
  return model.places.of(job).arrays.map(({ cluster }) => model.find("clusters", cluster)).find((cluster) => cluster?.state === "existing")?.cluster ?? null;
}

function namesArrays(model: PlanModel, { procedure }: PlanRow<"jobs">): boolean {
  return model.rowsWith("steps", "procedure", procedure).some(({ do: text }) => (orNull(() => fieldsOf(parseTemplate(text, "Do"))) ?? []).some((field) => foldName(field) === "job.arrays"));
}

/** Tells whether a section is repeated for what the Subject names, and for that alone: ports of a controller may be none. */
function isAboutSubject({ forEach, when }: PlanRow<"procedures">): boolean {
  const [nearest] = forEachKinds[forEachOf(forEach)].reach;
  const hasField = derivedFieldsOf(nearest).some(([name]) => foldName(name) === isSubject);
  return hasField && (orNull(() => parseCondition(when, "When")) ?? []).some(({ field }) => foldName(field) === isSubject);
}
