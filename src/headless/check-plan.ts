import { dayOf } from "../actions/moment";
import { checkPlan, rules, type Weight } from "../planning/checks";
import { isPlan, readPlan } from "../planning/plan/read";
import { invalid, quote } from "../planning/text";
import { cellAddress } from "../sheet";
import { readCall, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";

const usage = `Usage: npm run -s check-plan -- plan.xlsx
Checks the plan of a file by every rule. Prints one line of JSON: how many findings stop, warn and note, and each with its rule, cell and sentence.
Exit code 0: no finding; 1: there are findings; 2: the call or the file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files } = readCall(args, 1, {});
  const file = files[0]!;
  const workbook = await (await openWorkbookFile(file)).port.read();
  if (!isPlan(readPlan(workbook))) throw invalid("file", file, `The workbook ${quote(file)} holds no planning table. Name the file of a plan.`);
  const findings = checkPlan(workbook, rules, dayOf(new Date())).map(({ rule, weight, sheet, row, column, sentence }) => ({ rule, weight, sheet, cell: cellAddress({ row, column }), sentence }));
  const count = (weight: Weight): number => findings.filter((one) => one.weight === weight).length;
  return { line: { file, stop: count("stop"), warn: count("warn"), note: count("note"), findings }, isWhole: findings.length === 0 };
}

runCommand(usage, main);
