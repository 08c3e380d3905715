import { basename } from "node:path";
import { readHandover } from "../actions/handover";
import { momentOf } from "../actions/moment";
import { openDocumentPort } from "../workbook/document/document-port";
import { emptyDocument } from "../workbook/document/workbook-document";
import { writeFile } from "../workbook/xlsx/write-workbook";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s handover -- plan.xlsx --job JOB -o out.xlsx
Makes the handover of one job as a workbook of its own, with nothing else of the plan in it. Prints one line of JSON.
Exit code 0: the file is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string" } });
  const [file, out, job] = [files[0]!, required(values.output), required(values.job)];
  return holdOutput(out, async (write) => {
    const { port } = await openWorkbookFile(file);
    const { sheet } = await readHandover(port, job, momentOf(new Date(), basename(file)).madeAt);
    const pack = openDocumentPort(emptyDocument);
    await pack.port.apply([{ kind: "add-sheet", plan: sheet }]);
    await write(writeFile(null, emptyDocument, pack.finish()));
    return { line: { file, out, job, sheets: [sheet.name] }, isWhole: true };
  });
}

runCommand(usage, main);
