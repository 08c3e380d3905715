import type { Cell, SheetPlan } from "../../../sheet";
import { handoverMark, type HandoverPack } from "./handover-pack";
import type { PackBlock, PackLine } from "./pack-block";

/** Columns of the sheet: the most that a block of the pack has. */
const columnCount = 8;
const columnWidths = [22, 18, 44, 24, 20, 18, 18, 28];

/** Plans the sheet of a handover pack. */
export function planHandover(name: string, pack: HandoverPack): SheetPlan {
  const { job, facts, standing, isComplete, blocks, signatures } = pack;
  const rows: Cell[][] = [
    [{ value: `${handoverMark}: ${job}`, style: "title" }],
    [{ value: facts, style: "note" }],
    [{ value: standing, style: isComplete ? "complete" : "open" }],
    ...blocks.flatMap(blockRows),
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
      header: { bold: true, fontSize: 10, fill: "#e6eeeb", border: "all", borderColor: "#b9c4c0", wrap: true, vertical: "middle" },
      text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
      number: { align: "center", vertical: "top", border: "all", borderColor: "#b9c4c0" },
      line: { border: "bottom", borderColor: "#17352d", fontSize: 9 },
    },
    columnWidths,
    rowHeights: Object.fromEntries([...rows.entries()].flatMap(([row, cells]) => {
      const height = heightOf(cells);
      return height === null ? [] : [[row, height]];
    })),
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

function blockRows({ title, note, headers, lines, none }: PackBlock): Cell[][] {
  const band = Array.from({ length: columnCount }, (_, index): Cell => ({ ...(index === 0 && { value: title }), style: "section" }));
  if (lines.length === 0) return [[], band, [{ value: none, style: "note" }]];
  const head = headers.map((value): Cell => ({ value, style: "header" }));
  return [[], band, ...(note === "" ? [] : [[{ value: note, style: "note" }]]), head, ...lines.map((line) => line.map(lineCell))];
}

function lineCell(value: PackLine[number]): Cell {
  if (typeof value === "number") return { value, style: "number" };
  return value === "" ? { style: "text" } : { value, style: "text" };
}

/** Makes a line to sign on, three columns wide. */
function signatureCells(value: string): Cell[] {
  return [{ value, style: "line" }, { style: "line" }, { style: "line" }];
}

/** Height of a line in points and what is around them, and the most that a sheet takes. */
const [pointsPerLine, pointsAround, highestRow] = [15, 4, 409];
/** Share of the width of a column that surely holds prose. */
const surelyFits = 0.9;

/** Works out how high a row must be for its longest text; null where one line will do. */
function heightOf(cells: readonly Cell[]): number | null {
  const linesOf = ({ value, style }: Cell, column: number): number =>
    typeof value === "string" && style === "text"
      ? value.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / (columnWidths[column]! * surelyFits))), 0)
      : 1;
  const lines = Math.max(1, ...cells.map(linesOf));
  return lines === 1 ? null : Math.min(highestRow, lines * pointsPerLine + pointsAround);
}
