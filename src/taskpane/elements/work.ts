import { Problem } from "../../planning/problem";

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
  /** Aborted once the person chose Stop. */
  readonly signal: AbortSignal;
  /** Shows how far the work has come, and gives the page time to draw it. Throws where the person chose Stop. */
  report(progress: Progress): Promise<void>;
}

/** How long planning may compute before the page gets its turn. */
const turnMilliseconds = 50;

/** Ends a piece of work that the person stopped. */
export class Stopped extends Error {
  override readonly name = "Stopped";
}

/**
 * Drives work that planning wrote as a generator, and lets the page draw and listen every 50 ms.
 *
 * Throws `Stopped` between two steps once the person chose Stop; the generator is then closed, so that its `finally` runs.
 */
export async function drive<Result>(steps: Generator<Progress | undefined, Result>, work: Work): Promise<Result> {
  try {
    let turnEnds = performance.now() + turnMilliseconds;
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
      if (performance.now() < turnEnds) continue;
      if (step.value === undefined) await nextTurn();
      else await work.report(step.value);
      if (work.signal.aborted) throw new Stopped();
      turnEnds = performance.now() + turnMilliseconds;
    }
  } finally {
    steps.return(undefined as never);
  }
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
  console.error(thrown);
  return {
    sentence: `${title} failed inside the add-in, not in your workbook. Try once more; if it comes back, report it with the version in About.`,
    tone: "trouble",
  };
}
