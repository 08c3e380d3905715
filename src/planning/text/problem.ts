/** What kind of trouble it is: input the user can mend, or a sound question that has no answer. */
export type ProblemKind = "invalid" | "no-answer";

/**
 * The one error that planning throws on purpose.
 *
 * `sentence` is what a person reads, in a cell or in the pane alike: it names the argument, quotes what was received, says what is
 * wrong and what to write instead, in at most 160 characters.
 */
export class Problem extends Error {
  override readonly name = "Problem";

  constructor(
    readonly kind: ProblemKind,
    /** Argument, column or table that the sentence is about, such as `prefix`. */
    readonly argument: string,
    /** What was received, as the user typed it. */
    readonly received: unknown,
    readonly sentence: string,
  ) {
    super(sentence);
  }
}

/** Makes the problem of an input that the user can mend. */
export function invalid(argument: string, received: unknown, sentence: string): Problem {
  return new Problem("invalid", argument, received, sentence);
}

/** Makes the problem of a sound question that has no answer. */
export function noAnswer(argument: string, received: unknown, sentence: string): Problem {
  return new Problem("no-answer", argument, received, sentence);
}

/** Quotes what was received for a sentence: text in quotation marks, cut to 40 characters; a blank says so. */
export function quote(received: unknown): string {
  if (received === null || received === undefined || received === "") return "a blank";
  if (typeof received === "string") return `"${received.length > 40 ? `${received.slice(0, 39)}…` : received}"`;
  // What is an object here, such as an exact decimal, says what it is by a toString of its own.
  // eslint-disable-next-line @typescript-eslint/no-base-to-string
  return String(received);
}
