import { isFilled } from "./entries";
import type { StepRecord } from "./step-record";

/** Gives the record of a grid the names and the day of the row that signs for it; any other one has its own. */
export function signed(record: StepRecord, steps: readonly StepRecord[]): StepRecord {
  const { slot, typed } = record;
  const sign = slot === null || slot.signKey === "" || !isFilled(typed) ? undefined : steps.find(({ key }) => key === slot.signKey);
  if (sign === undefined) return record;
  const { by, witness, done } = sign.typed;
  return { ...record, typed: { ...typed, by, witness, done } };
}
