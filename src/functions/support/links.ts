import { parseNumber, parseShare } from "../../planning/quantity";
import { name } from "./names";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { column, table } from "./table";

const headers = ["from"];
const give = "Give a range with the two ends of a link in each row.";

/** Reads a share of the time; a number above 1 is not taken for a percentage, because 99.9 is most often an availability. */
const unavailability: Reader<number> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    return typeof value === "string" ? parseShare(value, place) : parseNumber(value, place, { min: 0, max: 1, example: 0.001 });
  },
};

/** Reads links, from and to a row; further columns are left alone. */
export const links = table({ from: column("from", name), to: column("to", name) }, { headers, give });

/** Reads links with their unavailability. */
export const fallibleLinks = table({ from: column("from", name), to: column("to", name), unavailability: column("unavailability", unavailability) }, { headers, give });

/** Reads the nodes that can be down themselves, if any. */
export const fallibleNodes = table({ name: column("name", name), unavailability: column("unavailability", unavailability) }, { headers: ["name", "node", "nodes"] });
