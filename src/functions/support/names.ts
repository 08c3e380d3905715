import { invalid } from "../../planning/text";
import { readScalar } from "./cells";

/** Reads a name as text; a number is a name too, such as array 7. A blank is refused. */
export function readName(received: unknown, argument: string): string {
  const value = readScalar(received, argument);
  if (value === null) throw invalid(argument, value, `${argument} is blank. Write a name.`);
  return String(value);
}
