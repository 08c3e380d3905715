import { columnLetters, quoteSheetName, type Cell, type CellStyle, type SheetPlan, type Validation } from "../../sheet";
import type { PlanModel } from "../plan/model";
import { designFigures, designLines, needFigures, needLines, type FigureLine, type InputLine, type LineLook } from "./lines";

/** Text by which the sheet is known for ours. */
export const optionsMark = "Options";

/** How many designs have a column, and the first of these columns. */
export const mostDesigns = 4;
const firstDesign = 1;
const helpColumn = firstDesign + mostDesigns;

/** How many rows of Models the lists and formulas look at. */
const lookedAtRows = 2000;

const formats: Readonly<Record<LineLook, string | null>> = {
  text: "@", plain: null, whole: "#,##0", figure: "#,##0.00", money: "#,##0.00", percent: "0.0##%", year: "0", chance: "0.0E+00", date: "yyyy-mm-dd",
};

const edge = { border: "all", borderColor: "#b9c4c0" } as const;
const lookStyle = (look: LineLook, more: CellStyle): CellStyle => ({ ...more, ...edge, align: "center", vertical: "top", ...(formats[look] === null ? {} : { format: formats[look] }) });
const looks: readonly LineLook[] = ["text", "plain", "whole", "figure", "money", "percent", "year", "chance", "date"];

const styles: Readonly<Record<string, CellStyle>> = {
  title: { bold: true, fontSize: 18, color: "#17352d" },
  note: { italic: true, color: "#3d4f49" },
  section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
  label: { ...edge, vertical: "top", wrap: true },
  help: { ...edge, vertical: "top", wrap: true, color: "#3d4f49" },
  unmet: { bold: true, color: "#8c1c13", fill: "#fbdcd8" },
  ...Object.fromEntries(looks.flatMap((look) => [[`input ${look}`, lookStyle(look, { fill: "#fff3c4" })], [`figure ${look}`, lookStyle(look === "text" ? "plain" : look, {})]])),
};

/** One row of the sheet below its head. */
type SheetLine =
  | { readonly kind: "section"; readonly text: string }
  | { readonly kind: "input"; readonly line: InputLine; readonly columns: number }
  | { readonly kind: "figure"; readonly line: FigureLine; readonly columns: number };

const inputs = (lines: Readonly<Record<string, InputLine>>, columns: number): SheetLine[] => Object.values(lines).map((line) => ({ kind: "input", line, columns }));
const figures = (lines: readonly FigureLine[], columns: number): SheetLine[] => lines.map((line) => ({ kind: "figure", line, columns }));

const sheetLines: readonly SheetLine[] = [
  { kind: "section", text: "What is needed, once for all designs" }, ...inputs(needLines, 1), ...figures(needFigures, 1),
  { kind: "section", text: "The designs, each a column" }, ...inputs(designLines, mostDesigns),
  { kind: "section", text: "What follows" }, ...figures(designFigures, mostDesigns),
];

/** Rows above the lines: title, note, and one that stays free. */
const headRows = 3;

const places = new Map(sheetLines.flatMap((one, at) => (one.kind === "section" ? [] : [[one.line.header, { row: headRows + at, isNeed: one.columns === 1 }] as const])));

/** Width of the column of help in characters, and the points that a line of it and the title take. */
const [helpWidth, linePoints, titlePoints] = [74, 15, 28];

/**
 * Plans the sheet on which two to four designs stand side by side, each a column of formulas below its own inputs, all from one set of needs.
 *
 * Cells to be filled are marked; a figure stands blank until what it follows from is there. The fill limit is that of Settings; models fill bays, units and watts.
 */
export function planOptions(model: PlanModel): SheetPlan {
  const rows: Cell[][] = [
    [{ value: optionsMark, style: "title" }],
    [{ value: "Fill the yellow cells, in two columns or more; the rest follows. Figures for planning and comparing, in today's money.", style: "note" }],
    [],
    ...sheetLines.map((one): Cell[] => {
      if (one.kind === "section") return Array.from({ length: helpColumn + 1 }, (_, at): Cell => (at === 0 ? { value: one.text, style: "section" } : { style: "section" }));
      const cells = Array.from({ length: mostDesigns }, (_, at): Cell => (at >= one.columns ? {} : one.kind === "input" ? inputCell(model, one.line, at) : figureCell(one.line, at)));
      return [{ value: one.line.header, style: "label" }, ...cells, { value: one.line.meaning, style: "help" }];
    }),
  ];
  const verdicts = ["Against those wanted", "Against that accepted"].map((header) => places.get(header)!.row);
  return {
    name: optionsMark,
    rows,
    styles,
    columnWidths: [30, ...Array.from({ length: mostDesigns }, () => 18), helpWidth],
    rowHeights: { 0: titlePoints, ...Object.fromEntries(rows.flatMap((row, at) => (String(row[helpColumn]?.value ?? "").length > helpWidth ? [[at, 2 * linePoints]] : []))) },
    freeze: { rows: headRows, columns: 1 },
    validations: sheetLines.flatMap((one, at) => (one.kind === "input" ? validationOf(model, one.line, headRows + at, one.columns) : [])),
    conditionalFormats: verdicts.map((row) => ({
      area: { row, column: firstDesign, rows: 1, columns: mostDesigns },
      formula: `=OR(${cellName(row, firstDesign)}="too few",${cellName(row, firstDesign)}="above")`,
      style: "unmet",
    })),
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

function cellName(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

function inputCell(model: PlanModel, line: InputLine, design: number): Cell {
  const style = `input ${line.look}`;
  if (line === needLines.fillLimit) return { value: model.settings.fillLimit, style };
  const [found, named] = line.fromModel === undefined ? [null, null] : [modelRange(model, line.fromModel), modelRange(model, "model")];
  if (found === null || named === null) return { style };
  const picked = `INDEX(${found},MATCH(${cellName(places.get(designLines.model.header)!.row, firstDesign + design)},${named},0))`;
  return { formula: `=IFERROR(IF(${picked}="","",${picked}),"")`, style };
}

/** Writes the range of a column of Models; null where the workbook lacks it. */
function modelRange(model: PlanModel, column: "model" | "bays" | "units" | "watts"): string | null {
  const table = model.table("models");
  const at = table?.columns[column];
  if (table === null || at === undefined) return null;
  const letters = columnLetters(at);
  return `${quoteSheetName(table.sheet)}!$${letters}$${table.headerRow + 2}:$${letters}$${table.headerRow + 1 + lookedAtRows}`;
}

function figureCell({ formula, look }: FigureLine, design: number): Cell {
  const needed: string[] = [];
  const text = formula.replace(/\[([^\]?]+)(\?)?\]/g, (_, header: string, optional: string | undefined) => {
    const place = places.get(header);
    if (place === undefined) throw new Error(`The sheet has no line ${header}.`);
    const cell = place.isNeed ? `$${columnLetters(firstDesign)}$${place.row + 1}` : cellName(place.row, firstDesign + design);
    if (optional === undefined) needed.push(`${cell}=""`);
    return cell;
  });
  return { formula: `=IF(OR(${[...new Set(needed)].join(",")}),"",${text})`, style: `figure ${look}` };
}

function validationOf(model: PlanModel, { header, kind, meaning, suggestions }: InputLine, row: number, columns: number): Validation[] {
  const area = { row, column: firstDesign, rows: 1, columns };
  const models = header === designLines.model.header ? modelRange(model, "model") : null;
  if (models !== null) return [{ area, rule: { kind: "list-of", formula: `=${models}` }, message: meaning, strict: false }];
  if (suggestions !== undefined) return [{ area, rule: { kind: "list", items: suggestions }, message: meaning, strict: false }];
  if (kind === "count") return [{ area, rule: { kind: "whole", least: 0 }, message: `${header} is a whole number.`, strict: false }];
  if (kind === "number") return [{ area, rule: { kind: "number" }, message: `${header} is a number. ${meaning}`, strict: false }];
  if (kind === "share") return [{ area, rule: { kind: "number", least: 0, most: 1 }, message: `${header} is a share. ${meaning}`, strict: false }];
  if (kind === "date") return [{ area, rule: { kind: "date" }, message: `${header} is a date, such as 2026-05-31.`, strict: false }];
  return [];
}
