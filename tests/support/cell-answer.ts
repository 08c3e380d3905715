import { CellFault } from "../../src/functions/support/custom-functions";

/** What a cell shows for a call: its value, or the code and the sentence of its error. */
export function cellAnswer(call: () => unknown): unknown {
  try {
    return call();
  } catch (thrown) {
    if (thrown instanceof CellFault) return `${thrown.code} ${thrown.message}`;
    throw thrown;
  }
}
