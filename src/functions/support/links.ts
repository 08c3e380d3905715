import { parseNumber, parseShare } from "../../planning/quantity";
import { name } from "./names";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { column, table } from "./table";

const ends = { from: column("from", ["From"], name), to: column("to", ["To"], name) };
const give = "Give a range with the two ends of a link in each row.";

/** Reads a share of the time; a number above 1 is not taken for a percentage, because 99.9 is most often an availability. */
const unavailability: Reader<number> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    return typeof value === "string" && value.endsWith("%") ? parseShare(value, place) : parseNumber(value, place, { min: 0, max: 1, example: 0.001 });
  },
};

/** Reads links, from and to a row; further columns are left alone. */
export const links = table(ends, { give, passes: ["Unavailability", "Availability", "Length", "Length m", "Colour", "Kind", "Id"] });

/** Reads links with their unavailability. */
export const fallibleLinks = table({ ...ends, unavailability: column("unavailability", ["Unavailability"], unavailability) }, { give });

/** Reads the nodes that can be down themselves, if any. */
export const fallibleNodes = table({
  name: column("name", ["Name", "Node", "Nodes", "Device"], name),
  unavailability: column("unavailability", ["Unavailability"], unavailability),
});
