/** What the adapter needs of the spreadsheet host; a mock workbook stands in for it in the tests. */
export interface OfficeHost {
  readonly run: <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  /** Tells whether the host knows an API set newer than those the manifest asks for. */
  readonly supports: (set: "1.13" | "1.17" | "1.18") => boolean;
}

/** The spreadsheet host in which this page is running. */
export const officeHost: OfficeHost = {
  run: (batch) => Excel.run(batch),
  supports: (set) => Office.context.requirements.isSetSupported("ExcelApi", set),
};
