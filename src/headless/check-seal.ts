import { checkTabSeal, readTabs, tabsInUse } from "../planning/commissioning/tab";
import { invalid, quote } from "../planning/text";
import { readCall, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";

const usage = `Usage: npm run -s check-seal -- file.xlsx
Holds every commissioning tab of a file, a plan or a copied tab, against its seal. Prints one line of JSON: each tab, whether it is sealed, whether the
seal holds, and what changed.
Exit code 0: every seal holds; 1: one does not; 2: the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files } = readCall(args, 1, {});
  const file = files[0]!;
  const workbook = await (await openWorkbookFile(file)).port.read();
  const tabs = tabsInUse(readTabs(workbook));
  if (tabs.length === 0) throw invalid("file", file, `The workbook ${quote(file)} holds no commissioning tab. Name the file of a plan, or of a copied tab.`);
  const checked = tabs.map(({ tab, copies }) => {
    const seal = checkTabSeal(workbook.sheets.find(({ name }) => name === tab.sheet)!, tab);
    // Where two tabs are of one job, nobody can tell which one was sealed.
    const doubts = [...copies.map(({ sheet }) => `Tab ${quote(sheet)} is of this job too. Delete one of the two.`), ...tab.faults];
    return { job: tab.title, sealed: seal !== null, holds: seal?.holds === true && doubts.length === 0, changed: [...doubts, ...(seal?.changed ?? []).map(({ label }) => label)] };
  });
  return { line: { file, tabs: checked }, isWhole: checked.every(({ sealed, holds, changed }) => holds || (!sealed && changed.length === 0)) };
}

runCommand(usage, main);
