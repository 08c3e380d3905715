import { basename } from "node:path";
import { buildTabs, type BuildProgress } from "../actions/build-tabs";
import { momentOf } from "../actions/moment";
import type { JobOutcome } from "../actions/put-tab";
import { isTab } from "../planning/commissioning/tab";
import { openDocumentPort } from "../workbook/document/document-port";
import { documentSnapshot } from "../workbook/document/document-snapshot";
import type { WorkbookPort } from "../workbook/port";
import { readFile } from "../workbook/xlsx/read-workbook";
import { writeFile } from "../workbook/xlsx/write-workbook";
import { readCall, readNamedFile, required, runCommand, type CommandAnswer } from "./command";
import { computeSheets } from "./compute-sheets";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s build-tabs -- plan.xlsx -o out.xlsx [--job NAME]...
Builds the tab of every open job of a plan file, or of the named ones, into another file. Prints one line of JSON.
Exit code 0: every tab is built; 1: the file is written, but some jobs could not be built; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string", multiple: true } });
  const [file, out] = [files[0]!, required(values.output)];
  const jobs = await buildFile(file, out, values.job);
  const failures = jobs.filter(({ built }) => !built);
  return {
    line: { file, out, built: jobs.length - failures.length, failed: failures.length, jobs },
    isWhole: failures.length === 0,
    complaints: failures.map(({ job, sentence }) => `${job}: ${sentence}`),
  };
}

function buildFile(file: string, out: string, names?: readonly string[]): Promise<readonly JobOutcome[]> {
  return holdOutput(out, async (write) => {
    const bytes = await readNamedFile(file);
    const moment = momentOf(new Date(), basename(file));
    const quick = await buildInDocument(bytes, (port) => buildTabs(port, moment, names));
    if (quick !== null) {
      await write(quick.bytes);
      return quick.outcomes;
    }
    const { openHeadless } = await import("./open-headless");
    const workbook = await openHeadless(bytes, { tabsRest: true });
    try {
      await workbook.settle();
      const outcomes = await outcomesOf(buildTabs(workbook.port, moment, names));
      await write(await workbook.close());
      return outcomes;
    } finally {
      workbook.dispose();
    }
  });
}

/**
 * Builds without the engine, which costs a hundred times as much; it computes no more than what is not known of a new tab.
 *
 * Null where more has to be computed: formulas of the plan without a result, or what looks at other sheets.
 */
async function buildInDocument(
  bytes: Uint8Array,
  build: (port: WorkbookPort) => AsyncIterable<BuildProgress>,
): Promise<{ readonly bytes: Uint8Array; readonly outcomes: readonly JobOutcome[] } | null> {
  const open = readFile(bytes);
  const { port, document, open: openCells, losesReferences } = openDocumentPort(open.document);
  const standing = new Set(open.document.sheets.map(({ id }) => id));
  const isTabSheet = new Set(documentSnapshot(open.document).sheets.flatMap((sheet, index) => (isTab(sheet) ? [open.document.sheets[index]!.id] : [])));
  // A formula that was never computed may stand where the plan is read.
  if ([...openCells().keys()].some((id) => !isTabSheet.has(id))) return null;
  const outcomes = await outcomesOf(build(port));
  const left = openCells();
  if (losesReferences() || [...left.keys()].some((id) => standing.has(id) && !isTabSheet.has(id))) return null;
  const computed = await computeSheets(document(), left);
  return computed === null ? null : { bytes: writeFile(open, open.document, computed), outcomes };
}

async function outcomesOf(build: AsyncIterable<BuildProgress>): Promise<JobOutcome[]> {
  const outcomes: JobOutcome[] = [];
  for await (const { outcome } of build) outcomes.push(outcome);
  return outcomes;
}

runCommand(usage, main);
