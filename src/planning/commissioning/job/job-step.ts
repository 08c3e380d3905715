import type { JobPlaces, PlanCell } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import type { Expectation } from "../procedure";

/** How many names sign for a step. */
export type Sign = Exclude<PlanRow<"steps">["sign"], "">;

/** One step of a job for one subject, filled. */
export interface JobStep {
  /** job id / step id / subject id: its record is found again by it. */
  readonly key: string;
  readonly stepId: string;
  readonly do: string;
  readonly caution: string;
  readonly makersGuide: string;
  /** What the step is for. */
  readonly subject: string;
  readonly expectation: Expectation;
  readonly unit: string;
  readonly required: boolean;
  readonly sign: Sign;
  readonly minutes: number;
  /** Cell of the plan that is expected as it stands, so that what was found can be written back to it; else null. */
  readonly planCell: PlanCell | null;
}

/** A section of a job with the steps that are done in it, subject by subject. */
export interface JobSection {
  readonly title: string;
  readonly steps: readonly JobStep[];
}

/** A job worked out: where, about what, and every step in order. */
export interface ExpandedJob {
  readonly id: string;
  readonly job: PlanRow<"jobs">;
  readonly places: JobPlaces;
  readonly sections: readonly JobSection[];
}
