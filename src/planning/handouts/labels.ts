import type { Cell, SheetPlan } from "../../sheet";
import type { PlanModel } from "../plan/model";
import type { Settings } from "../plan/read";
import { cutSentence, invalid, noAnswer, quote } from "../text";

/** Text by which the sheet is known for ours; it stands in a hidden column, beside the labels. */
export const labelsMark = "Cable labels";

/** Width and height of A4 in millimetres (ISO 216). */
const page = { width: 210, height: 297 };
const [pointsPerMm, fontPoints, linePoints] = [72 / 25.4, 8, 10.5];
/** What is kept free on both sides of a text, and how wide a character of the font surely is at most on average, in points. */
const [besideText, characterPoints] = [8, 4.8];

/** The text of a label: the end at which it is, and the other end. */
export interface CableLabel {
  /** Id, colour and length of the cable, as far as Cables says; "" without a row there. */
  readonly head: string;
  readonly near: string;
  readonly far: string;
}

/**
 * Lists the labels of the cables of a plan, two a cable: each names both ends, its own first, as ANSI/TIA-606 asks of an identifier, below what its row in
 * Cables says of it.
 *
 * A cable of which the plan does not know both ends has none. Links and cords do not say at which port or outlet they end: they have labels once Cables gives
 * them an id, as without it a label would not be the only one of its text.
 */
export function cableLabels(model: PlanModel): CableLabel[] {
  return model.cables.all().flatMap((cable): CableLabel[] => {
    const row = model.cables.rowOf(cable);
    if (row === null && cable.kind !== "port") return [];
    const head = row === null ? "" : [row.id, row.colour, row.lengthM === null ? "" : `${row.lengthM} m`].filter((text) => text !== "").join(" ");
    return [{ head, near: cable.from, far: cable.to }, { head, near: cable.to, far: cable.from }];
  });
}

/**
 * Plans sheets of labels for A4, to be printed at 100%: row by row as the labels lie, in the middle of the page, in the size that Settings says.
 *
 * Refuses sizes that do not go on the page, and a text too long for its label; no answer where no cable is known from end to end.
 */
export function planLabels(model: PlanModel): SheetPlan {
  const labels = cableLabels(model);
  if (labels.length === 0) throw noAnswer("Ports", null, "No cable of the plan has both a switch and a port of it, so there is no label. Propose the cabling first.");
  const { labelWidthMm: width, labelHeightMm: height, labelsAcross: across, labelsDown: down, labelGapMm: gap } = model.settings;
  const [left, top] = marginsOf(model.settings);
  for (const label of labels) refuseLong(label, width, height);
  const rows: Cell[][] = [];
  for (let at = 0; at < labels.length; at += across) {
    const cells = labels.slice(at, at + across).map((label): Cell => ({ value: linesOf(label).join("\n"), style: "label" }));
    rows.push([at === 0 ? { value: labelsMark } : {}, ...(gap === 0 ? cells : cells.flatMap((cell) => [cell, {}]))]);
  }
  const widths = Array.from({ length: gap === 0 ? across : 2 * across - 1 }, (_, at) => charactersOf(gap > 0 && at % 2 === 1 ? gap : width));
  return {
    name: labelsMark,
    rows,
    styles: { label: { format: "@", fontSize: fontPoints, wrap: true, align: "center", vertical: "middle" } },
    columnWidths: [null, ...widths],
    hiddenColumns: [0],
    rowHeights: Object.fromEntries(rows.map((_, row) => [row, height * pointsPerMm])),
    print: {
      orientation: "portrait", fitToWidth: false, paper: "A4",
      // What lies behind the last label is left free, so that rounding never moves it to the next page.
      marginsMm: { left, top, right: Math.max(0, left - slack), bottom: Math.max(0, top - slack) },
      breaksBefore: rows.flatMap((_, row) => (row > 0 && row % down === 0 ? [row] : [])),
    },
  };
}

/** Millimetres by which the grid of labels may be larger on paper than planned. */
const slack = 3;

function marginsOf({ labelWidthMm, labelHeightMm, labelsAcross, labelsDown, labelGapMm }: Settings): readonly [left: number, top: number] {
  const [wide, high] = [labelsAcross * labelWidthMm + (labelsAcross - 1) * labelGapMm, labelsDown * labelHeightMm];
  if (wide > page.width) throw invalid("Settings", wide, `${labelsAcross} labels across take ${inMm(wide)} mm, A4 has ${page.width}. Write their width and number into Settings.`);
  if (high > page.height) throw invalid("Settings", high, `${labelsDown} labels down take ${inMm(high)} mm, A4 has ${page.height}. Write their height and number into Settings.`);
  return [(page.width - wide) / 2, (page.height - high) / 2];
}

function linesOf({ head, near, far }: CableLabel): string[] {
  return [...(head === "" ? [] : [head]), near, `to ${far}`];
}

function refuseLong(label: CableLabel, width: number, height: number): void {
  const perLine = Math.max(1, Math.floor((width * pointsPerMm - besideText) / characterPoints));
  const lines = linesOf(label).reduce((sum, line) => sum + Math.ceil(line.length / perLine), 0);
  if (lines * linePoints <= height * pointsPerMm) return;
  const text = quote(linesOf(label).join(" "));
  throw invalid("Settings", label.near, cutSentence(`Labels of ${inMm(width)} x ${inMm(height)} mm have no room for ${text}. Take larger ones, in Settings.`));
}

function inMm(millimetres: number): string {
  return String(Number(millimetres.toFixed(1)));
}

/** Turns millimetres into a width in characters of the default font: 7 pixels each and 5 beside them, at 96 pixels an inch. */
function charactersOf(millimetres: number): number {
  return Math.max(0, (millimetres / 25.4 * 96 - 5) / 7);
}
