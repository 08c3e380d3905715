// Stands in for the spreadsheet program on the pane's page, behind the vendor's own client, which the page has loaded before.
import type { Client, Session } from "../support/host-workbook/client-build";
import { openHost, type HostWorkbook } from "../support/host-workbook/open-host";

/** What the test asks the page about the host. */
export interface HostOnPage {
  readonly book: HostWorkbook;
  /** Worksheet functions that were handed over. */
  readonly functions: string[];
  /** Functions of the ribbon's buttons. */
  readonly buttons: Map<string, (event: { completed(): void }) => unknown>;
  /** What the host was told to do when the workbook opens. */
  readonly startUp: string[];
  /** True where the host cannot show the pane. */
  refusesPane: boolean;
}

const { Excel: excel, OfficeExtension: extension } = globalThis as unknown as Client & {
  readonly OfficeExtension: { readonly _testSetRichApiMessageReadyImpl: (ready: () => Promise<void>) => void; readonly SessionBase: { _overrideSession: Session } };
};
const page: HostOnPage = { book: openHost({ Excel: excel, OfficeExtension: extension }), functions: [], buttons: new Map(), startUp: [], refusesPane: false };
extension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
extension.SessionBase._overrideSession = page.book.session;

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
  Office: {
    onReady: () => Promise.resolve({ host: "Excel", platform: "OfficeOnline" }),
    HostType: { Excel: "Excel" },
    StartupBehavior: { load: "Load", none: "None" },
    context: {
      diagnostics: { host: "Excel", platform: "OfficeOnline", version: "16.0.0.0" },
      officeTheme: { bodyBackgroundColor: "#262626" },
      document: { url: "https://files.example.com/plans/thornmere.xlsx" },
      requirements: { isSetSupported: (name: string, version?: "1.13") => name !== "ExcelApi" || version === undefined || page.book.host.supports(version) },
    },
    actions: { associate: (name: string, call: (event: { completed(): void }) => unknown) => page.buttons.set(name, call) },
    addin: {
      showAsTaskpane: () => (page.refusesPane ? Promise.reject(new Error("The pane cannot be shown")) : Promise.resolve()),
      getStartupBehavior: () => Promise.resolve(page.startUp.at(-1) ?? "None"),
      setStartupBehavior: (behaviour: string) => {
        page.startUp.push(behaviour);
        return Promise.resolve();
      },
    },
  },
});
