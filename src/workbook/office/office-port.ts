import { cellArea, type Area } from "../../sheet";
import type { WorkbookPort } from "../port";
import { applyEdits } from "./apply-edits";
import { officeHost, type OfficeHost } from "./host";
import { hostProblem } from "./host-problem";
import { areaOf, place, readWorkbook } from "./read-workbook";
import { rangeOf } from "./range-of";
import { settledReader } from "./settled-reader";

/** Makes the workbook port over the spreadsheet host. Errors of the host come out as problems with a sentence. */
export function officePort(host: OfficeHost = officeHost): WorkbookPort {
  const told = (way: Run): Run => async (batch) => {
    try {
      return await way(batch);
    } catch (thrown) {
      throw hostProblem(thrown);
    }
  };
  const run = told(host.run);
  const look = told(host.look);
  const settled = settledReader(host.wait);

  return {
    read: (sheets, only) => settled(() => run((context) => readWorkbook(host, context, sheets, only))),

    apply: async (edits) => {
      if (edits.length > 0) await run((context) => applyEdits(host, context, edits));
    },

    spillAreas: (cells) =>
      cells.length === 0 ? Promise.resolve([]) : run(async (context) => {
        const { worksheets } = context.workbook;
        const ranges = cells.map((cell) =>
          rangeOf(worksheets.getItem(cell.sheet), cellArea(cell))
            .getSpillingToRangeOrNullObject()
            .load(place),
        );
        await context.sync();
        return ranges.map((range): Area | null => (range.isNullObject ? null : areaOf(range)));
      }),

    selection: () =>
      run(async (context) => {
        const range = context.workbook.getSelectedRange().load(`${place},worksheet/name`);
        await context.sync();
        return { sheet: range.worksheet.name, area: areaOf(range) };
      }),

    watch: (listener) => look((context) => watchSheets(context, listener)),
  };
}

type Run = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/** Listens to changed cells, and to sheets added and deleted. What an event tells is left unread: the sheet that it names by an id would have to be looked up. */
async function watchSheets(context: Excel.RequestContext, listener: () => void): Promise<() => void> {
  const { worksheets } = context.workbook;
  const tell = (): Promise<void> => {
    listener();
    return Promise.resolve();
  };
  const handlers = [worksheets.onChanged.add(tell), worksheets.onAdded.add(tell), worksheets.onDeleted.add(tell)];
  await context.sync();
  return () => {
    for (const handler of handlers) handler.remove();
    void context.sync().catch(() => undefined);
  };
}
