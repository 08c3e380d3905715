import type { FoundText } from "./found-text";
import { isReopened, type SealLine } from "./seal-line";
import type { Snag } from "./snag";
import type { StepRecord } from "./step-record";

/** Everything that was recorded about a job, as it was read from one of its tabs. */
export interface JobRecords {
  readonly jobId: string;
  readonly title: string;
  readonly build: number;
  /** When the job's tab was first built, which tells plans apart that use the same ids. */
  readonly born: string;
  readonly steps: readonly StepRecord[];
  readonly snags: readonly Snag[];
  /** Highest number that a snag of the job has had as its id, those that were deleted included. */
  readonly usedSnagIds: number;
  /** Records whose step is no longer there. */
  readonly orphans: readonly StepRecord[];
  readonly seals: readonly SealLine[];
  /** What people typed where no build looks for it: on this tab, and on earlier ones. */
  readonly elsewhere: readonly FoundText[];
  /** Row of the headers, from 0: where to look for what has no row of its own. */
  readonly headerRow: number;
  /** Sentences about cells that could not be taken as they are. */
  readonly remarks: readonly string[];
}

/** Tells whether there is a seal, whole or broken, that has not been reopened since. */
export function isClosed({ seals }: Pick<JobRecords, "seals">): boolean {
  const last = seals.at(-1);
  return last !== undefined && !isReopened(last);
}
