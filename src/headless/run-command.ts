import { readFile, rename, rm, writeFile } from "node:fs/promises";
import { invalid, Problem, quote } from "../planning/text";

/** Exit code where nothing was written: the call or a file is wrong. */
const nothingWritten = 2;

/** A call of a command that is itself wrong. */
export class WrongCall extends Error {}

/**
 * Runs a command and ends the process with its exit code.
 *
 * What stops it is said in one sentence on standard error, and ends it with `nothingWritten`; where the call is wrong the usage is said.
 */
export function runCommand(usage: string, main: (args: readonly string[]) => Promise<number>): void {
  main(process.argv.slice(2)).then(
    (code) => process.exit(code),
    (thrown: unknown) => {
      const { code = "" } = thrown as { readonly code?: string };
      const isWrongCall = thrown instanceof WrongCall || code.startsWith("ERR_PARSE_ARGS");
      console.error(isWrongCall ? usage : thrown instanceof Problem ? thrown.sentence : thrown);
      process.exit(nothingWritten);
    },
  );
}

/** Reads a file that was named on the command line; refuses one that cannot be read. */
export async function readNamedFile(name: string): Promise<Uint8Array> {
  try {
    return await readFile(name);
  } catch {
    throw invalid("file", name, `The file ${quote(name)} cannot be read. Check its name, and that it may be opened.`);
  }
}

/** Writes a file that was named on the command line, whole or not at all; refuses a place that cannot be written to. */
export async function writeNamedFile(name: string, bytes: Uint8Array): Promise<void> {
  const unfinished = `${name}.${process.pid}.part`;
  try {
    await writeFile(unfinished, bytes);
    await rename(unfinished, name);
  } catch {
    await rm(unfinished, { force: true });
    throw invalid("output", name, `The file ${quote(name)} cannot be written. Check that its folder is there and may be written to.`);
  }
}
