import { execFile } from "node:child_process";
import { join } from "node:path";

/** What a command said and how it ended. */
export interface CommandRun {
  readonly code: number;
  /** Standard output, a JSON object a line. */
  readonly lines: readonly Record<string, unknown>[];
  /** Standard output as it was written. */
  readonly text: string;
  /** Standard error. */
  readonly complaint: string;
}

/** Runs a command of ours as people do, but without npm around it. */
export function runCommand(command: string, ...args: readonly string[]): Promise<CommandRun> {
  const root = join(__dirname, "..", "..");
  return new Promise((resolve) => {
    execFile(process.execPath, [join(root, "scripts", "run.mjs"), `src/headless/${command}.ts`, ...args], { maxBuffer: 2 ** 26 }, (error, stdout, stderr) => {
      const lines = stdout.split("\n").filter((line) => line.startsWith("{")).map((line) => JSON.parse(line) as Record<string, unknown>);
      resolve({ code: error === null ? 0 : Number(error.code), lines, text: stdout, complaint: stderr.trim() });
    });
  });
}
