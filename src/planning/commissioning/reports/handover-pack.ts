import { drawingPages, svgOf } from "../../drawings";
import { groupBy } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { block, planPrintout, type PackBlock, type PackLine, type Printout } from "../../printouts";
import { canonicalText } from "../../text";
import type { SheetPlan } from "../../../sheet";
import type { CommissioningPlan } from "../build";
import { expandJob, type ExpandedJob } from "../job";
import { isClosed, isReopened, isSnagClosed, judgedByPlan, results, signed, snagText, type JobRecords, type Snag, type StepRecord } from "../record";
import { FoundBlocks } from "./found-blocks";
import { wordsOf } from "./found-plan";

/** What is handed over of a job, as plain data: the sheet and the PDF show the same. */
export interface HandoverPack extends Printout {
  readonly job: string;
  readonly build: number;
  /** Code of the seal that holds; "" where none does. */
  readonly seal: string;
}

/** Columns of the sheet: the most that a block of the pack has. */
const columnWidths = [22, 18, 44, 24, 20, 18, 18, 28];

/** Plans the sheet of a handover pack. */
export function planHandover(name: string, pack: HandoverPack): SheetPlan {
  return planPrintout(name, pack, columnWidths);
}

/** The tab of a job that is handed over. */
export interface HandedOver {
  readonly tab: JobRecords;
  /** True where its last seal is whole. */
  readonly sealHolds: boolean;
}

/** Begins the title of every pack: by it a handover sheet is known for ours. */
export const handoverMark = "Handover";

/**
 * Gathers what is handed over of a job: what is open first, then what differs and what was waived, what stands there as the tab found it, what was
 * measured against what was agreed, whom to call, and the seal.
 *
 * A closed tab is judged as it was closed, an open one by the plan as it is now. What was found comes from the tab; where the plan said something else both are given,
 * and what nobody recorded is marked as planned.
 */
export function handoverPack(source: CommissioningPlan, job: PlanRow<"jobs">, { tab, sealHolds }: HandedOver, madeAt: string): HandoverPack {
  const { model } = source;
  const customer = model.find("sites", job.site)?.customer ?? "";
  const expanded = expandJob(model, job);
  const records = isClosed(tab) ? tab : judgedByPlan(tab, expanded);
  const open = records.steps.filter(({ required, settled }) => required && !settled);
  const openSnags = records.snags.filter((snag) => !isSnagClosed(snag));
  const isComplete = open.length + openSnags.length === 0;
  const found = new FoundBlocks(model, expanded, records, model.places.emptiesDrives(job.procedure) ? "as built" : "as found");
  const title = `${handoverMark}: ${job.job}`;
  const seal = sealHolds && isClosed(tab) ? canonicalText(tab.seals.at(-1)!.typed.code) : "";
  return {
    title,
    mark: `build ${tab.build}, ${seal === "" ? "not sealed" : `seal ${seal}`}`,
    fileTitle: `${title}, build ${tab.build}`,
    job: job.job,
    build: tab.build,
    facts: `${job.procedure}, site ${job.site}${customer === "" ? "" : ` of ${customer}`}, build ${tab.build}, made ${madeAt}`,
    standing: isComplete
      ? "Every required step is settled and every snag is closed or accepted by name."
      : `Not complete: ${counted(open.length, "required step")} and ${counted(openSnags.length, "snag")} open.`,
    isComplete,
    seal,
    madeAt,
    paper: model.settings.paper,
    blocks: [
      ...openBlocks(open, openSnags),
      ...deviationBlocks(records),
      ...found.blocks(),
      ...measuredBlocks(records, expanded),
      ...found.contactBlocks(),
      sealBlock(tab, sealHolds),
    ],
    // The sheet has no place for them: they are drawn when the PDF asks.
    get pictures() {
      return drawingPages(model, job.site, { madeAt, planName: "" }).map((page) => ({ svg: svgOf(page), width: page.width, height: page.height }));
    },
    signatures: ["For the site, name and date", "For the installer, name and date"],
  };
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function openBlocks(open: readonly StepRecord[], openSnags: readonly Snag[]): PackBlock[] {
  return [
    block(
      "Required steps still open",
      ["No.", "Step id", "Step", "For", "Expected", "Found", "Result"],
      open.map((step) => [step.no, step.stepId, wordsOf(step), step.subject, step.expected, foundText(step), step.result ?? "not done"]),
      "None: every required step is settled.",
    ),
    block(
      "Snags still open",
      ["Snag", "Step id", "What was found", "Who puts it right", "By when"],
      openSnags.map(({ id, stepId, typed }) => [id, stepId, ...(["foundWrong", "mender", "byWhen"] as const).map((field) => snagText(field, typed[field]))]),
      "None: every snag is closed or accepted by name.",
    ),
  ];
}

/** Results that somebody chose in place of doing a step. */
const setAside: ReadonlySet<StepRecord["result"]> = new Set([results.waived, results.notApplicable]);

function deviationBlocks({ steps, snags }: JobRecords): PackBlock[] {
  const done = steps.filter(({ result }) => result !== null);
  const deviating = done.filter(({ result }) => result !== results.asExpected && !setAside.has(result));
  return [
    block(
      "Deviations",
      ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Note"],
      deviating.map((step) => {
        const { by, note } = signed(step, steps).typed;
        return [step.no, step.stepId, step.subject, step.expected, foundText(step), step.result ?? "", canonicalText(by), canonicalText(note)];
      }),
      done.length === 0 ? "No step has been done yet." : `None: nothing of the ${counted(done.length, "step")} that ${done.length === 1 ? "was" : "were"} done differs.`,
    ),
    block(
      "Waived and not applicable",
      ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Reason"],
      done.filter(({ result }) => setAside.has(result)).map((step) => {
        const { by, reason } = waiverOf(signed(step, steps), snags);
        return [step.no, step.stepId, step.subject, step.expected, foundText(step), step.result ?? "", by || "no name", reason || "no reason"];
      }),
      "None.",
    ),
    block(
      "Snags closed or accepted",
      ["Snag", "Step id", "What was found", "Found again", "State", "By", "Note"],
      snags.filter(isSnagClosed).map(({ id, stepId, typed }) => [id, stepId, ...(["foundWrong", "foundAgain", "closed", "by", "note"] as const).map((field) => snagText(field, typed[field]))]),
      "None.",
    ),
  ];
}

/** Finds who waived a step and why: on its row, or in the last snag that was accepted about it. */
function waiverOf({ key, typed }: StepRecord, snags: readonly Snag[]): { readonly by: string; readonly reason: string } {
  const own = { by: canonicalText(typed.by), reason: canonicalText(typed.note) };
  const snag = snags.filter((one) => one.key === key && isSnagClosed(one)).at(-1);
  if (snag === undefined) return own;
  const reason = [snagText("foundWrong", snag.typed.foundWrong), snagText("note", snag.typed.note), own.reason].filter((text) => text !== "").join("\n");
  return { by: snagText("by", snag.typed.by), reason: `${snag.id} ${reason}`.trim() };
}

/** Writes what was found as people read it: a day as a date, a size with the unit that was seen. */
function foundText({ kind, typed, seenUnit }: StepRecord): string {
  const text = canonicalText(typed.found, kind === "date");
  return text === "" || seenUnit === "" || typeof typed.found !== "number" ? text : `${text} ${seenUnit}`;
}

/** Lists what was measured, and what was noted where nothing was expected; what several subjects have alike stands in one line. */
function measuredBlocks({ steps }: JobRecords, { sections }: ExpandedJob): PackBlock[] {
  const planned = new Map(sections.flatMap((section) => section.steps.map((step) => [step.key, step] as const)));
  const done = steps.filter(({ typed }) => typed.found !== null).map((step) => signed(step, steps));
  const isMeasured = ({ key, kind }: StepRecord): boolean => kind === "size" || (kind === "number" && (planned.get(key)?.planCell ?? null) === null);
  const isAgainstLimit = ({ key, kind }: StepRecord): boolean => kind === "number" && /^at (least|most) /.test(planned.get(key)?.expectation.shown ?? "");
  const isNoted = ({ kind, expected }: StepRecord): boolean => expected === "" && (kind === "text" || kind === "date" || kind === "choice" || kind === "address");
  const lineOf = (alike: readonly StepRecord[], cells: readonly string[]): PackLine => [alike[0]!.stepId, alike.map(({ subject }) => subject).join(", "), wordsOf(alike[0]!), ...cells];
  const linesOf = (records: readonly StepRecord[], cellsOf: (record: StepRecord) => readonly string[]): PackLine[] =>
    [...groupBy(records, (record) => [record.stepId, wordsOf(record), ...cellsOf(record)].join("\n")).values()].map((alike) => lineOf(alike, cellsOf(alike[0]!)));
  const by = ({ typed }: StepRecord): string => [canonicalText(typed.by), canonicalText(typed.done, true)].filter((text) => text !== "").join("\n");
  return [
    block(
      "Measured against what was agreed",
      ["Step id", "For", "Step", "Agreed", "Measured", "Result", "By"],
      linesOf(done.filter((step) => isMeasured(step) || isAgainstLimit(step)), (step) => [agreedText(step), foundText(step), step.result ?? "", by(step)]),
      "Nothing was measured.",
    ),
    block("Noted on site", ["Step id", "For", "Step", "Noted", "By"], linesOf(done.filter(isNoted), (step) => [foundText(step), by(step)]), "Nothing was noted."),
  ];
}

/** Writes what was agreed with its unit, which that of a size has in it. */
function agreedText({ kind, expected, plannedUnit }: StepRecord): string {
  return expected === "" ? "nothing agreed" : kind === "size" ? expected : `${expected} ${plannedUnit}`.trim();
}

/** Lists the seals with what became of each: only the last one can hold. */
function sealBlock({ seals }: JobRecords, holds: boolean): PackBlock {
  const lines = seals.map((seal, index): PackLine => {
    const { typed } = seal;
    const isOver = index < seals.length - 1 || isReopened(seal);
    const state = isOver ? `reopened ${canonicalText(typed.reopened, true)} by ${canonicalText(typed.reopenedBy)}` : holds ? "holds" : "BROKEN";
    return [canonicalText(typed.code), canonicalText(typed.sealed, true), canonicalText(typed.by), state];
  });
  const note = "A seal shows that something changed since, not who changed it. The code on the signed page is the proof.";
  return block("Seal", ["Code", "Sealed", "By", "State"], lines, "Not sealed: the tab is not closed out.", lines.length === 0 ? "" : note);
}
