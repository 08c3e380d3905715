import type { Results } from "./compute-sheets";
import { Computing, type Formulas, type HostSheet } from "./host-sheet";

/** What workbooks came to, by what they hold: a test that tries the same one a hundred times has it computed once. */
const computed = new Map<string, ReadonlyMap<string, Results> | Promise<void>>();
const mostKept = 300;

/** Computes the formulas of a workbook in the engine of the browser workbook, once somebody asks for what they come to. */
export function engineFormulas(sheets: () => readonly HostSheet[]): Formulas {
  return (sheet) => {
    // Names too: formulas speak of other sheets by them.
    const key = sheets().map((one) => `${one.contents()} ${one.name}`).join("\n");
    const known = computed.get(key);
    if (known instanceof Promise) throw new Computing(known);
    if (known === undefined) {
      const held = sheets().map((one) => ({ id: one.id, name: one.name, cells: one.entered() }));
      // The engine is loaded by tests that compute something, and by no other.
      const done = import("./compute-sheets").then(async ({ computeSheets }) => void computed.set(key, await computeSheets(held)));
      if (computed.size >= mostKept) computed.clear();
      computed.set(key, done);
      throw new Computing(done);
    }
    const own = known.get(sheet.name);
    return (_formula, place) => own?.get(place) ?? null;
  };
}
