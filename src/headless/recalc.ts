import { needsComputing } from "../workbook/document/formula-kind";
import { readFile } from "../workbook/xlsx/read-workbook";
import { writeFile } from "../workbook/xlsx/write-workbook";
import { readCall, readNamedFile, required, runCommand, type CommandAnswer } from "./command";
import type { ComputedFile } from "./compute-file";
import { withKnownAnswers } from "./known-answers";
import { nodeDeflater } from "./node-deflater";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s recalc -- book.xlsx -o out.xlsx
Computes the formulas of ours in a workbook, those that carry no result, and what other formulas the engine computes as the program that saved
them did; all other formulas keep their figures. Prints one line of JSON that names our formulas that failed, and formulas whose figures no
longer follow from their cells: they are saved without a result, for the next program to compute.
Exit code 0: done, nothing to say; 1: the file is written, and the line names cells; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" } });
  const [file, out] = [files[0]!, required(values.output)];
  return holdOutput(out, async (write) => {
    const { bytes, ...found } = await recalculated(await readNamedFile(file));
    await write(bytes);
    return { line: { file, out, ...found }, isWhole: found.failed.length + found.outOfDate.length === 0 };
  });
}

async function recalculated(came: Uint8Array): Promise<ComputedFile> {
  let [bytes, open] = [came, readFile(came, nodeDeflater)];
  const known = withKnownAnswers(open.document);
  if (known !== open.document) {
    // What formulas of tabs answer is written without computing them, where another program left their results out.
    bytes = writeFile(open, open.document, known);
    open = readFile(bytes, nodeDeflater);
  }
  // A file in which nothing is to be computed is the same file.
  if (!needsComputing(open.document)) return { bytes, failed: [], outOfDate: [] };
  const { computeFile } = await import("./compute-file");
  return computeFile(open);
}

runCommand(usage, main);
