import type { Cell } from "../../../sheet";
import type { PlanModel } from "../../plan/model";
import type { ExpandedJob } from "../job";
import { blankRow, firstSentence, joinRows, spanRow, type Span, type SummaryRow } from "./summary-row";
import { addressTable, feedTable, networkTable, poolTable, positionTable } from "./summary-tables";
import type { TabColumn } from "./tab-columns";
import type { ProgressFormulas } from "./tab-formulas";
import type { TabStyle } from "./tab-styles";
import { figureLabels } from "./twin-cells";

/** When and out of what a tab is built. */
export interface BuildStamp {
  readonly build: number;
  /** Instant of the job's first build, ISO. */
  readonly born: string;
  /** When this build was made, as people read it. */
  readonly madeAt: string;
  /** Name of the plan it was made from. */
  readonly planName: string;
}

const howToFill = [
  "Anyone may stop the work. Found: what you see, Yes or No where nothing is entered; By: your name.",
  "“Not applicable” and “Waived” want a reason in Note.",
  "What differs goes to Snags: the first Found stays.",
].join(" ");

/**
 * Plans what stands above the steps: where and what, how far the job is, cautions, addresses, rack positions, feed loads and capacity.
 *
 * The tables stand side by side (addresses left, the rest right), so that a site of a few arrays fits on one screen.
 */
export function planSummary(expanded: ExpandedJob, model: PlanModel, stamp: BuildStamp, formulas: ProgressFormulas): SummaryRow[] {
  const left = addressTable(expanded, model);
  const right = [...positionTable(expanded, model), ...networkTable(expanded, model), ...feedTable(expanded, model), ...poolTable(expanded, model)];
  const height = Math.max(left.length, right.length);
  return [
    wideRow(whereAndWhat(expanded, stamp), "facts"),
    wideRow(howToFill, "facts"),
    ...cautionRows(expanded),
    ...progressRows(formulas),
    blankRow,
    ...Array.from({ length: height }, (_, index) => joinRows(left[index], right[index])),
    blankRow,
  ];
}

function whereAndWhat({ job, places: { site } }: ExpandedJob, { build, madeAt, planName }: BuildStamp): string {
  const labelled = (label: string, text: string | null): string => (text === null || text === "" ? "" : `${label} ${text}`);
  return [
    `Site ${site.site}`,
    labelled("room", site.room),
    labelled("contact", site.contact),
    job.procedure,
    labelled("planned", job.plannedDate),
    labelled("about", job.subject),
    `build ${build}, made ${madeAt} from ${planName}`,
  ].filter((text) => text !== "").join(" · ");
}

function progressRows(formulas: ProgressFormulas): SummaryRow[] {
  const figures: readonly (readonly [label: string, formula: string, from: TabColumn, to?: TabColumn])[] = [
    [figureLabels.next, formulas.next, "step"],
    [figureLabels.done, formulas.done, "subject"],
    [figureLabels.open, formulas.open, "result"],
    [figureLabels.differ, formulas.differ, "expected"],
    [figureLabels.again, formulas.again, "found"],
    [figureLabels.eye, formulas.eye, "unit", "expectedBefore"],
    [figureLabels.secondName, formulas.secondName, "recheckedBy"],
    [figureLabels.snags, formulas.snags, "by"],
    [figureLabels.minutes, formulas.minutes, "witness"],
    [figureLabels.seal, formulas.seal, "done", "note"],
  ];
  const isText = (formula: string): boolean => formula === formulas.next || formula === formulas.seal;
  return [
    spanRow(figures.map(([label, , from, to = from]) => [{ from, to }, { value: label, style: "label" }])),
    spanRow(figures.map(([, formula, from, to = from]) => [{ from, to }, { formula, style: isText(formula) ? "figureText" : "figure" }])),
  ];
}

/** Lists what can hurt in two columns, in the order of the work: the first sentence of every caution, once. */
function cautionRows({ sections }: ExpandedJob): SummaryRow[] {
  const firsts = sections.flatMap(({ steps }) => steps.map(({ caution }) => firstSentence(caution)));
  const lines = [...new Set(firsts)].filter((text) => text !== "").map((text) => `• ${text}`);
  if (lines.length === 0) return [];
  const length = (some: readonly string[]): number => some.reduce((sum, text) => sum + text.length, 0);
  const half = lines.findIndex((_, index) => length(lines.slice(0, index + 1)) >= length(lines) / 2) + 1;
  const list = (some: readonly string[]): Cell => ({ value: some.join("\n"), style: "caution" });
  return [
    wideRow("Cautions, in the order of the work. Each stands in full at its step.", "cautionHead"),
    spanRow([[{ from: "no", to: "found" }, list(lines.slice(0, half))], [{ from: "unit", to: "note" }, list(lines.slice(half))]]),
  ];
}

/** All columns that people see. */
const wholeWidth: Span = { from: "no", to: "note" };

function wideRow(value: string, style: TabStyle): SummaryRow {
  return spanRow([[wholeWidth, { value, style }]]);
}
