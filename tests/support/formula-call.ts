/** A call of one of our functions with its arguments, as the host would hand them over. */
export interface FormulaCall {
  readonly id: string;
  readonly args: readonly unknown[];
}

/**
 * Reads a formula that is one call of ours with nothing but literals: text, numbers, TRUE and FALSE, written-out arrays.
 *
 * An argument left out is null.
 */
export function parseCall(formula: string): FormulaCall {
  const [, id, list] = /^=BAY\.([A-Z0-9]+)\((.*)\)$/s.exec(formula) ?? [];
  if (id === undefined || list === undefined) throw new Error(`${formula} is not one call of ours`);
  return { id, args: list.trim() === "" ? [] : splitOutside(list, ",").map(parseArgument) };
}

function parseArgument(text: string): unknown {
  const trimmed = text.trim();
  return trimmed.startsWith("{") ? splitOutside(trimmed.slice(1, -1), ";").map((row) => splitOutside(row, ",").map(parseLiteral)) : parseLiteral(trimmed);
}

function parseLiteral(text: string): unknown {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  if (trimmed.startsWith('"')) return trimmed.slice(1, -1).replaceAll('""', '"');
  if (/^(true|false)$/i.test(trimmed)) return trimmed.toLowerCase() === "true";
  // The one calculation that people mean as text: a scheme without its quotes.
  const sum = /^(\d+)\+(\d+)$/.exec(trimmed);
  if (sum !== null) return Number(sum[1]) + Number(sum[2]);
  const percent = trimmed.endsWith("%");
  const number = Number(percent ? trimmed.slice(0, -1) : trimmed);
  if (!Number.isFinite(number)) throw new Error(`${trimmed} is no literal`);
  return percent ? number / 100 : number;
}

/** Splits at a separator that stands outside quotation marks and braces. */
function splitOutside(text: string, separator: string): string[] {
  const parts: string[] = [""];
  let quoted = false;
  let depth = 0;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    else if (!quoted && character === "{") depth += 1;
    else if (!quoted && character === "}") depth -= 1;
    if (character === separator && !quoted && depth === 0) parts.push("");
    else parts.push(`${parts.pop() ?? ""}${character}`);
  }
  return parts;
}
