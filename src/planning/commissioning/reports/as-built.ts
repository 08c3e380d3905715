import type { Scalar, WorkbookSnapshot } from "../../../sheet";
import { writeCell, type Changes } from "../../plan/changes";
import type { PlanRow } from "../../plan/read";
import { columnsOf } from "../../plan/schema";
import type { CommissioningPlan } from "../build";
import { canonicalText, foldName } from "../../text";
import { expandJob, idOfJob, type JobStep } from "../job";
import { judgedByPlan, results, snagEndOf, type JobRecords, type StepRecord } from "../record";
import { tabFamily } from "../tab";

/** Columns of the plan that commissioning may correct: serials, units, firmware and addresses. */
const asBuiltColumns: ReadonlySet<string> = new Set(["arrays.serial", "arrays.firmware", "arrays.bottomUnit", "drives.serial", "ports.address", "clusters.sharedAddress"]);

/**
 * Lists what the accepted records of a job would change in the plan, as cells to be shown first and written then.
 *
 * A record counts where its step expects one cell of the plan as it stands, and where it is accepted: as expected, or waived by name. The
 * value is that of the last retest, else the first one found.
 */
export function asBuiltChanges(workbook: WorkbookSnapshot, source: CommissioningPlan, job: PlanRow<"jobs">): Changes {
  const { current } = tabFamily(source.tabs, idOfJob(job), job.job);
  if (current === null) return { writes: [], growths: [] };
  const expanded = expandJob(source.model, job);
  const records = new Map(judgedByPlan(current, expanded).steps.map((record) => [record.key, record]));
  const steps = expanded.sections.flatMap((section) => section.steps);
  const writes = steps.flatMap((step) => {
    const record = records.get(step.key);
    const value = record === undefined ? null : acceptedValue(current, record, step);
    const cell = step.planCell;
    const table = cell === null ? null : source.model.table(cell.table);
    if (cell === null || table === null || value === null || !asBuiltColumns.has(`${cell.table}.${cell.column}`)) return [];
    const write = writeCell(workbook, table, cell.row, cell.column, value);
    return write === null || foldName(canonicalText(write.before)) === foldName(canonicalText(value)) ? [] : [write];
  });
  return { writes, growths: [] };
}

/** Finds what was accepted for a step: the last retest, else the first thing found; null where nothing was. */
function acceptedValue({ snags }: JobRecords, { key, typed, result }: StepRecord, step: JobStep): Scalar {
  const isAccepted = result === results.asExpected || result === results.waived;
  if (typed.found === null || !isAccepted || canonicalText(typed.found) === results.waived) return null;
  const retest = snags.filter((snag) => snag.key === key && snag.typed.foundAgain !== null && snagEndOf(snag) !== null).at(-1);
  const seen = retest?.typed.foundAgain ?? typed.found;
  const [, column] = (step.planCell === null ? [] : columnsOf(step.planCell.table)).find(([name]) => name === step.planCell?.column) ?? [];
  if (column?.kind !== "count" && column?.kind !== "number") return canonicalText(seen);
  const number = Number(canonicalText(seen));
  return Number.isFinite(number) ? number : null;
}
