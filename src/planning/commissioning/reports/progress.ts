import type { SheetPlan } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import type { TabReading } from "../tab";
import { isClosed, isSnagClosed, passedHoldPoints, results, rowsOfSteps, withoutAccepted, type JobRecords } from "../record";

/** How far one job is. */
export interface JobProgress {
  readonly job: string;
  readonly site: string;
  /** "no tab" before the first build. */
  readonly state: "no tab" | "open" | "closed";
  readonly build: number;
  readonly steps: number;
  readonly done: number;
  /** Required steps that are not settled. */
  readonly open: number;
  readonly differ: number;
  readonly again: number;
  readonly snags: number;
  /** Hold points that work went past, and that nobody has accepted by name. */
  readonly passedHolds: number;
  readonly minutesLeft: number;
  /** What keeps its tab from being read as it was built, so that the figures cannot be trusted; "" where nothing does. */
  readonly fault: string;
}

/** Counts how far a job is by its tab in use, row by row as the tab itself does: steps that stand side by side are one. */
export function progressOf(job: Pick<PlanRow<"jobs">, "job" | "site">, tab: (JobRecords & Pick<TabReading, "faults">) | null): JobProgress {
  const steps = rowsOfSteps(tab?.steps ?? []);
  const count = (holds: (step: (typeof steps)[number]) => boolean): number => steps.filter(holds).length;
  return {
    job: job.job,
    site: job.site,
    state: tab === null ? "no tab" : isClosed(tab) ? "closed" : "open",
    build: tab?.build ?? 0,
    steps: steps.length,
    done: count(({ settled }) => settled),
    open: count(({ settled, required }) => required && !settled),
    differ: count(({ result }) => result === results.differs),
    again: count(({ result }) => result === results.checkAgain),
    snags: (tab?.snags ?? []).filter((snag) => !isSnagClosed(snag)).length,
    passedHolds: tab === null ? 0 : withoutAccepted(passedHoldPoints(tab), tab).length,
    minutesLeft: steps.reduce((sum, { settled, minutes }) => sum + (settled ? 0 : minutes), 0),
    fault: tab?.faults[0] ?? "",
  };
}

/** Text by which the progress sheet is known for ours. */
export const progressMark = "Progress of the jobs";

/** Plans the sheet that lists how far every job is. */
export function planProgress(name: string, jobs: readonly JobProgress[], madeAt: string): SheetPlan {
  const headers = ["Job", "Site", "State", "Build", "Steps", "Done", "Open", "Differ", "To see again", "Snags open", "Hold points passed", "Minutes left", "To be mended first"];
  return {
    name,
    rows: [
      [{ value: progressMark, style: "title" }],
      [{ value: `Counted ${madeAt}. Choose Progress in the pane to count again.`, style: "note" }],
      [],
      headers.map((value) => ({ value, style: "header" })),
      ...jobs.map(({ job, site, state, build, steps, done, open, differ, again, snags, passedHolds, minutesLeft, fault }) =>
        [job, site, state, build, steps, done, open, differ, again, snags, passedHolds, minutesLeft, fault].map((value) => ({ value, style: typeof value === "number" ? "number" : "text" })),
      ),
    ],
    styles: {
      title: { bold: true, fontSize: 16, color: "#17352d" },
      note: { italic: true, color: "#3d4f49" },
      header: { bold: true, color: "#ffffff", fill: "#2f5d50", wrap: true, vertical: "middle" },
      text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
      number: { align: "right", vertical: "top", border: "all", borderColor: "#b9c4c0" },
      isDifferent: { bold: true, color: "#8c1c13", fill: "#fbdcd8" },
    },
    columnWidths: [34, 22, 10, 8, 8, 8, 8, 8, 10, 10, 12, 10, 60],
    freeze: { rows: 4, columns: 1 },
    conditionalFormats: [{ area: { row: 4, column: 7, rows: Math.max(jobs.length, 1), columns: 4 }, formula: "=AND(ISNUMBER(H5),H5>0)", style: "isDifferent" }],
    print: { orientation: "landscape", fitToWidth: true, titleRows: { row: 3, rows: 1 }, footer: "page &P of &N", breaksBefore: [] },
  };
}
