import { cellArea, type Area } from "../../sheet";
import type { WorkbookChange, WorkbookPort } from "../port";
import { applyEdits } from "./apply-edits";
import { officeHost, type OfficeHost } from "./host";
import { hostProblem } from "./host-problem";
import { areaOf, place, readWorkbook } from "./read-workbook";
import { rangeOf } from "./range-of";

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

  return {
    read: (sheets) => run((context) => readWorkbook(host, context, sheets)),

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

    watch: (listener) => run((context) => watchSheets(context, look, listener)),
  };
}

type Run = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/** Listens to changed cells, and to sheets added and deleted; the host names a sheet by an id, and the names are looked up after each change. */
async function watchSheets(context: Excel.RequestContext, look: Run, listener: (change: WorkbookChange) => void): Promise<() => void> {
  const { worksheets } = context.workbook;
  const names = new Map<string, string>();
  let lookingUp: Promise<void> | null = null;
  const lookUp = () =>
    look(async (request) => {
      // Changes that are told in one go share one request; what is told while it is on its way asks anew.
      lookingUp = null;
      const { worksheets: sheets } = request.workbook;
      sheets.load("items/id,items/name");
      await request.sync();
      for (const { id, name } of sheets.items) names.set(id, name);
    }).catch(() => {
      // The host does not answer now: the names known so far will do.
    });
  const tell = async ({ worksheetId, source }: { readonly worksheetId: string; readonly source: string }) => {
    await (lookingUp ??= Promise.resolve().then(lookUp));
    listener({ sheet: names.get(worksheetId) ?? "", source: source === "Remote" ? "remote" : "local" });
  };
  worksheets.load("items/id,items/name");
  const handlers = [worksheets.onChanged.add(tell), worksheets.onAdded.add(tell), worksheets.onDeleted.add(tell)];
  await context.sync();
  for (const sheet of worksheets.items) names.set(sheet.id, sheet.name);
  return () => {
    for (const handler of handlers) handler.remove();
    void context.sync().catch(() => undefined);
  };
}
