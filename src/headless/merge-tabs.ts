import { basename } from "node:path";
import { bringBack, previewReturned, type ReturnedJob } from "../actions/bring-back";
import { momentOf } from "../actions/moment";
import type { JobOutcome } from "../actions/put-tab";
import type { WorkbookPort } from "../workbook/port";
import { readCall, required, runCommand, WrongCall, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s merge-tabs -- plan.xlsx returned.xlsx -o out.xlsx [--take theirs|mine]
Writes the records of a returned file into the plan's tabs. Prints one line of JSON with every record that was written, or that both sides changed.
Exit code 0: all is written; 1: the file is written, but a tab could not be, or records that both sides changed, or hold points, were left as the plan has them;
2: nothing is written, the call or a file is wrong.`;

/** What became of the records of one job. */
interface MergedJob {
  readonly job: string;
  /** Null where nothing of the job was to be written. */
  readonly outcome: JobOutcome | null;
  readonly rows: readonly { readonly row: string; readonly change: string; readonly ours: string; readonly theirs: string; readonly written: boolean }[];
  readonly remarks: readonly string[];
}

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 2, { output: { type: "string", short: "o" }, take: { type: "string" } });
  const [file, returned, out, { take }] = [files[0]!, files[1]!, required(values.output), values];
  if (take !== undefined && take !== "theirs" && take !== "mine") throw new WrongCall();
  const { jobs, complaints } = await holdOutput(out, async (write) => {
    const { port, save } = await openWorkbookFile(file);
    const theirs = await (await openWorkbookFile(returned)).port.read();
    const merged: MergedJob[] = [];
    for (const preview of await previewReturned(port, theirs)) merged.push(await mergeJob(port, preview, take, basename(file)));
    const { bytes, complaints } = save();
    await write(bytes);
    return { jobs: merged, complaints };
  });
  const rows = jobs.flatMap((one) => one.rows);
  const failed = jobs.flatMap(({ outcome }) => (outcome === null || outcome.built ? [] : [outcome]));
  const left = rows.filter(({ written, change }) => !written && (take === undefined || change === "hold point")).length;
  return {
    line: { file, returned, out, written: rows.filter(({ written }) => written).length, left, jobs },
    isWhole: failed.length === 0 && left === 0,
    complaints: [...failed.map(({ job, sentence }) => `${job}: ${sentence}`), ...complaints],
  };
}

async function mergeJob(port: WorkbookPort, preview: ReturnedJob, take: string | undefined, planName: string): Promise<MergedJob> {
  const { job, items, holdPoints, remarks } = preview;
  const accepted = new Set(items.filter(({ change }) => change === "theirs" || take === "theirs").map(({ id }) => id));
  const outcome = accepted.size === 0 ? null : await bringBack(port, preview, accepted, momentOf(new Date(), planName));
  const isWritten = (id: string): boolean => outcome?.built === true && accepted.has(id);
  const rows = [
    ...items.map(({ id, label, change, ours, theirs }) => ({ row: label, change, ours, theirs, written: isWritten(id) })),
    // They are signed in the lead's own copy only.
    ...holdPoints.map(({ label, ours, theirs }) => ({ row: label, change: "hold point", ours, theirs, written: false })),
  ];
  return { job, outcome, rows, remarks };
}

runCommand(usage, main);
