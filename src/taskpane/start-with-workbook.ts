import type { WorkbookPort } from "../workbook/port";

/**
 * Makes the add-in load with a workbook from the first time something of ours is built in it.
 *
 * Without that, formulas of a workbook that is opened again show #NAME? until somebody opens the pane. `set` tells the host so, once;
 * where it fails the work that was done stands, and the next build tries again.
 */
export function startWithWorkbook(port: WorkbookPort, set: () => Promise<void>): WorkbookPort {
  let done = false;
  return {
    ...port,
    apply: async (edits) => {
      await port.apply(edits);
      if (done || !edits.some(({ kind }) => kind === "add-sheet" || kind === "write")) return;
      done = true;
      await set().catch(() => (done = false));
    },
  };
}
