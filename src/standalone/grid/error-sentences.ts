import { formulaTokens } from "../../sheet";

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
  "#NAME?": "The formula holds a name that is no function, and the name of no cells. Put text in quotes.",
};

/** Says what is wrong with a cell that shows `error`; null where its text is no error of a formula. `functions` are the names of all that are known. */
export function errorSentence(error: string, formula: string, functions: ReadonlySet<string>): string | null {
  const sentence = sentences[error] ?? null;
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

/** Counts letters left out, added, mistaken or exchanged with their neighbour between two words (optimal string alignment distance). */
function slipsBetween(one: string, other: string): number {
  if (Math.abs(one.length - other.length) > 4) return Infinity;
  let [before, last] = [[] as number[], Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let row = 1; row <= one.length; row += 1) {
    const line = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1] ? 0 : 1;
      const exchanged = row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      line.push(Math.min(last[column]! + 1, line[column - 1]! + 1, last[column - 1]! + same, exchanged ? before[column - 2]! + 1 : Infinity));
    }
    [before, last] = [last, line];
  }
  return last[other.length]!;
}
