/** What a record of a step can be, as the column Record of the Steps table says it; a choice names its own words behind a colon. */
export const recordKinds = ["tick", "text", "number", "size", "address", "serial", "date", "choice"] as const;

/** What a record of a step is. */
export type RecordKind = (typeof recordKinds)[number];

/** On which side of what is expected a number may lie. */
export const bounds = ["=", "at least", "at most"] as const;

/** A side of what is expected. */
export type Bound = (typeof bounds)[number];

/** How many names sign for a step. */
export const signs = ["none", "one", "two"] as const;
