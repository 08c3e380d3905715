/** Columns of a commissioning tab in their order. Hidden ones carry keys and comparisons. */
export const tabColumns = {
  no: { header: "No.", width: 5 },
  stepId: { header: "Step id", width: 9 },
  step: { header: "Step", width: 44 },
  subject: { header: "For", width: 13 },
  expected: { header: "Expected", width: 18 },
  found: { header: "Found", width: 17 },
  unit: { header: "Unit", width: 7 },
  result: { header: "Result", width: 13 },
  was: { header: "Was", width: 10 },
  seenAgain: { header: "Seen again", width: 7 },
  by: { header: "By", width: 10 },
  second: { header: "Second", width: 10 },
  done: { header: "Done", width: 11 },
  note: { header: "Note", width: 17 },
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
  digest: { header: "Digest", width: 30 },
} as const;

export type TabColumn = keyof typeof tabColumns;

export const tabColumnKeys = Object.keys(tabColumns) as readonly TabColumn[];

/** Columns that people see: the rest is hidden. */
export const shownColumns = tabColumnKeys.indexOf("key");

/** Number of each column as a tab is built, from 0. */
export const at = Object.fromEntries(tabColumnKeys.map((key, index) => [key, index])) as Readonly<Record<TabColumn, number>>;

/** Letter of each column as a tab is built. */
export const letter = Object.fromEntries(tabColumnKeys.map((key, index) => [key, String.fromCharCode(65 + index)])) as Readonly<Record<TabColumn, string>>;

/** What people type into the row of a step. */
export const typedColumns = ["found", "unit", "seenAgain", "by", "second", "done", "note"] as const satisfies readonly TabColumn[];

export type TypedColumn = (typeof typedColumns)[number];

/** What people type into a snag, by the column of the tab it stands in. */
export const snagColumns = {
  no: "Row",
  step: "What was found",
  subject: "Who mends",
  expected: "By when",
  found: "Found again",
  result: "Closed",
  by: "By",
  note: "Note",
} as const satisfies Partial<Record<TabColumn, string>>;

export type SnagColumn = keyof typeof snagColumns;

export const snagColumnKeys = Object.keys(snagColumns) as readonly SnagColumn[];

/** What stands in a line of the seals, by the column of the tab it stands in. */
export const sealColumns = {
  stepId: "Sealed",
  step: "Code",
  subject: "By",
  expected: "Reopened",
  found: "Reopened by",
  note: "Reason",
} as const satisfies Partial<Record<TabColumn, string>>;

export type SealColumn = keyof typeof sealColumns;

export const sealColumnKeys = Object.keys(sealColumns) as readonly SealColumn[];

/** Texts in the key column that mark what is not a step. A kept record has its own key behind `keptPrefix`. */
export const tags = { snags: "#snags", snag: "#snag", kept: "#kept", seals: "#seals", seal: "#seal" } as const;
export const keptPrefix = "kept:";
