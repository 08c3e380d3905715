import { comparePlan } from "../actions/compare-plan";
import { cellAddress } from "../sheet";
import { readCall, runCommand, type CommandAnswer } from "./command";
import { openWorkbookFile } from "./open-file";

const usage = `Usage: npm run -s compare-plans -- earlier.xlsx plan.xlsx
Compares a plan with an earlier one. Prints one line of JSON: table by table each row that is added, gone or changed, with what stood and what stands in its
cells, and each open tab of plan.xlsx that would be built otherwise, with how many of its steps.
Exit code 0: no difference; 1: there are differences; 2: the call or a file is wrong.`;

async function main(args: readonly string[]): Promise<CommandAnswer> {
  const { files } = readCall(args, 2, {});
  const [earlier, file] = [files[0]!, files[1]!];
  const read = async (path: string) => (await openWorkbookFile(path)).port.read();
  const { tables, tabs } = comparePlan(await read(earlier), await read(file));
  const rows = tables.flatMap(({ table, rows: changed }) =>
    changed.map(({ kind, row, at, cells }) => ({
      table,
      row,
      change: kind,
      cell: at === null ? null : `${at.sheet}!${cellAddress({ row: at.row, column: cells[0]?.column ?? 0 })}`,
      cells: cells.map(({ header, before, now }) => ({ header, before, now })),
    })),
  );
  return { line: { earlier, file, rows, tabs }, isWhole: rows.length === 0 && tabs.length === 0 };
}

runCommand(usage, main);
