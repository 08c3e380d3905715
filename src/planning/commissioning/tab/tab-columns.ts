import { columnLetters } from "../../../sheet";
import { foundLabels, sealLabels, snagLabels, stepLabels, type FoundField, type SealField, type SnagField, type StepField } from "../record";

/** Columns of a commissioning tab in their order, named for what they hold in the row of a step. Hidden ones carry keys and comparisons. */
export const tabColumns = {
  no: { header: "No.", width: 5 },
  stepId: { header: "Step id", width: 9 },
  step: { header: "Step", width: 44 },
  subject: { header: "For", width: 13 },
  expected: { header: "Expected", width: 18 },
  found: { header: stepLabels.found, width: 17 },
  unit: { header: stepLabels.unit, width: 7 },
  result: { header: "Result", width: 13 },
  was: { header: "Was", width: 10 },
  seenAgain: { header: stepLabels.seenAgain, width: 7 },
  by: { header: stepLabels.by, width: 10 },
  second: { header: stepLabels.second, width: 10 },
  done: { header: stepLabels.done, width: 11 },
  note: { header: stepLabels.note, width: 17 },
  key: { header: "Key", width: 30 },
  rule: { header: "Rule", width: 16 },
  low: { header: "Low", width: 10 },
  high: { header: "High", width: 10 },
  plannedUnit: { header: "Planned unit", width: 10 },
  compares: { header: "Compares", width: 10 },
  retest: { header: "Retest", width: 10 },
  retestCompares: { header: "Retest compares", width: 10 },
  settled: { header: "Settled", width: 10 },
  minutes: { header: "Minutes", width: 10 },
  carried: { header: "Carried", width: 12 },
  built: { header: "Built", width: 30 },
  digest: { header: "Digest", width: 30 },
} as const;

export type TabColumn = keyof typeof tabColumns;

export const tabColumnKeys = Object.keys(tabColumns) as readonly TabColumn[];

/** How many columns people see: the rest is hidden. */
export const shownColumns = tabColumnKeys.indexOf("key");

function byColumn<Value>(valueOf: (index: number) => Value): Readonly<Record<TabColumn, Value>> {
  return Object.fromEntries(tabColumnKeys.map((key, index) => [key, valueOf(index)])) as Record<TabColumn, Value>;
}

/** Number of each column as a tab is built, from 0. */
export const at = byColumn((index) => index);

/** Letter of each column as a tab is built. */
export const letter = byColumn(columnLetters);

/** Column in which each field of a step's record is typed. */
export const stepColumns = {
  found: "found",
  unit: "unit",
  seenAgain: "seenAgain",
  by: "by",
  second: "second",
  done: "done",
  note: "note",
} as const satisfies Record<StepField, TabColumn>;

/** Column in which each field of a snag is typed. */
export const snagColumns = {
  about: "no",
  foundWrong: "step",
  mender: "subject",
  byWhen: "expected",
  foundAgain: "found",
  closed: "result",
  by: "by",
  note: "note",
} as const satisfies Record<SnagField, TabColumn>;

/** Column in which the formulas of a snag's row answer, and what they say. */
export const snagAnswers = {
  /** Id of the step it is about. */
  stepId: "stepId",
  /** Number of the step, then how many snags about it stand from here on: the last one ends in #1. */
  place: "rule",
  /** What it hands to its step once it is closed: the retest. */
  retest: "low",
  /** 1 while it is open. */
  isOpen: "high",
  /** Key of the step it is about. */
  key: "plannedUnit",
} as const satisfies Record<string, TabColumn>;

/** Column in which each field of a text found elsewhere stands. */
export const foundColumns = { from: "stepId", text: "step", place: "note" } as const satisfies Record<FoundField, TabColumn>;

/** Column in which each field of a line of the seals stands. Version and rows of the seal stand under `digest`. */
export const sealColumns = {
  sealed: "stepId",
  code: "step",
  by: "subject",
  reopened: "expected",
  reopenedBy: "found",
  reason: "note",
} as const satisfies Record<SealField, TabColumn>;

/** Column of each cell in the first row by which a tab is known; they stand side by side. */
export const markColumns = { marker: "key", jobId: "rule", build: "low", born: "high", state: "plannedUnit" } as const satisfies Record<string, TabColumn>;

/** Labels above the snags, the texts found elsewhere and the seals, by the column they stand in. */
export const snagHeads = headsOf(snagLabels, snagColumns);
export const foundHeads = headsOf(foundLabels, foundColumns);
export const sealHeads = headsOf(sealLabels, sealColumns);

function headsOf<Field extends string>(labels: Readonly<Record<Field, string>>, columns: Readonly<Record<Field, TabColumn>>): Partial<Record<TabColumn, string>> {
  return Object.fromEntries((Object.keys(labels) as Field[]).map((field) => [columns[field], labels[field]]));
}

/** Texts in the key column that mark what is not a step. The row of a record whose step is gone has its key behind `orphanPrefix`. */
export const tags = { snags: "#snags", snag: "#snag", orphans: "#kept", texts: "#elsewhere", text: "#text", seals: "#seals", seal: "#seal" } as const;
export const orphanPrefix = "kept:";
