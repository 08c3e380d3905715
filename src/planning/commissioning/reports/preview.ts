import type { Cell, SheetPlan } from "../../../sheet";
import type { PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { foldName, noAnswer, splitNames } from "../../text";
import { anySubject, expandJob, stepWords, type JobStep } from "../job";

/** Text by which the preview of a procedure is known for ours. */
export const previewMark = "Preview of a procedure";

const headers = ["Step id", "For", "Step", "Expected", "Recorded as", "Signed by", "Minutes"] as const;
const columnWidths = [11, 22, 70, 34, 24, 12, 9] as const;

/**
 * Plans a sheet that shows whoever edits a procedure what its rows make of the plan: every step in order, filled for one array. It is no tab, and
 * nothing is recorded in it.
 *
 * The array is the first of a job that follows the procedure, else of any job. No answer for a plan without a job; refuses what `expandJob` refuses.
 */
export function planPreview(model: PlanModel, procedure: string, madeAt: string): SheetPlan {
  const job = jobWithOneArray(model, procedure);
  const { sections } = expandJob(model, job);
  const about = job.arrays === "" ? `site ${job.site}` : `${job.arrays} at ${job.site}`;
  const rows: Cell[][] = [
    [{ value: previewMark, style: "title" }],
    [{ value: `${procedure}, as job ${job.job} would show it for ${about}. Made ${madeAt}. Change Procedures, Steps or Prompts and preview again; nothing is recorded here.`, style: "note" }],
    [],
    headers.map((value): Cell => ({ value, style: "header" })),
  ];
  for (const { visit, title, steps } of sections) {
    if (visit !== "") rows.push(band(visit, "visit"));
    rows.push(band(title, "section"), ...steps.map(stepLine));
  }
  if (sections.length === 0) rows.push([{ value: "No step of it applies here.", style: "note" }]);
  return {
    name: "Preview",
    rows,
    styles: {
      title: { bold: true, fontSize: 16, color: "#17352d" },
      note: { italic: true, color: "#3d4f49" },
      header: { bold: true, color: "#ffffff", fill: "#2f5d50", vertical: "middle" },
      visit: { bold: true, fontSize: 13, color: "#ffffff", fill: "#2f5d50" },
      section: { bold: true, fill: "#cfe0da", color: "#17352d" },
      text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
      held: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0", fill: "#fbe7c6" },
      number: { align: "right", vertical: "top", border: "all", borderColor: "#b9c4c0" },
    },
    columnWidths: [...columnWidths],
    freeze: { rows: 4, columns: 0 },
    print: { orientation: "landscape", fitToWidth: true, titleRows: { row: 3, rows: 1 }, footer: "page &P of &N", breaksBefore: [] },
  };
}

/** Makes a job of one array, or of none where its site has none, and of one part of it where the procedure is about one. */
function jobWithOneArray(model: PlanModel, procedure: string): PlanRow<"jobs"> {
  const jobs = model.rows("jobs").filter(({ job }) => job !== "");
  const followed = jobs.find((job) => foldName(job.procedure) === foldName(procedure)) ?? jobs[0];
  if (followed === undefined) throw noAnswer("Jobs", null, "No job stands in the plan, so there is no site to show a procedure for. Write a job first.");
  const [first] = splitNames(followed.arrays);
  const job = { ...followed, shown: followed.shown, procedure, arrays: first ?? model.places.of(followed).arrays[0]?.array ?? "" };
  return { ...job, subject: job.subject === "" ? anySubject(model, job) : job.subject };
}

function band(value: string, style: "visit" | "section"): Cell[] {
  return headers.map((_, at): Cell => (at === 0 ? { value, style } : { style }));
}

function stepLine(step: JobStep): Cell[] {
  const { stepId, subject, expectation, unit, sign, minutes, holdPoint, caution } = step;
  const style = holdPoint || caution !== "" ? "held" : "text";
  const recorded = [expectation.kind === "choice" ? expectation.choices.join(" | ") : expectation.kind, ...(unit === "" ? [] : [`in ${unit}`])].join(" ");
  const texts = [stepId, subject, stepWords(step), expectation.shown, recorded, sign === "none" ? "nobody" : sign === "two" ? "two names" : "one name"];
  return [...texts.map((value): Cell => ({ value, style })), { value: minutes, style: "number" }];
}
