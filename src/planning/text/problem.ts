/** What kind of trouble it is: input the user can mend, or a sound question that has no answer. */
export type ProblemKind = "invalid" | "no-answer";

/** What stands in one cell: what a sentence tells people to write. */
export type Proposal = string | number | boolean;

/**
 * The one error that planning throws on purpose.
 *
 * `sentence` is what a person reads, in a cell or in the pane alike: it names the argument, quotes what was received, says what is
 * wrong and what to write instead, in at most 160 characters.
 *
 * Where the sentence says "Write 20%", that is in `proposals`: whoever puts one of them into the argument is not told of it again, and
 * means the same. Where two things could be meant the sentence asks, and proposes nothing. A bound or an example ("Write a number above
 * 0, such as 4") is no proposal.
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
    /** What may be written in place of `received`, each alone. */
    readonly proposals: readonly Proposal[] = [],
  ) {
    super(sentence);
  }

  /** The same problem of a text of which `received` is a part: the proposals are of the whole text. */
  within(whole: string): Problem {
    const part = String(this.received);
    return new Problem(this.kind, this.argument, whole, this.sentence, this.proposals.map((proposal) => whole.replace(part, () => String(proposal))));
  }
}

/** Makes the problem of an input that the user can mend. */
export function invalid(argument: string, received: unknown, sentence: string, ...proposals: readonly Proposal[]): Problem {
  return new Problem("invalid", argument, received, sentence, proposals);
}

/** Makes the problem of a sound question that has no answer. */
export function noAnswer(argument: string, received: unknown, sentence: string): Problem {
  return new Problem("no-answer", argument, received, sentence);
}

/** Tells whether `read` takes what it is given, which is whether a proposal would be taken. */
export function isTaken(read: () => unknown): boolean {
  try {
    read();
    return true;
  } catch (thrown) {
    if (thrown instanceof Problem) return false;
    throw thrown;
  }
}

/** Cuts a sentence to the 160 characters it may have: between two words, with an ellipsis. */
export function cutSentence(sentence: string): string {
  return sentence.length <= 160 ? sentence : `${sentence.slice(0, 159).replace(/\s+\S*$/, "")}…`;
}

/** Cuts a text to so many characters; 40 are enough for one that a sentence names. */
export function cutText(text: string, most = 40): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

/** Quotes what was received for a sentence: text in quotation marks, cut to 40 characters; a blank says so, and a truth is written as a cell shows it. */
export function quote(received: unknown): string {
  if (received === null || received === undefined || received === "") return "a blank";
  if (typeof received === "string") return `"${cutText(received)}"`;
  if (typeof received === "boolean") return String(received).toUpperCase();
  // What is an object here, such as an exact decimal, says what it is by a toString of its own.
  // eslint-disable-next-line @typescript-eslint/no-base-to-string
  return String(received);
}
