import type { HeldSheet, Results } from "./compute-sheets";
import { Computing, type Formulas, type HostSheet } from "./host-sheet";

/** What workbooks came to, by what they hold: a test that tries the same one a hundred times has it computed once. */
const computed = new Map<string, ReadonlyMap<string, Results> | Promise<void>>();
const mostKept = 300;

type Compute = (sheets: readonly HeldSheet[]) => Promise<ReadonlyMap<string, Results>>;

/** The engine is loaded by tests that compute something, and by no other. */
const computeHere: Compute = async (sheets) => (await import("./compute-sheets")).computeSheets(sheets);

/** Computes the formulas of a workbook in the engine of the browser workbook, here or elsewhere, once somebody asks for what they come to. */
export function engineFormulas(sheets: () => readonly HostSheet[], compute: Compute = computeHere): Formulas {
  return (sheet) => {
    // Names too: formulas speak of other sheets by them.
    const key = sheets().map((one) => `${one.contents()} ${one.name}`).join("\n");
    const known = computed.get(key);
    if (known instanceof Promise) throw new Computing(known);
    if (known === undefined) {
      const held = sheets().map((one) => ({ id: one.id, name: one.name, cells: one.entered() }));
      const done = compute(held).then((results) => void computed.set(key, results));
      if (computed.size >= mostKept) computed.clear();
      computed.set(key, done);
      throw new Computing(done);
    }
    const own = known.get(sheet.name);
    return (_formula, place) => own?.get(place) ?? null;
  };
}
