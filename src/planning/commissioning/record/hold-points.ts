import type { OpenItem } from "./close-out";
import type { JobRecords } from "./job-records";
import type { StepRecord } from "./step-record";

/**
 * Lists the hold points that work went past: below one that is still open something was found, or was done on an earlier day than the hold point
 * was. The one is mended by signing the hold point, the other can only be accepted by name.
 *
 * What comes below follows from the numbers of the build, so that sorting the rows does no harm. A hold point about one array holds what is about
 * that array, any other one holds everything. Days are compared, not hours. One that is not required holds once something was found.
 */
export function passedHoldPoints({ jobId, steps }: Pick<JobRecords, "jobId" | "steps">): OpenItem[] {
  const arrayOf = arrayIn(jobId);
  const byKey = new Map(steps.map((step) => [step.key, step]));
  const found = steps.filter(({ typed }) => typed.found !== null).map((step): Found => ({ step, no: Number(step.no), array: arrayOf(step), day: dayOf(byKey.get(step.slot?.signKey ?? "") ?? step) }));
  return steps.filter(isHolding).flatMap((hold): OpenItem[] => {
    const [array, day] = [arrayOf(hold), dayOf(hold)];
    const below = found.filter((one) => one.no > Number(hold.no) && isHeldWith(array, one.array));
    const past = hold.settled ? below.filter((one) => one.day !== null && day !== null && one.day < day) : below;
    const first = past.reduce<Found | undefined>((least, one) => (least === undefined || one.no < least.no ? one : least), undefined);
    if (first === undefined) return [];
    const more = new Set(past.map(({ no }) => no)).size - 1;
    const rows = more === 0 ? "was" : `and ${more} more ${more === 1 ? "row" : "rows"} below were`;
    const fact = `No. ${first.no} ${first.step.stepId} ${rows} done before hold point No. ${hold.no} ${hold.stepId} was signed.`;
    return [hold.settled ? { row: first.step.row, fact, sentence: `${fact} Mend the day, or accept it by name.` } : { row: first.step.row, sentence: `${fact} Stop there, and sign it first.` }];
  });
}

/** Finds the first hold point that is still open and holds a step: nothing may be done there before it is signed. Null where there is none. */
export function openHoldPoint({ jobId, steps }: Pick<JobRecords, "jobId" | "steps">, step: StepRecord): StepRecord | null {
  const arrayOf = arrayIn(jobId);
  return steps.find((hold) => isHolding(hold) && !hold.settled && Number(hold.no) < Number(step.no) && isHeldWith(arrayOf(hold), arrayOf(step))) ?? null;
}

/** Tells whether a step is a hold point that counts: one that is not required does once something was found. */
function isHolding({ holdPoint, required, typed }: StepRecord): boolean {
  return holdPoint && (required || typed.found !== null);
}

/** Tells whether a hold point about an array, or about everything, holds what is about this one. */
function isHeldWith(held: string | null, array: string | null): boolean {
  return held === null || array === held;
}

/** A record in which something was found. */
interface Found {
  readonly step: StepRecord;
  readonly no: number;
  readonly array: string | null;
  readonly day: number | null;
}

/**
 * Makes what reads from the key of a step of a job which array it is about; null where it is about the site, a cluster or a pool.
 *
 * A job that has no id yet goes by its name, in which a slash may stand, and so may one in a step id: neither ends there.
 */
export function arrayIn(jobId: string): (step: Pick<StepRecord, "key" | "stepId">) => string | null {
  return ({ key, stepId }) => {
    const behind = key.slice(jobId.length + 1);
    const subject = behind.slice((behind.startsWith(`${stepId}/`) ? stepId.length : behind.indexOf("/")) + 1);
    return subject === "site" || /\.(cluster|pool)$/.test(subject) ? null : (subject.split(".")[0] ?? null);
  };
}

function dayOf({ typed: { done } }: StepRecord): number | null {
  return typeof done === "number" ? Math.floor(done) : null;
}
