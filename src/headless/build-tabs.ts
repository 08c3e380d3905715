import { basename } from "node:path";
import { parseArgs } from "node:util";
import { buildTabs, type BuildProgress } from "../actions/build-tabs";
import type { JobOutcome } from "../actions/put-tab";
import { momentOf } from "../actions/moment";
import { Problem } from "../planning/text";
import { isTab } from "../planning/commissioning/tab";
import { documentSnapshot } from "../workbook/document/document-snapshot";
import { openDocumentPort } from "../workbook/document/document-port";
import type { WorkbookPort } from "../workbook/port";
import { readFile } from "../workbook/xlsx/read-workbook";
import { writeFile } from "../workbook/xlsx/write-workbook";
import { computeSheets } from "./compute-sheets";
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
  const bytes = await readNamedFile(file);
  const moment = momentOf(new Date(), basename(file));
  const quick = await buildInDocument(bytes, (port) => buildTabs(port, moment, names));
  if (quick !== null) {
    await writeNamedFile(output, quick.bytes);
    return quick.outcomes;
  }
  const { openHeadless } = await import("./open-headless");
  const workbook = await openHeadless(bytes, { tabsRest: true });
  try {
    await workbook.settle();
    const outcomes = await outcomesOf(buildTabs(workbook.port, moment, names));
    await writeNamedFile(output, await workbook.close());
    return outcomes;
  } finally {
    workbook.dispose();
  }
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

function tell(outcome: FileOutcome): void {
  console.log(JSON.stringify(outcome));
}

runCommand(usage, main);
