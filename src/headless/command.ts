import { readFile, stat } from "node:fs/promises";
import { parseArgs, type ParseArgsConfig } from "node:util";
import { invalid, Problem, quote } from "../planning/text";

/** What a command answers: one line of JSON, what of it deserves a sentence, and whether the answer is whole. */
export interface CommandAnswer {
  readonly line: object;
  /** False where the answer is no, or where a part could not be done: exit code 1 in place of 0. */
  readonly isWhole: boolean;
  /** Sentences for standard error, one a line. */
  readonly complaints?: readonly string[];
}

/** Exit code where there is no result: the call or a file is wrong. */
const noResult = 2;

/** A call of a command that is itself wrong. */
export class WrongCall extends Error {}

/**
 * Runs a command and ends the process with its exit code.
 *
 * The answer is one line of JSON on standard output: 0 where it is whole, 1 where it is no or partial. What stops a command is said in one
 * sentence on standard error, without a line, and ends it with 2; where the call is wrong the usage is said. `--help` says it too.
 */
export function runCommand(usage: string, main: (args: readonly string[]) => Promise<CommandAnswer>): void {
  const args = process.argv.slice(2);
  if (args.includes("--help")) {
    end(0, `${usage}\n`);
    return;
  }
  main(args).then(
    ({ line, isWhole, complaints = [] }) => {
      for (const complaint of complaints) console.error(complaint);
      end(isWhole ? 0 : 1, `${JSON.stringify(line)}\n`);
    },
    (thrown: unknown) => {
      const { code = "" } = thrown as { readonly code?: string };
      const isWrongCall = thrown instanceof WrongCall || code.startsWith("ERR_PARSE_ARGS");
      console.error(isWrongCall ? usage : thrown instanceof Problem ? thrown.sentence : thrown);
      end(noResult, "");
    },
  );
}

/** Ends the process once all of the text is out: the engine would keep it alive, and a pipe takes its time. */
function end(code: number, text: string): void {
  process.stdout.write(text, () => process.exit(code));
}

/** Reads the arguments of a call that names so many files; refuses any other call. */
export function readCall<Options extends NonNullable<ParseArgsConfig["options"]>>(args: readonly string[], files: number, options: Options) {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options });
  if (positionals.length !== files) throw new WrongCall();
  return { files: positionals, values };
}

/** Takes an option that a call cannot do without. */
export function required(value: string | undefined): string {
  if (value === undefined || value.trim() === "") throw new WrongCall();
  return value;
}

/** Reads a file that was named on the command line; refuses one that cannot be read, or that has no end. */
export async function readNamedFile(name: string): Promise<Uint8Array> {
  const found = await stat(name).catch(() => null);
  if (found !== null && !found.isFile()) throw invalid("file", name, `${quote(name)} is a folder or a device. Name a file.`);
  try {
    return await readFile(name);
  } catch {
    throw invalid("file", name, `The file ${quote(name)} cannot be read. Check its name, and that it may be opened.`);
  }
}
