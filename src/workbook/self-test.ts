/** What became of one thing that was tried in a spreadsheet program. */
export interface ProbeOutcome {
  /** Never changes: answers of different days and programs are compared by it. */
  readonly id: string;
  /** What it belongs to, such as Text or Page. */
  readonly subject: string;
  /** What was done, as a sentence without its full stop. */
  readonly tried: string;
  /** What we count on; null where nobody knows beforehand, and what is found is worth knowing. */
  readonly expected: string | null;
  /** What was found, or the sentence why it could not be tried. */
  readonly found: string;
  readonly verdict: "as expected" | "differs" | "noted" | "not tried";
}

/** How far a self-test is. */
export interface SelfTestProgress {
  readonly done: number;
  readonly total: number;
  /** What is tried now. */
  readonly subject: string;
}

/**
 * Tries the program on a sheet of its own, which is there only for the time of the test; no other sheet is touched.
 *
 * Throws a `Problem` where no sheet can be added, and where the one that was added cannot be taken away again.
 */
export type SelfTest = (report: (progress: SelfTestProgress) => void) => Promise<readonly ProbeOutcome[]>;
