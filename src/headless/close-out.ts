import { closeOut, previewCloseOut } from "../actions/close-out";
import { momentOf } from "../actions/moment";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s close-out -- plan.xlsx --job JOB --name NAME -o out.xlsx
Closes and seals the tab of one job in the name of a person; accepts nothing that is open. Prints one line of JSON with the code, or with what is open.
Exit code 0: the tab is closed and the file written; 1: something is open and nothing is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string" }, name: { type: "string" } });
  const [file, out, job, name] = [files[0]!, required(values.output), required(values.job), required(values.name)];
  return holdOutput(out, async (write) => {
    const { port, save } = await openWorkbookFile(file);
    const open = (await previewCloseOut(port, job)).map(({ sentence }) => sentence);
    if (open.length > 0) return { line: { file, out: null, job, closed: false, code: null, open }, isWhole: false, complaints: [`${open.length} items keep the tab from closing.`] };
    const code = await closeOut(port, job, `${name.trim()} (by command line)`, momentOf(new Date(), "").madeAt);
    const { bytes, complaints } = save();
    await write(bytes);
    return { line: { file, out, job, closed: true, code, open }, isWhole: true, complaints };
  });
}

runCommand(usage, main);
