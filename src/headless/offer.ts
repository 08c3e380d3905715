import { issueOffer, readCustomersFile, readOffer } from "../actions/offers";
import { momentOf } from "../actions/moment";
import { readCall, required, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";
import { holdOutput } from "./output-file";
import { printoutWriter } from "./printout-writer";

const usage = `Usage: npm run -s offer -- plan.xlsx --offer NUMBER -o out.xlsx
       npm run -s offer -- plan.xlsx --offer NUMBER --for-customer -o out.pdf (or out.xlsx)
Issues the next revision of an offer of the quote as a sheet of the plan; with --for-customer makes the customer's file of the revision that was issued
last, with nothing else of the plan in it. Prints one line of JSON.
Exit code 0: the file is written; 2: nothing is written, the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files, values } = readCall(args, 1, { output: { type: "string", short: "o" }, offer: { type: "string" }, "for-customer": { type: "boolean" } });
  const [file, out, offer] = [files[0]!, required(values.output), required(values.offer)];
  return values["for-customer"] === true ? customersFile(file, out, offer) : issue(file, out, offer);
}

function issue(file: string, out: string, name: string): Promise<CommandAnswer> {
  return holdOutput(out, async (write) => {
    const { port, save } = await openWorkbookFile(file);
    const { offer, revision, ...shown } = await readOffer(port, name, momentOf(new Date(), "").madeAt);
    const sheet = await issueOffer(port, { offer, revision, ...shown });
    const { bytes, complaints } = save();
    await write(bytes);
    return { line: { file, out, offer, revision, sheet }, isWhole: true, complaints };
  });
}

function customersFile(file: string, out: string, offer: string): Promise<CommandAnswer> {
  const fileOf = printoutWriter(out);
  return holdOutput(out, async (write) => {
    const { port } = await openWorkbookFile(file);
    const { printout, sheet } = await readCustomersFile(port, offer);
    const { bytes, sheets } = await fileOf(printout, sheet);
    await write(bytes);
    return { line: { file, out, offer: printout.title, sheets }, isWhole: true };
  });
}

runCommand(usage, main);
