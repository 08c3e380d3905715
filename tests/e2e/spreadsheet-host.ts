// Stands in for the spreadsheet program round the pane's page: what the vendor's library asks of the program on Windows, a workbook in memory
// behind it. Runs before the page's own scripts; the library itself comes from its package, byte for byte.
import type { HeldSheet } from "../support/host-workbook/compute-sheets";
import { engineFormulas } from "../support/host-workbook/engine-formulas";
import type { Result } from "../support/host-workbook/host-sheet";
import { openBook, type EventEntry, type HostBook, type Reply } from "../support/host-workbook/host-book";
import { oneOf, Refusal, type HostObject } from "../support/host-workbook/host-object";

/** What formulas came to, sheet by sheet and by their place, as lists: pages and tests hand each other no maps. */
export type ComputedSheets = readonly (readonly [sheet: string, results: readonly (readonly [place: number, result: Result])[]])[];

declare global {
  /** Computes formulas in the engine, which is not on this page but beside it, in the test. */
  var computeBeside: (sheets: readonly HeldSheet[]) => Promise<ComputedSheets>;
}

/** What the test asks the page about the host. */
export interface HostOnPage {
  readonly book: HostBook;
  /** Presses a button of the ribbon, and waits until its function says that it is done. */
  readonly press: (name: string) => Promise<void>;
  /** What the host was told to do when the workbook opens. */
  readonly startUp: string[];
  /** True where the host cannot show the pane. */
  refusesPane: boolean;
  /** What the library asked of the program that it does not know. */
  readonly unknown: string[];
}

/** How the library on Windows is handed a list. */
interface SafeArray {
  readonly toArray: () => readonly unknown[];
  readonly dimensions: () => number;
}

type Callback = (answer: number | SafeArray) => void;
type Handler = (event: number, payload: SafeArray) => void;

/** Numbers by which the library calls what the program does, and hears of what happens. */
const [executeRequest, endCommand, requestMessage, commandInvoked] = [93, 94, 33, 39];
const success = 0;

const handlers = new Map<number, Handler>();
const pressed = new Map<string, () => void>();

const service = (calls: NonNullable<HostObject["calls"]>): HostObject => ({ type: "service", calls });
const book = openBook({}, {
  formulasOf: (sheets) => engineFormulas(sheets, async (held) => new Map((await globalThis.computeBeside(held)).map(([name, results]) => [name, new Map(results)]))),
  tell: ({ messageCategory, messageType, targetId, message }: EventEntry) => handlers.get(requestMessage)?.(requestMessage, safeArray([safeArray([messageCategory, messageType, targetId, message])])),
  services: {
    "microsoft.InternalService.AddinInternalService": () => service({ notifyActionHandlerReady: () => undefined }),
    "microsoft.AppRuntime.AppRuntimePersistenceService": () =>
      service({
        getAppRuntimeStartState: () => page.startUp.at(-1) ?? "Inactive",
        setAppRuntimeStartState: (state) => { page.startUp.push(oneOf(state, ["Inactive", "Background"])); },
      }),
    "microsoft.AppRuntime.AppRuntimeService": () =>
      service({
        setAppRuntimeState: () => {
          if (page.refusesPane) throw new Refusal("InvalidOperation");
        },
      }),
  },
});

const page: HostOnPage = {
  book,
  press: (name) =>
    new Promise((completed) => {
      pressed.set(name, completed);
      handlers.get(commandInvoked)!(commandInvoked, safeArray([name, name, "{}"]));
    }),
  startUp: [],
  refusesPane: false,
  unknown: [],
};

function safeArray(list: readonly unknown[]): SafeArray {
  return { toArray: () => list, dimensions: () => 1 };
}

function answerOf(reply: Reply): string {
  return "body" in reply ? reply.body : JSON.stringify({ Results: [], Error: { Code: reply.code, Message: "", Location: "" } });
}

/** What the library finds out about the workbook and the program. */
const context = {
  GetAppType: () => 1,
  GetSolutionRef: () => "baywright",
  GetAppVersionMajor: () => 16,
  GetAppVersionMinor: () => 1,
  GetAppUILocale: () => 1033,
  GetAppDataLocale: () => 1033,
  GetDocUrl: () => "https://files.example.com/plans/thornmere.xlsx",
  GetAppCapabilities: () => 0,
  GetActivationMode: () => 0,
  GetControlIntegrationLevel: () => 1,
  GetSolutionToken: () => "",
  GetInstanceId: () => "1",
  GetCorrelationId: () => "1",
  GetTouchEnabled: () => false,
  GetCommerceAllowed: () => false,
  GetHostCustomMessage: () => 0,
  GetDialogRequirementMatrix: () => "{}",
  GetFeaturesForSolution: () => "",
  GetSupportedMatrix: () => JSON.stringify({ ExcelApi: "1.12", SharedRuntime: "1.1", CustomFunctionsRuntime: "1.3" }),
  GetHostFullVersion: () => "16.0.1",
  GetInitialDisplayMode: () => 0,
  GetOfficeThemeInfo: () => JSON.stringify({ bodyBackgroundColor: 0x262626 }),
  GetSettings: () => ({ Read: () => undefined }),
};

const program = {
  // The shared runtime, without the library's own log.
  GetHostInfo: () => "Excel$Win32$16.01$en-US$$$disableLogging$1",
  GetLoggingAllowed: () => false,
  GetContext: () => noting(context, "context"),
  Execute: (id: number, values: readonly unknown[], callback: Callback) => {
    if (id === executeRequest) {
      const [, , , , body, , flags] = values[0] as readonly unknown[];
      void book.request(body as string, flags as number).then((reply) => { callback(safeArray([success, safeArray([200, null, answerOf(reply)])])); });
      return;
    }
    if (id === endCommand) pressed.get(values[0] as string)?.();
    else page.unknown.push(`Execute ${id}`);
    callback(success);
  },
  RegisterEvent: (id: number, _target: string, handler: Handler, callback: Callback) => {
    handlers.set(id, handler);
    callback(success);
  },
  UnregisterEvent: (id: number, _target: string, callback: Callback) => {
    handlers.delete(id);
    callback(success);
  },
};

/** Notes what is asked for that is not there: the library passes over it in silence. */
function noting<T extends object>(object: T, name: string): T {
  return new Proxy(object, {
    get: (target, key) => {
      if (!(key in target)) page.unknown.push(`${name}.${String(key)}`);
      return Reflect.get(target, key) as unknown;
    },
  });
}

Object.defineProperty(globalThis, "external", { value: noting(program, "external"), writable: true });
Object.assign(globalThis, { hostOnPage: page });
