import { parseArgs } from "node:util";
import { Problem } from "../planning/text";
import { readFile } from "../workbook/xlsx/read-workbook";
import { needsComputing } from "../workbook/document/formula-kind";
import { readNamedFile, runCommand, writeNamedFile, WrongCall } from "./run-command";

const usage = `Usage: npm run -s recalc -- book.xlsx -o out.xlsx
Computes the formulas of ours in a workbook, those that carry no result, and what other formulas the engine computes as the program that saved
them did; all other formulas keep their figures. Prints one line of JSON that names our formulas that failed, and formulas whose figures no
longer follow from their cells: they are saved without a result, for the next program to compute.
Exit code 0: done, nothing to say; 1: the file is written, and the line names cells; 2: nothing is written, the call or the file is wrong.`;

/** What became of one file; `out` is null where nothing was written, and `error` says why. */
interface Outcome {
  readonly file: string;
  readonly out: string | null;
  readonly failed: readonly { readonly cell: string; readonly error: string; readonly sentence: string }[];
  readonly outOfDate: readonly string[];
  readonly error?: string;
}

async function main(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { output: { type: "string", short: "o" } } });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1 || values.output === undefined) throw new WrongCall();
  try {
    const { bytes, ...found } = await recalculated(await readNamedFile(file));
    await writeNamedFile(values.output, bytes);
    tell({ file, out: values.output, ...found });
    return found.failed.length + found.outOfDate.length === 0 ? 0 : 1;
  } catch (thrown) {
    if (thrown instanceof Problem) tell({ file, out: null, failed: [], outOfDate: [], error: thrown.sentence });
    throw thrown;
  }
}

async function recalculated(bytes: Uint8Array): Promise<Pick<Outcome, "failed" | "outOfDate"> & { readonly bytes: Uint8Array }> {
  // A file in which nothing is to be computed is the same file.
  if (!needsComputing(readFile(bytes).document)) return { bytes, failed: [], outOfDate: [] };
  const { openHeadless } = await import("./open-headless");
  const workbook = await openHeadless(bytes, { keepsVolatile: true });
  try {
    await workbook.settle();
    const failed = workbook.faults();
    return { ...(await workbook.closeFile()), failed };
  } finally {
    workbook.dispose();
  }
}

function tell(outcome: Outcome): void {
  console.log(JSON.stringify(outcome));
}

runCommand(usage, main);
