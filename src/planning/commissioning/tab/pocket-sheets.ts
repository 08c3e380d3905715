import type { Cell } from "../../../sheet";
import { idOfArray } from "../../plan/subjects";
import type { ExpandedJob, JobStep } from "../job";
import { arrayIn } from "../record";
import { blankRow, joinRows, spanRow, type Span, type SummaryRow } from "./summary-row";

/** A hold point with the section in which it stands. */
interface HoldPoint {
  readonly step: JobStep;
  readonly section: string;
}

/** Over which columns the pocket sheets run that stand side by side. */
const sides: readonly Span[] = [{ from: "no", to: "subject" }, { from: "result", to: "found" }, { from: "unit", to: "recheckedBy" }, { from: "by", to: "note" }];

/**
 * Plans a pocket sheet for each array that has hold points and one for the site, side by side: their hold points in the order of the work, by
 * the numbers of their rows. Each is cut out and carried along.
 *
 * Nothing is filled in there: a hold point is signed in its own row.
 */
export function pocketSheets({ id, places: { site, arrays }, sections }: ExpandedJob, numberOf: (step: JobStep) => number): SummaryRow[][] {
  const arrayOf = arrayIn(id);
  const points = sections.flatMap(({ title, steps }) => steps.filter(({ holdPoint }) => holdPoint).map((step): HoldPoint => ({ step, section: title })));
  const ids = arrays.map(idOfArray);
  const own = arrays.map(({ array }, index) => sheetOf(array, points.filter(({ step }) => arrayOf(step) === ids[index]), numberOf));
  const others = sheetOf(site.site, points.filter(({ step }) => !ids.includes(arrayOf(step) ?? "")), numberOf);
  const sheets = [...own, others].filter((sheet) => sheet !== null);
  return inRows(sheets, sides.length).map((row) => {
    const beside = row.map((sheet, side) => sheet(sides[side]!));
    return Array.from({ length: Math.max(...beside.map(({ length }) => length)) }, (_, line) => beside.map((rows) => rows[line]).reduce((left, right) => joinRows(left, right)) ?? blankRow);
  });
}

function inRows<Item>(items: readonly Item[], length: number): Item[][] {
  return Array.from({ length: Math.ceil(items.length / length) }, (_, row) => items.slice(row * length, (row + 1) * length));
}

/** Plans the sheet of an array or a site, for the side on which it is then to stand; null where it has no hold point. */
function sheetOf(name: string, points: readonly HoldPoint[], numberOf: (step: JobStep) => number): ((side: Span) => SummaryRow[]) | null {
  if (points.length === 0) return null;
  const heads = [`Pocket sheet: ${name}`, "Hold points; (2): two names sign"].map((value): Cell => ({ value, style: "pocketHead" }));
  const lines = points.map((point): Cell => ({ value: lineOf(point, name, numberOf(point.step)), style: "pocket" }));
  // A text runs over the blank cells beside it: cells that are merged are slow to write.
  return (side) => [...heads, ...lines].map((cell) => ({ ...spanRow([[side, cell]]), merges: [] }));
}

function lineOf({ step: { stepId, subject, sign }, section }: HoldPoint, name: string, no: number): string {
  const about = subject === name ? "" : subject.startsWith(`${name} `) ? subject.slice(name.length + 1) : subject;
  return `${no} ${stepId} ${[section, about].filter((text) => text !== "").join(", ")}${sign === "two" ? " (2)" : ""}`;
}
