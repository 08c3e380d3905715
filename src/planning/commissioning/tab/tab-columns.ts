import { columnLetters } from "../../../sheet";
import { foundFields, foundLabels, sealFields, sealLabels, stepLabels, type FoundField, type SealField, type StepField } from "../record";

/**
 * Columns of a commissioning tab in their order, named for what they hold in the row of a step. Hidden ones carry keys and comparisons.
 *
 * Widths are in characters, and the least of those that people see: they hold what has to stand on one line, as an address with its prefix length, a
 * serial number, a day, the longest word of a header. What the paper leaves goes where it is needed most.
 */
export const tabColumns = {
  no: { header: "No.", width: 4.4 },
  stepId: { header: "Step id", width: 7.6 },
  step: { header: "Step", width: 20 },
  subject: { header: "For", width: 10 },
  result: { header: "Result", width: 9 },
  expected: { header: "Expected", width: 14.2 },
  found: { header: stepLabels.found, width: 13 },
  unit: { header: stepLabels.unit, width: 14.4 },
  expectedBefore: { header: "Before", width: 10.5 },
  recheckedBy: { header: stepLabels.recheckedBy, width: 14.4 },
  by: { header: stepLabels.by, width: 9.5 },
  witness: { header: stepLabels.witness, width: 14.4 },
  done: { header: stepLabels.done, width: 10 },
  note: { header: stepLabels.note, width: 9 },
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
  low2: { header: "Low 2", width: 10 },
  high2: { header: "High 2", width: 10 },
  compares2: { header: "Compares 2", width: 10 },
  low3: { header: "Low 3", width: 10 },
  high3: { header: "High 3", width: 10 },
  compares3: { header: "Compares 3", width: 10 },
  low4: { header: "Low 4", width: 10 },
  high4: { header: "High 4", width: 10 },
  compares4: { header: "Compares 4", width: 10 },
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
  recheckedBy: "recheckedBy",
  by: "by",
  witness: "witness",
  done: "done",
  note: "note",
} as const satisfies Record<StepField, TabColumn>;

/** Where what belongs to one step stands in the row of a grid. */
export interface SlotColumns {
  readonly expected: TabColumn;
  readonly found: TabColumn;
  readonly low: TabColumn;
  readonly high: TabColumn;
  readonly compares: TabColumn;
}

/** Columns of the pairs of a grid from left to right; together they are the eight that are Expected to Done in a list. */
export const slotColumns: readonly SlotColumns[] = [
  { expected: "expected", found: "found", low: "low", high: "high", compares: "compares" },
  { expected: "unit", found: "expectedBefore", low: "low2", high: "high2", compares: "compares2" },
  { expected: "recheckedBy", found: "by", low: "low3", high: "high3", compares: "compares3" },
  { expected: "witness", found: "done", low: "low4", high: "high4", compares: "compares4" },
];

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

/** Labels above the texts found elsewhere and the seals, by the column they stand in. */
export const foundHeads = headsOf(foundFields, foundLabels, foundColumns);
export const sealHeads = headsOf(sealFields, sealLabels, sealColumns);

/** Turns labels of fields into labels of the columns they stand in. */
export function headsOf<Field extends string>(
  fields: readonly Field[],
  labels: Readonly<Record<Field, string>>,
  columns: Readonly<Record<Field, TabColumn>>,
): Partial<Record<TabColumn, string>> {
  return Object.fromEntries(fields.map((field) => [columns[field], labels[field]]));
}

/** Texts in the key column that mark what is not a step. The row of a record whose step is gone has its key behind `orphanPrefix`, that of a grid its keys behind `slotsPrefix`. */
export const tags = { grid: "#grid", words: "#words", snags: "#snags", snag: "#snag", orphans: "#kept", texts: "#elsewhere", text: "#text", paper: "#paper", seals: "#seals", seal: "#seal" } as const;
export const orphanPrefix = "kept:";
export const slotsPrefix = "slots:";

/** Tells whether a key would be taken for one of these texts: no id of a job may begin so. */
export function isTagged(key: string): boolean {
  return ["#", orphanPrefix, slotsPrefix].some((one) => key.startsWith(one));
}
