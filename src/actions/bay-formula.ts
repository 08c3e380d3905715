/** What a file shows in place of `BAY.` where the program that opened it does not know the add-in. */
const unknownPrefix = /_xldudf_BAY_/gi;

/** Writes a formula with the names of our functions as people type them, also where the file was opened without the add-in. */
export function withOurNames(formula: string): string {
  return formula.replace(unknownPrefix, "BAY.");
}

/** Tells whether a formula calls one of our functions; text in quotes and names of sheets do not count. */
export function callsOurs(formula: string): boolean {
  const bare = formula.replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'/g, "");
  return /(?:^|[^A-Z0-9_.])(?:BAY\.|_xldudf_BAY_)[A-Z]/i.test(bare);
}
