import { writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { parseArgs } from "node:util";
import { buildTabs } from "../actions/build-tabs";
import { momentOf } from "../actions/moment";
import { openHeadless } from "./open-headless";
import { readNamedFile, runCommand, wrongCall } from "./run-command";

const usage = "Usage: npm run -s build-tabs -- plan.xlsx -o out.xlsx [--job NAME]...";

/** Builds the tab of every open job of a plan file, or of the named ones, and writes the workbook to another file. */
async function main(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { output: { type: "string", short: "o" }, job: { type: "string", multiple: true } } });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1 || values.output === undefined) return wrongCall;
  const workbook = await openHeadless(await readNamedFile(file));
  let failed = 0;
  try {
    await workbook.settle();
    for await (const { outcome } of buildTabs(workbook.port, momentOf(new Date(), basename(file)), values.job)) {
      if (!outcome.built) failed += 1;
      console.log(JSON.stringify(outcome));
    }
    await writeFile(values.output, await workbook.save());
  } finally {
    workbook.dispose();
  }
  return failed === 0 ? 0 : 1;
}

runCommand(usage, main);
