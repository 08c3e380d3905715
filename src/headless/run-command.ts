import { readFile } from "node:fs/promises";
import { invalid, Problem, quote } from "../planning/problem";

/** Exit code of a call that is itself wrong. */
export const wrongCall = 2;

/**
 * Runs a command and ends the process with its exit code.
 *
 * What goes wrong is said in one sentence on standard error: 1 where a file or the work is at fault, 2 with the usage where the call is.
 */
export function runCommand(usage: string, main: (args: readonly string[]) => Promise<number>): void {
  main(process.argv.slice(2)).then(
    (code) => {
      if (code === wrongCall) console.error(usage);
      process.exit(code);
    },
    (thrown: unknown) => {
      const { code = "" } = thrown as { readonly code?: string };
      const isWrongCall = code.startsWith("ERR_PARSE_ARGS");
      console.error(isWrongCall ? usage : thrown instanceof Problem ? thrown.sentence : thrown);
      process.exit(isWrongCall ? wrongCall : 1);
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
