import type { Scalar } from "../../sheet";
import { invalid, quote } from "../../planning/text";

/**
 * Takes the wrappings of the host off one argument or cell. Blank is null: an omitted argument, an empty cell and "" alike.
 *
 * A 1×1 range is its cell, an entity is its basic value, text is trimmed. Refuses an error cell, and a range where one cell belongs.
 */
export function readScalar(received: unknown, argument: string): Scalar {
  if (Array.isArray(received)) {
    const first: unknown = received[0];
    if (received.length === 1 && Array.isArray(first) && first.length === 1) return readScalar(first[0], argument);
    throw invalid(argument, received, `${argument} is a range of several cells. Give one cell.`);
  }
  if (received === null || received === undefined) return null;
  if (typeof received === "string") {
    const text = received.trim();
    if (text.startsWith("#") && errorText.test(text)) throw errorCell(text, argument);
    return text === "" ? null : text;
  }
  if (typeof received === "number") {
    if (!Number.isFinite(received)) throw errorCell(received, argument);
    return received;
  }
  if (typeof received === "boolean") return received;
  if (typeof received === "object" && "basicValue" in received) return readScalar(received.basicValue, argument);
  throw errorCell(received, argument);
}

const errorText = /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|BUSY!|GETTING_DATA|CONNECT!|BLOCKED!|FIELD!|UNKNOWN!)$/;

function errorCell(received: unknown, argument: string): Error {
  const shown = typeof received === "string" ? quote(received) : "an error";
  // Text without its quotes arrives so too, where it stands in the formula and not in the row of a range.
  const isUnquoted = received === "#NAME?" && !argument.includes(" ");
  return invalid(argument, received, `${argument} holds ${shown}. ${isUnquoted ? `Put the ${argument} in quotes if it is text, or mend` : "Mend"} that cell first.`);
}
