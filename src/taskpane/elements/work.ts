import { Problem } from "../../planning/text";

/** A way on from a message: a button beside it. */
export interface WayOn {
  readonly label: string;
  readonly run: () => unknown;
}

/** What the status line says, and what can be done next. */
export interface Message {
  readonly sentence: string;
  readonly tone?: "result" | "trouble";
  readonly waysOn?: readonly WayOn[];
}

/** How far a piece of work has come. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** A piece of work while it runs. */
export interface Work {
  /**
   * Shows how far the work has come and gives the page its turn; throws `Stopped` where the person chose Stop and something is left to do.
   * Call it only where everything is whole: from the first call on the person is offered to stop.
   */
  report(progress: Progress): Promise<void>;
}

/** Ends a piece of work that the person stopped. */
export class Stopped extends Error {
  override readonly name = "Stopped";
}

/** Waits until the page has had its turn. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/** Puts whatever was thrown as a sentence a person can act on. */
export function explain(thrown: unknown, title: string): Message {
  if (thrown instanceof Stopped) return { sentence: `${title}: stopped. What was finished stays; the rest is as it was.` };
  if (thrown instanceof Problem) return { sentence: thrown.sentence, tone: "trouble" };
  if (thrown instanceof Error && thrown.name === "ChunkLoadError") {
    return { sentence: `${title}: that part of the page was not loaded yet, and its server does not answer. Nothing is lost; try again once it does.`, tone: "trouble" };
  }
  console.error(thrown);
  return {
    sentence: `${title} failed inside the add-in, not in your workbook. Try once more; if it comes back, report it with the version in About.`,
    tone: "trouble",
  };
}
