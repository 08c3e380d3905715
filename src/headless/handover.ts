import { basename, extname } from "node:path";
import { readHandover, type Handover } from "../actions/handover";
import { momentOf } from "../actions/moment";
import { invalid, quote } from "../planning/text";
import { openDocumentPort } from "../workbook/document/document-port";
import { emptyDocument } from "../workbook/document/workbook-document";
import { writeFile } from "../workbook/xlsx/write-workbook";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";

const usage = `Usage: npm run -s handover -- plan.xlsx --job JOB -o out.xlsx (or out.pdf)
Makes the handover of one job as a workbook of its own, with nothing else of the plan in it, or as a PDF. Prints one line of JSON.
Exit code 0: the file is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, job: { type: "string" } });
  const [file, out, job] = [files[0]!, required(values.output), required(values.job)];
  const fileOf = writers[extname(out).toLowerCase()];
  if (fileOf === undefined) throw invalid("output", out, `${quote(out)} is neither a workbook nor a PDF. Name a file that ends in .xlsx or .pdf.`);
  return holdOutput(out, async (write) => {
    const { port } = await openWorkbookFile(file);
    const made = await readHandover(port, job, momentOf(new Date(), basename(file)).madeAt);
    const { bytes, sheets } = await fileOf(made);
    await write(bytes);
    return { line: { file, out, job, sheets }, isWhole: true };
  });
}

/** What makes the file, by the end of its name, and says which sheets are in it. */
const writers: Readonly<Record<string, (made: Handover) => Promise<{ readonly bytes: Uint8Array; readonly sheets: readonly string[] }>>> = {
  ".xlsx": async ({ sheet }) => {
    const made = openDocumentPort(emptyDocument);
    await made.port.apply([{ kind: "add-sheet", plan: sheet }]);
    return { bytes: writeFile(null, emptyDocument, made.finish()), sheets: [sheet.name] };
  },
  ".pdf": async ({ pack }) => ({ bytes: await (await import("../pdf/write-printout")).writePrintout(pack), sheets: [] }),
};

runCommand(usage, main);
