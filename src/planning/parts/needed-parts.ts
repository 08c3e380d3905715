import { groupBy, type PlanModel } from "../plan/model";
import type { PlanRow } from "../plan/read";
import type { TableRow } from "../plan/schema";
import { formatTerabytes, foldName } from "../text";

/** A part that a plan or its quote asks for, as a row of Parts. */
export type NeededPart = Pick<TableRow<"parts">, "kind" | "bay"> & { readonly part: string; readonly for: string; readonly shelf: string; readonly quantity: number };

/** Makes the key by which parts are told apart: an array, a shelf and a drive by where they go, whatever they are called; the rest by their text too. */
export function partKey({ part, kind, for: goesTo, shelf, bay }: PlanRow<"parts"> | NeededPart): string {
  const isPlace = kind === "array" || kind === "shelf" || kind === "drive";
  return [kind ?? "", goesTo, shelf, String(bay ?? ""), isPlace ? "" : part].map(foldName).join("\n");
}

/**
 * Lists the parts that a plan needs: arrays, their shelves and drives bay by bay, cables by kind, colour and length, and what the quote offers beside arrays,
 * services and support.
 */
export function neededParts(model: PlanModel): NeededPart[] {
  return [...model.rows("arrays").filter(({ array }) => array !== "").flatMap((array) => partsOfArray(model, array)), ...together([...cableParts(model), ...quotedParts(model)])];
}

/** Counts parts that are alike in one: cables, and what the quote has in several rows. */
function together(parts: readonly NeededPart[]): NeededPart[] {
  return [...groupBy(parts, partKey).values()].map((alike) => ({ ...alike[0]!, quantity: alike.reduce((sum, { quantity }) => sum + quantity, 0) }));
}

function partsOfArray(model: PlanModel, array: PlanRow<"arrays">): NeededPart[] {
  const own = { for: array.array, quantity: 1 };
  return [
    { ...own, part: array.model || "Array", kind: "array", shelf: "", bay: null },
    ...model.drives.shelvesOf(array).map(({ shelf }): NeededPart => ({ ...own, part: "Shelf", kind: "shelf", shelf, bay: null })),
    ...model.drives.expectedIn(array).map(({ shelf, bay, row }): NeededPart => {
      const size = row?.size ?? array.driveSize;
      const part = ["Drive", size === null ? "" : formatTerabytes(size), row?.part ?? ""].filter((word) => word !== "").join(" ");
      return { ...own, part, kind: "drive", shelf, bay };
    }),
  ];
}

function cableParts(model: PlanModel): NeededPart[] {
  return model.cables.all().map((cable): NeededPart => {
    const row = model.cables.rowOf(cable);
    const said = row === null ? ["", "", ""] : [row.kind, row.colour, row.lengthM === null ? "" : `${row.lengthM} m`];
    const [kind = "", ...looks] = said;
    const part = ["Cable", kind === "" ? cable.kind : kind, ...looks].filter((word) => word !== "").join(" ");
    return { part, kind: "cable", for: siteOfEnd(model, cable.from) ?? siteOfEnd(model, cable.to) ?? "", shelf: "", bay: null, quantity: 1 };
  });
}

/** Finds the site of the device that a text of an end begins with; null where it is none of the plan. */
function siteOfEnd(model: PlanModel, end: string): string | null {
  for (let words = end.split(" "); words.length > 0; words = words.slice(0, -1)) {
    const name = words.join(" ");
    const found = model.find("arrays", name) ?? model.find("switches", name) ?? model.find("hosts", name);
    if (found !== null) return found.site;
  }
  return null;
}

/** Lists what the quote offers that is no array, service or support, rows without a kind, but for what the customer may leave out. */
function quotedParts(model: PlanModel): NeededPart[] {
  const rows = model.rows("quote").filter(({ item, kind, optional }) => item !== "" && kind === "" && optional !== "yes");
  return rows.map(({ item, for: goesTo, quantity }): NeededPart => ({ part: item, kind: "other", for: goesTo, shelf: "", bay: null, quantity: quantity ?? 1 }));
}
