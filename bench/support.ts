import { performance } from "node:perf_hooks";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

setFlagsFromString("--expose-gc");

/** Frees what nobody holds any more, so that no work pays for the garbage of the one before. */
export const collectGarbage = runInNewContext("gc") as () => void;

let sunk: unknown;

/** Keeps `value` alive, so that the work behind it cannot be optimised away. */
export function sink(value: unknown): void {
  sunk = value;
}

/** Shows what was last sunk: without a reader an engine might still drop the writes. */
export function lastSunk(): unknown {
  return sunk;
}

/** Runs of each piece of work that come first and do not count: the engine compiles what it finds busy, in several steps. */
const uncounted = 4;

/**
 * Times `work` over `runs` runs, after those that do not count, and returns the median in milliseconds.
 *
 * A work that stands against no other pays for its own garbage, as it does in a workbook; that of others is gone before it begins.
 */
export function medianMs(work: () => unknown, runs = 9): number {
  collectGarbage();
  for (let round = 0; round < uncounted; round++) sink(work());
  return median(Array.from({ length: runs }, () => timeMs(work)));
}

/**
 * Times several pieces of work against each other and returns the median of each in milliseconds.
 *
 * The runs are interleaved (a, b, a, b, ...), so that a slow spell of the machine falls on all of them alike, and nobody pays for the
 * garbage of the one before.
 */
export function medians(works: readonly (() => unknown)[], runs = 9): number[] {
  for (let round = 0; round < uncounted; round++) for (const work of works) sink(work());
  const times: number[][] = works.map(() => []);
  for (let run = 0; run < runs; run++) {
    works.forEach((work, index) => {
      collectGarbage();
      times[index]!.push(timeMs(work));
    });
  }
  return times.map(median);
}

function timeMs(work: () => unknown): number {
  const start = performance.now();
  sink(work());
  return performance.now() - start;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

/** One line of a bench report: what was measured, what came out, and the bound it is held against. */
export interface BenchLine {
  readonly what: string;
  readonly measured: string;
  readonly target?: string;
  readonly holds?: boolean;
}

/** Prints the lines of one bench as a table. */
export function printBench(title: string, lines: readonly BenchLine[]): void {
  console.log(`\n${title}`);
  const rows = lines.map((line) => [line.what, line.measured, line.target ?? "", line.holds === undefined ? "" : line.holds ? "holds" : "MISSED"]);
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]!.length)));
  for (const row of rows) console.log(`  ${row.map((cell, column) => cell.padEnd(widths[column]!)).join("  ").trimEnd()}`);
}
