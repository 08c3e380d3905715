import { gather, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { foldName, quote } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const rackOutlets: Rule = {
  name: "rack-outlets",
  family: "facility",
  weight: "warn",
  meaning: "A rack has an outlet of the right kind for every cord of its arrays; cords of shelves and switches come on top.",
  check: (model) => gather(model.rows("racks"), (rack) => (rack.outlets === "" ? [] : remarksOf(model, rack))),
};

/** Connectors that fit into each other (IEC 60320); any other plug fits an outlet of its own name. */
const outletFor: Readonly<Record<string, string>> = { c14: "c13", c20: "c19" };

function remarksOf(model: PlanModel, rack: PlanRow<"racks">): Remark[] {
  const outlets = readOutlets(rack.outlets);
  if (outlets === null) {
    return [remarkAt(model, "racks", rack, "outlets", `Outlets ${quote(rack.outlets)} cannot be read. Write them as 12 x C13, 4 x C19.`)];
  }
  const needed = new Map<string, number>();
  const remarks: Remark[] = [];
  for (const array of model.rowsWith("arrays", "rack", rack.rack)) {
    if (array.plug === "") continue;
    const outlet = outletFor[foldName(array.plug)] ?? foldName(array.plug);
    if (!outlets.has(outlet)) {
      remarks.push(remarkAt(model, "arrays", array, "plug", `Plug ${quote(array.plug)} of ${array.array} fits none of the outlets of ${rack.rack} (${rack.outlets}). Plan other cords.`));
      continue;
    }
    const cords = [array.feedA, array.feedB].filter((feed) => feed !== "").length;
    needed.set(outlet, (needed.get(outlet) ?? 0) + cords);
  }
  for (const [outlet, cords] of needed) {
    const there = outlets.get(outlet)!;
    if (cords > there) remarks.push(remarkAt(model, "racks", rack, "outlets", `${rack.rack} has ${there} x ${outlet.toUpperCase()}, its arrays need ${cords}. Add outlets or move an array.`));
  }
  return remarks;
}

/** Reads `12 x C13, 4 x C19` as counts by kind; null where it says something else. */
function readOutlets(text: string): ReadonlyMap<string, number> | null {
  const outlets = new Map<string, number>();
  for (const part of text.split(/[,;]/)) {
    const match = /^\s*(\d{1,4})\s*[x×]\s*(\S.*?)\s*$/i.exec(part);
    if (match === null) return null;
    const kind = foldName(match[2]!);
    outlets.set(kind, (outlets.get(kind) ?? 0) + Number(match[1]));
  }
  return outlets;
}
