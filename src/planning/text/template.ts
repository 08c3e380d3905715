import Mustache from "mustache";
import { invalid, quote } from "./problem";

/** A text with places to be filled: plain pieces, and names of fields. */
export type Template = readonly ({ readonly text: string } | { readonly name: string })[];

/** Gives the text of a field; refuses a name that no table in reach has. */
export type Lookup = (name: string) => string;

/** Stands in a longer text for a field that is blank in the plan. */
const blankField = "(not planned)";

const writer = new Mustache.Writer();

/**
 * Reads a text in the open Mustache form, of which only variables are taken.
 *
 * Sections, partials, comments and changes of the delimiters are refused: a step says what to do, it does not compute. `argument`
 * names the cell in the sentence.
 */
export function parseTemplate(text: string, argument: string): Template {
  if (!text.includes("{{")) return text === "" ? [] : [{ text }];
  let tokens: readonly (readonly unknown[])[];
  try {
    tokens = writer.parse(text, ["{{", "}}"]) as typeof tokens;
  } catch {
    throw invalid(argument, text, `${argument} ${quote(text)} opens {{ and does not close it. Write a field as {{Column}}.`);
  }
  return tokens.map(([kind, value]) => {
    if (kind === "text") return { text: String(value) };
    if (kind === "name" || kind === "&") return { name: String(value) };
    throw invalid(argument, text, `${argument} holds ${quote(`{{${String(kind)}${String(value)}}}`)}. Only fields such as {{Column}} are filled; use When for conditions.`);
  });
}

/**
 * Fills a text. Values are put in as they are: one that looks like a template stays as it is typed.
 *
 * A field that is blank shows as "(not planned)" inside a longer text; a text that is one field and nothing else stays blank.
 */
export function fillTemplate(template: Template, lookup: Lookup): string {
  if (template.length === 1) return fillPiece(template[0]!, lookup);
  return template.map((piece) => fillPiece(piece, lookup) || blankField).join("");
}

function fillPiece(piece: Template[number], lookup: Lookup): string {
  return "text" in piece ? piece.text : lookup(piece.name);
}

/** Names the fields that a text holds, in order. */
export function fieldsOf(template: Template): string[] {
  return template.flatMap((piece) => ("name" in piece ? [piece.name] : []));
}
