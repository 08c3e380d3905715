/** What the adapter needs of the spreadsheet host; a workbook in memory stands in for it in the tests. */
export interface OfficeHost {
  /** Runs a batch of requests, which are refused while a cell is being edited. */
  readonly run: <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  /** Runs a batch that nobody asked for just now: while a cell is being edited it waits. */
  readonly look: <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  /** Tells whether the host knows an API set newer than those the manifest asks for. */
  readonly supports: (set: "1.13" | "1.18") => boolean;
  /** Lets so many milliseconds pass, for the host to get on with its work. */
  readonly wait: (milliseconds: number) => Promise<void>;
}

/**
 * The spreadsheet host in which this page is running.
 *
 * A plain context sends half the actions of `Excel.run`, which would have the host keep every range for later requests. Only `Excel.run`
 * can wait for cell editing to end.
 */
export const officeHost: OfficeHost = {
  run: async (batch) => batch(new Excel.RequestContext()),
  look: (batch) => Excel.run({ delayForCellEdit: true }, batch),
  supports: (set) => Office.context.requirements.isSetSupported("ExcelApi", set),
  wait: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
};
