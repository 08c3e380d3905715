/**
 * Drops the keys that were pressed while the page was busy putting another plan on the desk: they were meant for the plan before, and would write over the
 * cells of this one. The returned function is called once a plan is shown; `say` is told where a text was dropped.
 */
export function dropLateKeys(say: (sentence: string) => void): () => void {
  let shownAt = 0;
  let isSaid = false;
  window.addEventListener("keydown", (event) => {
    if (!event.isTrusted || event.timeStamp >= shownAt) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.key.length > 1 || isSaid) return;
    isSaid = true;
    say("What was typed while the plan was being opened stands in no cell: type it again.");
  }, { capture: true });
  return () => {
    shownAt = performance.now();
    isSaid = false;
  };
}
