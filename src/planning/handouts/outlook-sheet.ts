import { isBlank, isError, showCell, type Cell, type CellStyle, type Scalar, type SheetPlan, type SheetSnapshot } from "../../sheet";
import type { Outlook, PlanModel } from "../plan/model";
import { foldName, terabytesOf, noAnswer, roundTo } from "../text";

/** Text by which the sheet is known for ours. */
export const outlookMark = "Outlook";

/** Years for which buying is planned until somebody writes another number, and the most for which a block has room. */
const [usualYears, mostYears] = [5, 10];

const edge = { border: "all", borderColor: "#b9c4c0", vertical: "top" } as const;

const styles = {
  title: { bold: true, fontSize: 18, color: "#17352d" },
  note: { italic: true, color: "#3d4f49" },
  section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
  label: edge,
  verdict: { bold: true },
  text: { ...edge, format: "@", align: "center" },
  size: { ...edge, format: "#,##0.00", align: "center" },
  share: { ...edge, format: "0.0%", align: "center" },
  inputSize: { ...edge, format: "#,##0.00", align: "center", fill: "#fff3c4" },
  inputShare: { ...edge, format: "0.0%", align: "center", fill: "#fff3c4" },
  inputCount: { ...edge, format: "0", align: "center", fill: "#fff3c4" },
  planHead: { align: "left" },
  plan: { format: "#,##0.00", align: "center" },
} as const satisfies Readonly<Record<string, CellStyle>>;

const rangeNote = "The days are those on which a further reading may reach the limit, with 95%: the prediction interval of a straight line.";

/** Column in which the plan of buying begins. */
const planColumn = 3;

/** Lines whose yellow cells people fill. */
const [growthLine, stepLine, yearsLine] = ["Growth a year, for the plan beside", "Capacity bought at a time TB", "Years planned"];

/** What people typed into an earlier sheet: by subject and line. */
type Typed = ReadonlyMap<string, Scalar>;

const typedKey = (subject: string, label: string): string => `${foldName(subject)}\n${label}`;

/** Reads what people typed into the yellow cells of a sheet made before; formulas that stand there as we wrote them are nobody's. */
function typedInto(sheet: SheetSnapshot | null): Typed {
  const typed = new Map<string, Scalar>();
  let subject = "";
  sheet?.values.forEach(([label, value = null], row) => {
    const text = showCell(label);
    // The name of a subject stands two rows above its first line.
    if (showCell(sheet.values[row + 2]?.[0]) === firstLine) subject = text;
    if (![growthLine, stepLine, yearsLine].includes(text) || isBlank(value) || isError(value) || (sheet.formulas[row]?.[1] ?? null) !== null) return;
    typed.set(typedKey(subject, text), value);
  });
  return typed;
}

/** Label of the first line of a block. */
const firstLine = "Readings that count";

/**
 * Plans the sheet that says of every pool, and of every array in none, of which there are readings, when it will be full, beside the plan of what to buy year by
 * year (BAY.EXPANSION). What people typed into the one made before, which is read with its formulas, stands in it again. No answer without readings.
 */
export function planOutlook(model: PlanModel, madeAt: string, before: SheetSnapshot | null): SheetPlan {
  const outlooks = model.outlooks.all();
  if (outlooks.length === 0) throw noAnswer("Readings", null, "No reading of an array or a pool stands in the plan. Fill Readings: day, subject, used, value and unit.");
  const rows: Cell[][] = [
    [{ value: outlookMark, style: "title" }],
    [{ value: `Made ${madeAt} from Readings; made anew it keeps what stands in the yellow cells. ${rangeNote}`, style: "note" }],
  ];
  const typed = typedInto(before);
  for (const outlook of outlooks) rows.push([], ...blockOf(outlook, rows.length + 1, typed));
  return {
    name: outlookMark,
    rows,
    styles,
    columnWidths: [34, 26, 4, 12, 14, 14, 14, 12],
    rowHeights: { 0: 28 },
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

/** The lines about one subject, the first of which stands in row `first`, counted from 0. */
function blockOf({ subject, verdict, readings, begunAnew, capacity, fillLimit, yearlyRise, reached }: Outlook, first: number, typed: Typed): Cell[][] {
  const kept = (label: string, cell: Cell): Cell => {
    const value = typed.get(typedKey(subject, label));
    return value === undefined ? cell : { value, style: cell.style };
  };
  const last = readings.at(-1);
  const used = last === undefined ? null : terabytesOf(last.size);
  const facts: readonly (readonly [label: string, cell: Cell])[] = [
    [firstLine, { value: readings.length, style: "text" }],
    ["The first and the last", { value: last === undefined ? "none" : `${readings[0]!.date} – ${last.date}`, style: "text" }],
    ["Begun anew", { value: begunAnew ?? "never", style: "text" }],
    ["Used TB, read last", sizeCell(used)],
    ["Capacity to hosts TB", sizeCell(capacity === null ? null : terabytesOf(capacity))],
    ["Fill limit", { value: fillLimit, style: "share" }],
    ["Rise a year TB", sizeCell(yearlyRise === null ? null : roundTo(2, yearlyRise / 1e12))],
    ["Full from", { value: reached?.earliest ?? "", style: "text" }],
    ["Full most likely", { value: reached?.likely ?? "", style: "text" }],
    ["Full until", { value: reached?.latest ?? "", style: "text" }],
    [growthLine, kept(growthLine, growthCell(first, used, yearlyRise))],
    [stepLine, kept(stepLine, { style: "inputSize" })],
    [yearsLine, kept(yearsLine, { value: usualYears, style: "inputCount" })],
  ];
  const at = (label: string): string => `$B$${first + 3 + facts.findIndex(([one]) => one === label)}`;
  const [step, years, growth] = [at(stepLine), at(yearsLine), at(growthLine)];
  const asked = [at("Used TB, read last"), at("Capacity to hosts TB"), step, growth].map((cell) => `${cell}=""`).join(",");
  const call = `BAY.EXPANSION(${at("Used TB, read last")},${growth},${at("Capacity to hosts TB")},${step},MIN(${years},${mostYears}),${at("Fill limit")})`;
  const formula = `=IF(OR(${asked}),"What to buy stands here once the yellow cells are filled",${call})`;
  const band = Array.from({ length: planColumn + 5 }, (_, column): Cell => (column === 0 ? { value: subject, style: "section" } : { style: "section" }));
  return [
    band,
    [{ value: verdict, style: "verdict" }],
    ...facts.map(([label, cell], index): Cell[] => [
      { value: label, style: "label" }, cell, {},
      ...(index === 0 ? [{ formula, style: "planHead" }] : index <= mostYears ? [{ style: "plan" }] : []),
    ]),
  ];
}

function sizeCell(value: number | null): Cell {
  return value === null ? { style: "size" } : { value, style: "size" };
}

/** Growth as a share of what is used now, as the line rises; to be filled by hand where there is no line. */
function growthCell(first: number, used: number | null, yearlyRise: number | null): Cell {
  if (used === null || used === 0 || yearlyRise === null || yearlyRise <= 0) return { style: "inputShare" };
  return { formula: `=B${first + 3 + 6}/B${first + 3 + 3}`, style: "inputShare" };
}
