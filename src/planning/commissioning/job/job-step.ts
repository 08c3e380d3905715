import type { JobPlaces, PlanCell } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import type { ForEach } from "../../plan/schema";
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
  /** True where nothing further may happen before it is done and signed. */
  readonly holdPoint: boolean;
  readonly minutes: number;
  /** Cell of the plan that is expected as it stands, so that what was found can be written back to it; else null. */
  readonly planCell: PlanCell | null;
  /** Where it stands in a section that is shown as a grid; null in a list. */
  readonly slot: JobSlot | null;
}

/** Where a step stands in a grid: the row of its subject, and which pair of columns is its own, from 0. */
export interface JobSlot {
  readonly subjectId: string;
  readonly place: number;
  /** Key of the step by which all rows of the grid are signed; "" where no name signs. */
  readonly signKey: string;
}

/** A section of a job with the steps that are done in it, subject by subject; a grid is closed by a step that signs for it. */
export interface JobSection {
  readonly title: string;
  /** Heading of the visit that begins with it, where the job has several; else "". */
  readonly visit: string;
  readonly steps: readonly JobStep[];
  /** One step of each column of a grid; none in a list. */
  readonly columns: readonly JobStep[];
}

/** A job worked out: where, about what, and every step in order. */
export interface ExpandedJob {
  readonly id: string;
  readonly job: PlanRow<"jobs">;
  readonly places: JobPlaces;
  readonly sections: readonly JobSection[];
  /** What the plan has none of here, though a section of the procedure is repeated for it. */
  readonly absent: readonly ForEach[];
}
