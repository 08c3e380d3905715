import { invalid } from "../../planning/text";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

/** Reads a name as text; a number is a name too, such as array 7. A blank is refused. */
export const name: Reader<string> = {
  read: (received, place) => {
    const value = readScalar(received, place);
    if (value === null) throw invalid(place, value, `${place} is blank. Write a name.`);
    return String(value);
  },
};
