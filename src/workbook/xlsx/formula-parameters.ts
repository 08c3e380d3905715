import { formulaTokens } from "../../sheet";

/** A call of LET or LAMBDA, which give names to what is handed in. */
interface NamingCall {
  readonly isLet: boolean;
  /** Pieces of the formula between its brackets, from the first to the last. */
  readonly first: number;
  last: number;
  /** Names in small letters. */
  readonly names: Set<string>;
}

/** Writes the names that LET and LAMBDA give as a file holds them, with `_xlpm.` before each, wherever they are known. */
export function nameParameters(formula: string): string {
  if (!/\b(?:LET|LAMBDA)\(/i.test(formula)) return formula;
  // Brackets and commas apart: several of them are one token.
  const pieces = formulaTokens(formula).flatMap((token) => (token.kind === "other" ? [...token.text].map((text) => ({ kind: token.kind, text })) : [token]));
  const calls: NamingCall[] = [];
  const open: { readonly call: NamingCall | null; argument: number }[] = [];
  pieces.forEach(({ kind, text }, at) => {
    const [before, inside] = [pieces[at - 1], open.at(-1)];
    if (text === "(" && kind === "other") {
      const isNaming = before?.kind === "function" && /^(?:LET|LAMBDA)$/i.test(before.text);
      const call = isNaming ? { isLet: before.text.length === 3, first: at, last: pieces.length, names: new Set<string>() } : null;
      if (call !== null) calls.push(call);
      open.push({ call, argument: 0 });
    } else if (text === ")" && kind === "other") {
      const closed = open.pop()?.call;
      if (closed) closed.last = at;
    } else if (text === "," && kind === "other" && inside !== undefined) inside.argument += 1;
    // A name alone in its argument, with another one behind it; LET has a value behind each.
    else if (inside?.call && (kind === "name" || kind === "bracket") && /[(,]/.test(before?.text ?? "") && pieces[at + 1]?.text === "," && (!inside.call.isLet || inside.argument % 2 === 0)) {
      inside.call.names.add(bareName(text));
    }
  });
  const isNamed = (text: string, at: number) => calls.some(({ first, last, names }) => at > first && at < last && names.has(bareName(text)));
  return pieces
    .map(({ kind, text }, at) => {
      if ((kind !== "name" && kind !== "function" && kind !== "bracket") || !isNamed(text, at)) return text;
      return kind === "bracket" ? text.replace("[", "[_xlpm.") : `_xlpm.${text}`;
    })
    .join("");
}

/** The name without the brackets of one that may be left out. */
function bareName(text: string): string {
  return text.replace(/^\[|\]$/g, "").toLowerCase();
}
