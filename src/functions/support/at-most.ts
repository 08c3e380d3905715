import { invalid } from "../../planning/text";
import type { Reader } from "./reader";
import { rowsOf } from "./rows";

/** Reads what `reader` reads; refuses a range of more rows than `most` before any of them is read, as a sheet would wait for them. */
export function atMost<Value>(most: number, reader: Reader<Value>): Reader<Value> {
  return {
    ...reader,
    read: (received, argument) => {
      const rows = Array.isArray(received) && received.length > most ? rowsOf(received).length : 0;
      if (rows > most) throw invalid(argument, null, `${argument} has ${rows} rows. Give at most ${most}.`);
      return reader.read(received, argument);
    },
  };
}
