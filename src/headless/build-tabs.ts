import { basename } from "node:path";
import { buildTabs } from "../actions/build-tabs";
import { momentOf } from "../actions/moment";
import type { JobOutcome } from "../actions/put-tab";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s build-tabs -- plan.xlsx -o out.xlsx [--job NAME]...
Builds the tab of every open job of a plan file, or of the named ones, into another file. Prints one line of JSON.
Exit code 0: every tab is built; 1: the file is written, but some jobs could not be built; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string", multiple: true } });
  const [file, out] = [files[0]!, required(values.output)];
  const { jobs, complaints } = await buildFile(file, out, values.job);
  const failures = jobs.filter(({ built }) => !built);
  return {
    line: { file, out, built: jobs.length - failures.length, failed: failures.length, jobs },
    isWhole: failures.length === 0,
    complaints: [...failures.map(({ job, sentence }) => `${job}: ${sentence}`), ...complaints],
  };
}

function buildFile(file: string, out: string, names?: readonly string[]): Promise<{ readonly jobs: readonly JobOutcome[]; readonly complaints: readonly string[] }> {
  return holdOutput(out, async (write) => {
    const { port, save, putAway } = await openWorkbookFile(file);
    const outcomes: JobOutcome[] = [];
    for await (const { outcome } of buildTabs(port, momentOf(new Date(), basename(file)), names)) {
      outcomes.push(outcome);
      putAway();
    }
    const { bytes, complaints } = save();
    await write(bytes);
    return { jobs: outcomes, complaints };
  });
}

runCommand(usage, main);
