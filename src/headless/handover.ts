import { basename } from "node:path";
import { handoverSheet } from "../actions/handover";
import { momentOf } from "../actions/moment";
import { readCall, readNamedFile, required, runCommand, type CommandAnswer } from "./command";
import { openHeadless } from "./open-headless";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s handover -- plan.xlsx --job JOB -o out.xlsx
Makes the handover of one job as a workbook of its own, with nothing else of the plan in it. Prints one line of JSON.
Exit code 0: the file is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string" } });
  const [file, out, job] = [files[0]!, required(values.output), required(values.job)];
  return holdOutput(out, async (write) => {
    const plan = await openHeadless(await readNamedFile(file));
    const pack = await openHeadless();
    try {
      await plan.settle();
      const sheet = await handoverSheet(plan.port, job, momentOf(new Date(), basename(file)).madeAt);
      const blank = (await pack.port.read()).sheets.map(({ name }) => name);
      await pack.port.apply([{ kind: "add-sheet", plan: sheet }, ...blank.map((name) => ({ kind: "delete-sheet", sheet: name }) as const)]);
      await write(await pack.save());
      return { line: { file, out, job, sheets: [sheet.name] }, isWhole: true };
    } finally {
      plan.dispose();
      pack.dispose();
    }
  });
}

runCommand(usage, main);
