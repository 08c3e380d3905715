import type { Cell, CellStyle, SheetPlan } from "../../sheet";
import type { PackBlock, PackLine, Printout } from "./printout";

/** Plans the sheet of a printout; there are as many columns as the widest of its blocks has. */
export function planPrintout(name: string, { title, facts, standing, isComplete, paper, blocks, signatures }: Printout, columnWidths: readonly number[]): SheetPlan {
  const rows: Cell[][] = [
    [{ value: title, style: "title" }],
    [{ value: facts, style: "note" }],
    [{ value: standing, style: isComplete ? "complete" : "open" }],
    ...blocks.flatMap((block) => blockRows(block, columnWidths.length)),
    [],
    [],
    signatures.flatMap((signature, index): Cell[] => [...(index === 0 ? [] : [{}]), ...signatureCells(signature)]),
  ];
  return {
    name,
    rows,
    styles: {
      title: { bold: true, fontSize: 18, color: "#17352d" },
      note: { italic: true, color: "#3d4f49" },
      complete: { bold: true, fontSize: 12, color: "#17352d" },
      open: { bold: true, fontSize: 12, color: "#8c1c13" },
      section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
      header,
      text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
      number: { align: "center", vertical: "top", border: "all", borderColor: "#b9c4c0" },
      ...amountStyles(rows),
      line: { border: "bottom", borderColor: "#17352d", fontSize: 9 },
    },
    columnWidths,
    rowHeights: {
      0: titleHeight,
      ...Object.fromEntries([...rows.entries()].flatMap(([row, cells]) => {
        const height = heightOf(cells, columnWidths);
        return height === null ? [] : [[row, height]];
      })),
    },
    print: { orientation: "landscape", fitToWidth: true, paper, footer: "page &P of &N", breaksBefore: [] },
  };
}

function blockRows({ title, note, headers, lines, none }: PackBlock, columnCount: number): Cell[][] {
  const band = Array.from({ length: columnCount }, (_, index): Cell => ({ ...(index === 0 && { value: title }), style: "section" }));
  if (lines.length === 0) return [[], band, [{ value: none, style: "note" }]];
  const head = headers.map((value, at): Cell => ({ value, style: lines.some((line) => typeof line[at] === "object") ? "amountHeader" : "header" }));
  return [[], band, ...(note === "" ? [] : [[{ value: note, style: "note" }]]), head, ...lines.map((line) => line.map(lineCell))];
}

function lineCell(value: PackLine[number]): Cell {
  if (typeof value === "object") return { value: value.amount, style: `amount${value.decimals}` };
  if (typeof value === "number") return { value, style: "number" };
  return value === "" ? { style: "text" } : { value, style: "text" };
}

const header: CellStyle = { bold: true, fontSize: 10, fill: "#e6eeeb", border: "all", borderColor: "#b9c4c0", wrap: true, vertical: "middle" };

/** Makes the styles of the amounts that are there, by their decimals, and of their headers, which stand above the digits. */
function amountStyles(rows: readonly (readonly Cell[])[]): Record<string, CellStyle> {
  const used = new Set(rows.flat().flatMap(({ style }) => (style?.startsWith("amount") === true ? [style] : [])));
  if (used.delete("amountHeader")) return { amountHeader: { ...header, align: "right" }, ...stylesByDecimals(used) };
  return {};
}

function stylesByDecimals(used: ReadonlySet<string>): Record<string, CellStyle> {
  const formatOf = (decimals: number): string => `#,##0${decimals === 0 ? "" : `.${"0".repeat(decimals)}`}`;
  return Object.fromEntries([...used].map((style) => [style, { format: formatOf(Number(style.slice("amount".length))), align: "right", vertical: "top", border: "all", borderColor: "#b9c4c0" }]));
}

/** Makes a line to sign on, three columns wide. */
function signatureCells(value: string): Cell[] {
  return [{ value, style: "line" }, { style: "line" }, { style: "line" }];
}

/** Height of the row of the title in points. */
const titleHeight = 28;
/** Height of a line in points and what is around them, and the most that a sheet takes. */
const [pointsPerLine, pointsAround, highestRow] = [15, 4, 409];
/** Share of the width of a column that surely holds prose. */
const surelyFits = 0.9;

/** Works out how high a row must be for its longest text; null where one line will do. */
function heightOf(cells: readonly Cell[], columnWidths: readonly number[]): number | null {
  const linesOf = ({ value, style }: Cell, column: number): number =>
    typeof value === "string" && style === "text"
      ? value.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / (columnWidths[column]! * surelyFits))), 0)
      : 1;
  const lines = Math.max(1, ...cells.map(linesOf));
  return lines === 1 ? null : Math.min(highestRow, lines * pointsPerLine + pointsAround);
}
