import type { Cell, CellStyle, SheetPlan } from "../../../sheet";
import { groupBy } from "../../plan/model";
import { foldName, noAnswer } from "../../text";
import type { ProgrammeLine } from "./programme";

/** Text by which the programme board is known for ours. */
export const programmeMark = "Programme of the jobs";

const edge = { border: "all", borderColor: "#b9c4c0", vertical: "top" } as const;

const styles = {
  title: { bold: true, fontSize: 16, color: "#17352d" },
  note: { italic: true, color: "#3d4f49" },
  header: { bold: true, color: "#ffffff", fill: "#2f5d50", wrap: true, vertical: "middle" },
  text: { ...edge, format: "@", wrap: true },
  closed: { ...edge, format: "@", wrap: true, color: "#5c6a64" },
  late: { ...edge, format: "@", wrap: true, bold: true, color: "#8c1c13" },
  blocked: { ...edge, format: "@", wrap: true, color: "#8c1c13", fill: "#fbdcd8" },
  number: { ...edge, align: "right" },
  sum: { ...edge, align: "right", bold: true },
} as const satisfies Readonly<Record<string, CellStyle>>;

const headers = ["Day", "Crew", "Job", "Site", "Procedure", "State", "Blocked by", "Snags open", "Minutes planned", "Minutes settled", "Minutes used"];
const crewHeaders = ["Crew", "", "Jobs", "Closed", "Blocked", "Late", "", "Snags open", "Minutes planned", "Minutes settled", "Minutes used"];

/** Characters that a line of the column Blocked by takes, and the points of a line. */
const [blockedWidth, linePoints] = [52, 15];

/** Lines that the headers of the minutes take. */
const headerLines = 2;

/** Plans the sheet of the programme: every job by day and crew, and below it what each crew has. No answer for a plan without jobs. */
export function planProgramme(lines: readonly ProgrammeLine[], madeAt: string): SheetPlan {
  if (lines.length === 0) throw noAnswer("Jobs", null, "No job stands in the plan yet. Write one row a piece of work into Jobs: its name, site and procedure.");
  const top: Cell[][] = [
    [{ value: programmeMark, style: "title" }],
    [{ value: `Made ${madeAt}. ${countsOf(lines)} Minutes used are those written into Jobs.`, style: "note" }],
    [],
    headers.map((value): Cell => ({ value, style: "header" })),
  ];
  const crews = [...groupBy(lines, ({ job }) => foldName(job.crew)).values()].map((some) => [some[0]!.job.crew, some] as const);
  crews.sort(([one], [other]) => (one === "" ? 1 : other === "" ? -1 : one.localeCompare(other, "en")));
  const rows = [...top, ...lines.map(rowOf), [], crewHeaders.map((value): Cell => ({ value, style: "header" })), ...crews.map(([crew, some]) => crewRow(crew, some)), crewRow("All", lines)];
  return {
    name: "Programme",
    rows,
    styles,
    columnWidths: [12, 16, 30, 20, 26, 17, blockedWidth, 9, 10, 10, 10],
    rowHeights: Object.fromEntries(rows.flatMap((row, at) => {
      const wrapped = row[0]?.style === "header" ? headerLines : Math.ceil(String(row[6]?.value ?? "").length / (blockedWidth - 4));
      return wrapped > 1 ? [[at, wrapped * linePoints]] : [];
    })),
    freeze: { rows: top.length, columns: 3 },
    print: { orientation: "landscape", fitToWidth: true, titleRows: { row: top.length - 1, rows: 1 }, footer: "page &P of &N", breaksBefore: [] },
  };
}

function countsOf(lines: readonly ProgrammeLine[]): string {
  const count = (holds: (line: ProgrammeLine) => boolean): number => lines.filter(holds).length;
  const sites = new Set(lines.map(({ job }) => job.site)).size;
  const [closed, blocked, late] = [count(({ state }) => state === "closed"), count(({ blockedBy }) => blockedBy.length > 0), count(({ isLate }) => isLate)];
  return `${lines.length} jobs at ${sites} sites: ${closed} closed, ${blocked} blocked, ${late} late.`;
}

function rowOf({ job, state, blockedBy, isLate, minutesPlanned, minutesSettled, snags }: ProgrammeLine): Cell[] {
  const text = (value: string, style: keyof typeof styles = state === "closed" ? "closed" : "text"): Cell => (value === "" ? { style } : { value, style });
  return [
    text(job.plannedDate ?? "", isLate ? "late" : undefined), text(job.crew), text(job.job), text(job.site), text(job.procedure), text(isLate ? `${state}, late` : state, isLate ? "late" : undefined),
    text(blockedBy.join("; "), blockedBy.length > 0 ? "blocked" : undefined), number(snags), number(minutesPlanned), number(minutesSettled), number(job.minutesUsed),
  ];
}

function crewRow(crew: string, lines: readonly ProgrammeLine[]): Cell[] {
  const style = crew === "All" ? "sum" : "number";
  const count = (holds: (line: ProgrammeLine) => boolean): Cell => number(lines.filter(holds).length, style);
  const sum = (of: (line: ProgrammeLine) => number | null): Cell => number(lines.reduce((total, line) => total + (of(line) ?? 0), 0), style);
  return [
    { value: crew === "" ? "no crew" : crew, style: "text" }, { style: "text" }, number(lines.length, style), count(({ state }) => state === "closed"), count(({ blockedBy }) => blockedBy.length > 0),
    count(({ isLate }) => isLate), { style: "text" }, sum(({ snags }) => snags), sum(({ minutesPlanned }) => minutesPlanned), sum(({ minutesSettled }) => minutesSettled),
    sum(({ job }) => job.minutesUsed),
  ];
}

function number(value: number | null, style: "number" | "sum" = "number"): Cell {
  return value === null ? { style } : { value, style };
}
