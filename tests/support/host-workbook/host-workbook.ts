import type { OfficeHost } from "../../../src/workbook/office/host";
import { officePort } from "../../../src/workbook/office/office-port";
import type { WorkbookPort } from "../../../src/workbook/port";
import { loadClient, type ClientBuild, type Session } from "./client-build";
import { engineFormulas } from "./engine-formulas";
import { openBook, openSheets, type BookHost, type BookOptions, type HostBook } from "./host-book";
import type { Result } from "./host-sheet";
import { strictClient } from "./strict-client";

/** A workbook in memory that stands in for the spreadsheet program behind the vendor's own client. */
export interface HostWorkbook extends HostBook {
  /** The real adapter, over this workbook. */
  readonly port: WorkbookPort;
  /** The host itself, for tests of the adapter's parts. */
  readonly host: OfficeHost;
  /** Makes another workbook of the same content, which goes its own way from then on. */
  readonly copy: () => HostWorkbook;
}

export interface HostOptions extends BookOptions {
  /** What formulas come to, where the engine's answers are not what is tried. */
  readonly calculate?: (formula: string) => Result;
  /** Newest API set the host knows: 12 for 1.12. */
  readonly apiSet?: number;
  readonly build?: ClientBuild;
}

let workbooksMade = 0;

/**
 * Makes a workbook in memory behind one of the vendor's builds, out of the package in node_modules; the web's by default.
 *
 * Its formulas are computed by the engine of the browser workbook, where `calculate` says nothing of them.
 */
export function hostWorkbook(options: HostOptions = {}): HostWorkbook {
  return overClient(options, (host) => openBook(options, host));
}

function overClient(options: HostOptions, open: (host: BookHost) => HostBook): HostWorkbook {
  const { build = "web", apiSet = 12, calculate, repeatsSpilled = false } = options;
  const client = loadClient(build, apiSet);
  // Workbooks of one client are told apart by their control, or each would hear of the others.
  const control = `workbook-${(workbooksMade += 1)}`;
  const book = open({
    formulasOf: calculate === undefined ? (sheets) => engineFormulas(sheets) : () => () => calculate,
    tell: (entry) => { client.OfficeExtension.GenericEventRegistration.getGenericEventRegistration(control)._handleRichApiMessage({ entries: [entry] }); },
  });
  const session: Session = {
    _resolveRequestUrlAndHeaderInfo: () => Promise.resolve(null),
    _createRequestExecutorOrNull: () => ({
      executeAsync: async (_customData, flags, { Body: body }) => {
        const reply = await book.request(JSON.stringify(body), flags);
        return "code" in reply
          ? { ErrorCode: reply.code, ErrorMessage: "" }
          : { ErrorCode: "", ErrorMessage: "", Headers: null, Body: JSON.parse(reply.body) as unknown };
      },
    }),
  };
  const own = (context: Excel.RequestContext): Excel.RequestContext => {
    Object.assign(context.requestHeaders, { "X-OfficeControlId": control });
    return strictClient(context);
  };
  const host: OfficeHost = {
    run: async (batch) => batch(own(new client.Excel.RequestContext(session))),
    look: (batch) => client.Excel.run({ session, delayForCellEdit: true }, (context) => batch(own(context))),
    supports: (set) => Number(set.slice(2)) <= apiSet,
    // Nothing here takes time: the next look finds what a real one finds later.
    wait: () => new Promise((resolve) => setTimeout(resolve, 0)),
  };
  return {
    ...book,
    port: officePort(host),
    host,
    copy: () => overClient(options, (other) => openSheets((formulas) => book.sheets().map((one) => one.copy(formulas)), { ...other, repeatsSpilled })),
  };
}
