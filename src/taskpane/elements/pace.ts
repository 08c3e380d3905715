/** Share of the time that a paced call may take at most: a large workbook is followed more slowly, so that typing in it stays smooth. */
const busyShare = 0.2;
/** The longest rest: a call may have waited for most of its time, until the formulas were computed, and what it showed is old by then. */
const longestRest = 5_000;

/**
 * Makes a trigger that calls `run` at once, but never again before `milliseconds` have passed since the last call began, nor while it
 * still runs, nor so often that it takes more than a fifth of the time, but rests five seconds at most. Triggers in between are answered by one call afterwards, so that
 * the last one is never lost.
 */
export function pace(run: () => Promise<unknown>, milliseconds: number): () => void {
  let isResting = false;
  let isWanted = false;

  async function start(): Promise<void> {
    isResting = true;
    isWanted = false;
    const began = performance.now();
    try {
      await run();
    } finally {
      const took = performance.now() - began;
      setTimeout(() => {
        isResting = false;
        if (isWanted) void start();
      }, Math.min(longestRest, Math.max(milliseconds, took / busyShare) - took));
    }
  }

  return () => {
    if (isResting) isWanted = true;
    else void start();
  };
}
