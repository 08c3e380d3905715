import { slipsBetween } from "../../planning/text";
import { foldSheetName, formulaTokens, parseAreas, sheetNamesIn, type FormulaToken } from "../../sheet";

/** What each error of a cell means, and what mends it, where nothing more is known. */
const sentences: Readonly<Record<string, string>> = {
  "#SPILL!": "Something stands in the cells that this formula fills. Clear them, or move the formula to where there is room.",
  "#REF!": "The formula speaks of cells that are gone. Undo what deleted them, or write which cells are meant now.",
  "#DIV/0!": "Something is divided by 0 or by an empty cell. Fill that cell, or write IF around the division.",
  "#NUM!": "The formula has no number as an answer, or one that is too large. Look at the numbers that it is given.",
  "#N/A": "What the formula looks for is not there. Look at what is looked for, and where.",
  "#VALUE!": "The formula is given something of the wrong kind, such as text where a number belongs. Look at each cell that it names.",
  "#NULL!": "Two ranges in the formula have no cell in common. Write a comma or a colon between them.",
  "#CYCLE!": "The formula needs its own answer, by way of other cells or directly. Take its own cell out of what it speaks of.",
  "#CALC!": "The formula answers with a table of no cells. Write what is to stand there then, such as the last argument of FILTER.",
  "#ERROR!": "The formula cannot be read. Look at its brackets, quotes and commas, and write what is missing.",
  "#NAME?": "The formula holds a name that is no function, and the name of no cells. Put text in quotes.",
};

/** Slips in a formula that tell more than the error that comes of them. */
const slips: readonly { readonly shows: readonly string[]; readonly is: (tokens: readonly FormulaToken[]) => boolean; readonly sentence: string }[] = [
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!"],
    is: (tokens) => tokens.some(({ kind, text }) => kind === "other" && text === '"'),
    sentence: "A text in the formula has no end. Write a quote where it ends.",
  },
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!"],
    is: (tokens) => bracketsOf(tokens) > 0,
    sentence: "A bracket is open. Write the one that closes it.",
  },
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!"],
    is: (tokens) => bracketsOf(tokens) < 0,
    sentence: "A bracket closes that was never opened. Take it away, or write the one that opens it.",
  },
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!"],
    is: (tokens) => /[-+*/^&=<>,]\s*$/.test(tokens.at(-1)?.text ?? "") && tokens.at(-1)?.kind === "other",
    sentence: "The formula ends after a sign. Write what comes behind it.",
  },
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!", "#REF!"],
    is: (tokens) => tokens.some(({ kind, text }) => kind === "cell" && parseAreas(text).length === 0),
    sentence: "The formula speaks of a cell beyond the last one of a sheet, XFD1048576. Write one before it.",
  },
  {
    shows: ["#NAME?", "#ERROR!", "#VALUE!"],
    is: (tokens) => tokens.some(({ kind, text }) => kind === "other" && text.includes(";")) && !tokens.some(({ text }) => text.includes("{")),
    sentence: "A semicolon stands between arguments. Write a comma there.",
  },
  {
    shows: ["#N/A", "#VALUE!", "#ERROR!"],
    is: (tokens) => tokens.some(({ kind }, at) => kind === "function" && /^\(\s*\)/.test(tokens[at + 1]?.text ?? "") && !needsNothing.has(tokens[at]!.text.toUpperCase())),
    sentence: "A function is given nothing. Write its arguments between the brackets.",
  },
  {
    shows: ["#REF!"],
    is: (tokens) => !tokens.some(({ kind }) => kind === "error"),
    sentence: "The formula asks for cells that are not there: beyond the sheet, or beyond the range that it looks in. Write a range or a position that is within.",
  },
];

/** Functions without arguments. */
const needsNothing = new Set(["NA", "TRUE", "FALSE", "PI", "NOW", "TODAY", "RAND", "ROW", "COLUMN", "SHEET", "SHEETS", "BAY.VERSION"]);

/** How many more brackets are opened than closed. */
function bracketsOf(tokens: readonly FormulaToken[]): number {
  const signs = tokens.filter(({ kind }) => kind === "other").map(({ text }) => text).join("");
  return signs.split("(").length - signs.split(")").length;
}

/**
 * Says what is wrong with a cell that shows `error`; null where its text is no error of a formula. `functions` are the names of all that are known, `sheets`
 * those of the workbook's sheets.
 */
export function errorSentence(error: string, formula: string, functions: ReadonlySet<string>, sheets: readonly string[]): string | null {
  const sentence = sentences[error] ?? null;
  if (sentence === null) return null;
  const there = new Set(sheets.map(foldSheetName));
  // A sheet of another workbook has its number in brackets before it.
  const missing = sheetNamesIn(formula).find((name) => !name.includes("]") && !there.has(foldSheetName(name)));
  if (missing !== undefined) return `There is no sheet "${missing}". Write the name as it stands on its tab.`;
  const slip = slips.find(({ shows, is }) => shows.includes(error) && is(formulaTokens(formula)));
  if (slip !== undefined) return slip.sentence;
  if (error !== "#NAME?") return sentence;
  const unknown = formulaTokens(formula).find(({ kind, text }) => kind === "function" && !functions.has(text.toUpperCase()))?.text;
  if (unknown === undefined) return sentence;
  const near = nearest(unknown.toUpperCase(), functions);
  return near === null ? `There is no function ${unknown}. The Functions view of the pane lists those of this add-in.` : `There is no function ${unknown}. Write ${near}?`;
}

/** Finds the name that fewest slips of the keyboard part from what was typed: at most one for every three letters. */
function nearest(typed: string, names: ReadonlySet<string>): string | null {
  let found: string | null = null;
  let most = Math.max(1, Math.floor(typed.replace(/^BAY\./, "").length / 3)) + 1;
  for (const name of names) {
    // Without its first part a function of ours is the same name.
    const slips = Math.min(slipsBetween(typed, name), slipsBetween(`BAY.${typed}`, name));
    if (slips < most) [found, most] = [name, slips];
  }
  return found;
}
