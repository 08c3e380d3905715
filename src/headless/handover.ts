import { basename } from "node:path";
import { readHandover } from "../actions/handover";
import { momentOf } from "../actions/moment";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";
import { printoutWriter } from "./printout-writer";

const usage = `Usage: npm run -s handover -- plan.xlsx --job JOB -o out.xlsx (or out.pdf)
Makes the handover of one job as a workbook of its own, with nothing else of the plan in it, or as a PDF. Prints one line of JSON.
Exit code 0: the file is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string" } });
  const [file, out, job] = [files[0]!, required(values.output), required(values.job)];
  const fileOf = printoutWriter(out);
  return holdOutput(out, async (write) => {
    const { port } = await openWorkbookFile(file);
    const { pack, sheet } = await readHandover(port, job, momentOf(new Date(), basename(file)).madeAt);
    const { bytes, sheets } = await fileOf(pack, sheet);
    await write(bytes);
    return { line: { file, out, job, sheets }, isWhole: true };
  });
}

runCommand(usage, main);
