import { isBeingComputed, type SheetSnapshot, type WorkbookSnapshot } from "../../sheet";

/** How long is waited before each further look, in milliseconds: some eight seconds in all. */
const pauses = [250, 500, 1000, 2000, 4000] as const;

/**
 * Makes a reader that waits while cells are still being computed: the program asks functions of add-ins late, and shows #BUSY! until they have
 * answered. All is read anew then, as a table that spills may have grown.
 *
 * A cell that is busy longer is answered as the error it shows, and not waited for again until it has shown something else: functions of other
 * add-ins may be busy for ever. `wait` takes milliseconds.
 */
export function settledReader(wait: (milliseconds: number) => Promise<void>): (read: () => Promise<WorkbookSnapshot>) => Promise<WorkbookSnapshot> {
  const stuck = new Map<string, ReadonlySet<string>>();
  const isWaitedFor = (sheet: SheetSnapshot): boolean => busyCells(sheet).some((cell) => stuck.get(sheet.name)?.has(cell) !== true);
  return async (read) => {
    let workbook = await read();
    for (const pause of pauses) {
      if (!workbook.sheets.some(isWaitedFor)) break;
      await wait(pause);
      workbook = await read();
    }
    for (const sheet of workbook.sheets) if (sheet.values.length > 0) stuck.set(sheet.name, new Set(busyCells(sheet)));
    return workbook;
  };
}

/** Lists the cells of a sheet that are still being computed, by row and column. */
function busyCells({ values }: SheetSnapshot): string[] {
  const cells: string[] = [];
  for (const [row, line] of values.entries()) {
    for (let column = 0; column < line.length; column += 1) if (isBeingComputed(line[column])) cells.push(`${row} ${column}`);
  }
  return cells;
}
