// Stands in for the host library on the pane's page: the mock workbook in place of the spreadsheet program.
import { mockWorkbook, type MockWorkbook } from "../support/mock-workbook/mock-workbook";

/** What the test asks the page about the host. */
export interface HostOnPage {
  readonly book: MockWorkbook;
  /** Worksheet functions that were handed over. */
  readonly functions: string[];
  /** Functions of the ribbon's buttons. */
  readonly buttons: Map<string, (event: { completed(): void }) => unknown>;
  /** What the host was told to do when the workbook opens. */
  readonly startUp: string[];
}

const page: HostOnPage = { book: mockWorkbook(), functions: [], buttons: new Map(), startUp: [] };
const { host } = page.book;

class CellError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

Object.assign(globalThis, {
  hostOnPage: page,
  CustomFunctions: { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" }, associate: (id: string) => page.functions.push(id) },
  Excel: { run: host.run },
  Office: {
    onReady: () => Promise.resolve({ host: "Excel", platform: "OfficeOnline" }),
    HostType: { Excel: "Excel" },
    StartupBehavior: { load: "Load" },
    context: {
      officeTheme: { bodyBackgroundColor: "#262626" },
      document: { url: "https://files.example.com/plans/thornmere.xlsx" },
      requirements: { isSetSupported: (_name: string, version: "1.13") => host.supports(version) },
    },
    actions: { associate: (name: string, call: (event: { completed(): void }) => unknown) => page.buttons.set(name, call) },
    addin: {
      showAsTaskpane: () => Promise.resolve(),
      setStartupBehavior: (behaviour: string) => {
        page.startUp.push(behaviour);
        return Promise.resolve();
      },
    },
  },
});
