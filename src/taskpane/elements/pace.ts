/**
 * Makes a trigger that calls `run` at once, but never again before `milliseconds` have passed since the last call began nor while it
 * still runs. Triggers in between are answered by one call afterwards, so that the last one is never lost.
 */
export function pace(run: () => Promise<unknown>, milliseconds: number): () => void {
  let isResting = false;
  let isWanted = false;

  async function start(): Promise<void> {
    isResting = true;
    isWanted = false;
    const rest = new Promise<void>((resolve) => {
      setTimeout(resolve, milliseconds);
    });
    try {
      await run();
    } finally {
      await rest;
      isResting = false;
      if (isWanted) void start();
    }
  }

  return () => {
    if (isResting) isWanted = true;
    else void start();
  };
}
