import type { Cell, CellStyle, SheetPlan } from "../../sheet";
import { groupBy, type PlanModel } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { foldName, noAnswer } from "../text";
import { serialsNotTaken } from "./take-serials";

/** Text by which the sheet is known for ours. */
export const partsMark = "Parts list";

const edge = { border: "all", borderColor: "#b9c4c0", vertical: "top" } as const;

const styles = {
  title: { bold: true, fontSize: 18, color: "#17352d" },
  note: { italic: true, color: "#3d4f49" },
  section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
  header: { bold: true, fontSize: 10, fill: "#e6eeeb", ...edge, vertical: "middle" },
  text: { ...edge, format: "@", wrap: true },
  number: { ...edge, align: "center" },
  caution: { bold: true, color: "#8a1f11" },
} as const satisfies Readonly<Record<string, CellStyle>>;

const headers = ["Part", "For", "Shelf", "Bay", "Quantity", "Came", "Serial", "Box", "Checked"] as const;

const liftCaution = "Lifting injures backs: boxes over 25 kg are for two people or the lift table (common practice; local rules may ask for less).";

/**
 * Plans the sheet of the parts of a plan: what is missing still, what has come and is not expected by the plan as it came, what has come, and box by box, each on a page
 * of its own, what travels in it. No answer while Parts has no rows.
 */
export function planPartsSheet(model: PlanModel, madeAt: string): SheetPlan {
  const parts = model.rows("parts").filter(({ part }) => part !== "");
  if (parts.length === 0) throw noAnswer("Parts", null, "No part stands in Parts yet. Choose List parts first.");
  const missing = parts.filter(({ came }) => came === null);
  const come = parts.filter(({ came }) => came !== null);
  const boxes = [...groupBy(parts.filter(({ box }) => box !== ""), ({ box }) => foldName(box)).values()].sort(([one], [other]) => compareBoxes(one!.box, other!.box));
  const rows: Cell[][] = [[{ value: partsMark, style: "title" }], [{ value: `Made ${madeAt} from the table Parts; made anew it replaces this one.`, style: "note" }]];
  const breaksBefore: number[] = [];
  const list = (title: string, some: readonly PlanRow<"parts">[], none: string, caution = ""): void => {
    rows.push([], band(`${title}: ${piecesOf(some)} in ${some.length} ${some.length === 1 ? "row" : "rows"}`));
    if (caution !== "") rows.push([{ value: caution, style: "caution" }]);
    if (some.length === 0) rows.push([{ value: none, style: "note" }]);
    else rows.push(headers.map((value): Cell => ({ value, style: "header" })), ...some.map(lineOf));
  };
  list("Missing", missing, "Everything has come.");
  const strange = serialsNotTaken(model);
  if (strange.length > 0) list("Come, but not the serial that the tab expects; choose Take serials", strange, "");
  list("Come", come, "Nothing has come yet.");
  list("In no box yet", come.filter(({ box }) => box === ""), "Everything that came is in a box.");
  for (const box of boxes) {
    breaksBefore.push(rows.length + 1);
    list(/^box\b/i.test(box[0]!.box) ? box[0]!.box : `Box ${box[0]!.box}`, box, "", liftCaution);
  }
  return {
    name: partsMark,
    rows,
    styles,
    columnWidths: [30, 26, 10, 8, 10, 12, 22, 10, 12],
    rowHeights: { 0: 28 },
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore },
  };
}

/** Boxes of numbers stand in the order of their numbers. */
function compareBoxes(one: string, other: string): number {
  return one.localeCompare(other, "en", { numeric: true });
}

function piecesOf(parts: readonly PlanRow<"parts">[]): string {
  const pieces = parts.reduce((sum, { quantity }) => sum + (quantity ?? 1), 0);
  return `${pieces} ${pieces === 1 ? "piece" : "pieces"}`;
}

function lineOf({ part, for: goesTo, shelf, bay, quantity, came, serial, box }: PlanRow<"parts">): Cell[] {
  const text = (value: string): Cell => (value === "" ? { style: "text" } : { value, style: "text" });
  const number = (value: number | null): Cell => (value === null ? { style: "number" } : { value, style: "number" });
  return [text(part), text(goesTo), text(shelf), number(bay), number(quantity ?? 1), text(came ?? ""), text(serial), text(box), { style: "text" }];
}

function band(value: string): Cell[] {
  return headers.map((_, at): Cell => (at === 0 ? { value, style: "section" } : { style: "section" }));
}
