import { basename } from "node:path";
import { parseArgs } from "node:util";
import { buildTabs } from "../actions/build-tabs";
import type { JobOutcome } from "../actions/put-tab";
import { momentOf } from "../actions/moment";
import { Problem } from "../planning/text";
import { openHeadless } from "./open-headless";
import { readNamedFile, runCommand, writeNamedFile, WrongCall } from "./run-command";

const usage = `Usage: npm run -s build-tabs -- plan.xlsx -o out.xlsx [--job NAME]...
Builds the tab of every open job of a plan file, or of the named ones, into another file. Prints one line of JSON.
Exit code 0: every tab is built; 1: the file is written, but some jobs could not be built; 2: nothing is written, the call or the file is wrong.`;

/** What became of one file; `out` is null where nothing was written, and `error` says why. */
interface FileOutcome {
  readonly file: string;
  readonly out: string | null;
  readonly built: number;
  readonly failed: number;
  readonly jobs: readonly JobOutcome[];
  readonly error?: string;
}

async function main(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { output: { type: "string", short: "o" }, job: { type: "string", multiple: true } } });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1 || values.output === undefined) throw new WrongCall();
  try {
    const jobs = await buildFile(file, values.output, values.job);
    const failures = jobs.filter(({ built }) => !built);
    tell({ file, out: values.output, built: jobs.length - failures.length, failed: failures.length, jobs });
    for (const { job, sentence } of failures) console.error(`${job}: ${sentence}`);
    return failures.length === 0 ? 0 : 1;
  } catch (thrown) {
    if (thrown instanceof Problem) tell({ file, out: null, built: 0, failed: 0, jobs: [], error: thrown.sentence });
    throw thrown;
  }
}

async function buildFile(file: string, output: string, names?: readonly string[]): Promise<readonly JobOutcome[]> {
  const workbook = await openHeadless(await readNamedFile(file), { tabsRest: true });
  try {
    await workbook.settle();
    const outcomes: JobOutcome[] = [];
    for await (const { outcome } of buildTabs(workbook.port, momentOf(new Date(), basename(file)), names)) outcomes.push(outcome);
    await writeNamedFile(output, await workbook.close());
    return outcomes;
  } finally {
    workbook.dispose();
  }
}

function tell(outcome: FileOutcome): void {
  console.log(JSON.stringify(outcome));
}

runCommand(usage, main);
