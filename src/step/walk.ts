import type { StepRow } from "../planning/commissioning/record";
import type { JobTab } from "./job-file";

/** What fills the screen while a tab is open. */
export type Place =
  | { readonly at: "list" }
  /** A row of steps, by its row on the sheet; `isOpen` where what was found is being typed, or typed anew after a slip. */
  | { readonly at: "step"; readonly row: number; readonly isOpen: boolean }
  | { readonly at: "snags" }
  /** A snag by its row on the sheet; null where it is being raised, about a row of steps where it was raised there. */
  | { readonly at: "snag"; readonly row: number | null; readonly about: number | null };

/** Where somebody is on the way through a tab. */
export interface Walk {
  readonly job: JobTab;
  readonly place: Place;
}

/** What turns the page. */
export type Turn =
  /** The tab was read anew: something was typed into it. */
  | { readonly to: "read"; readonly job: JobTab }
  | { readonly to: "list" }
  | { readonly to: "row"; readonly row: number }
  | { readonly to: "next" }
  | { readonly to: "back" }
  | { readonly to: "next open" }
  /** What was found in the row at hand is typed anew. */
  | { readonly to: "mend" }
  | { readonly to: "snags" }
  | { readonly to: "snag"; readonly row: number | null };

/** Begins with the list of sections. */
export function beginWalk(job: JobTab): Walk {
  return { job, place: { at: "list" } };
}

/** The rows of steps in the order in which they are done. */
export function rowsOf({ sections }: Pick<JobTab, "sections">): readonly StepRow[] {
  return sections.flatMap(({ rows }) => rows);
}

/** Finds the first row, from one on and then from the top, that is not settled; undefined where all are. */
export function nextOpen(job: Pick<JobTab, "sections">, from: number | null): StepRow | undefined {
  const open = rowsOf(job).filter(({ settled }) => !settled);
  return open.find(({ row }) => from !== null && row > from) ?? open[0];
}

/** Tells whether nobody may go on from a row: a hold point that is still open is left by the list or backwards, never passed. */
export function staysAt({ records, settled }: StepRow): boolean {
  return !settled && records.some(({ holdPoint, required, typed }) => holdPoint && (required || typed.found !== null));
}

/** Turns the page. A turn that leads nowhere leaves everything as it is. */
export function turn(walk: Walk, to: Turn): Walk {
  const { job, place } = walk;
  const rows = rowsOf(job);
  const at = place.at === "step" ? rows.findIndex(({ row }) => row === place.row) : -1;
  const goTo = (row: StepRow | undefined): Walk => (row === undefined ? { job, place: { at: "list" } } : { job, place: { at: "step", row: row.row, isOpen: false } });
  switch (to.to) {
    case "read":
      return { job: to.job, place: afterReading(place) };
    case "list":
    case "snags":
      return { job, place: { at: to.to } };
    case "row":
      return goTo(rows.find(({ row }) => row === to.row));
    case "next":
      return at < 0 ? walk : staysAt(rows[at]!) ? walk : goTo(rows[at + 1]);
    case "back":
      if (place.at === "snag") return place.about === null ? { job, place: { at: "snags" } } : goTo(rows.find(({ row }) => row === place.about));
      return goTo(at < 0 ? undefined : rows[at - 1]);
    case "next open":
      return goTo(nextOpen(job, place.at === "step" ? place.row : null));
    case "mend":
      return place.at === "step" ? { job, place: { ...place, isOpen: true } } : walk;
    case "snag":
      return { job, place: { at: "snag", row: to.row, about: at < 0 ? null : rows[at]!.row } };
  }
}

/** After something was typed the row shows what came of it, and a snag leads back to where it was raised. */
function afterReading(place: Place): Place {
  switch (place.at) {
    case "step":
      return { ...place, isOpen: false };
    case "snag":
      return place.about === null ? { at: "snags" } : { at: "step", row: place.about, isOpen: false };
    default:
      return place;
  }
}
