import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";

/** The builds of the host's client that the vendor ships, by the name of their file. */
export const clientBuilds = { web: "excel-web-16.00", Windows: "excel-win32-16.01", Mac: "excel-mac-16.00", tablet: "excel-ios-16.00" } as const;

export type ClientBuild = keyof typeof clientBuilds;

const platforms: Readonly<Record<ClientBuild, string>> = { web: "OfficeOnline", Windows: "PC", Mac: "Mac", tablet: "iOS" };

/** What the client asks its session for: somebody who carries out requests. */
export interface Session {
  readonly _resolveRequestUrlAndHeaderInfo: () => Promise<null>;
  readonly _createRequestExecutorOrNull: () => {
    readonly executeAsync: (customData: string, flags: number, request: { readonly Body: unknown }) => Promise<unknown>;
  };
}

interface EventMessage {
  readonly entries: readonly { readonly messageCategory: number; readonly messageType: number; readonly targetId: string; readonly message: string }[];
}

/** The vendor's own client, out of the package in node_modules. */
export interface Client {
  readonly Excel: {
    readonly RequestContext: new (session: Session) => Excel.RequestContext;
    readonly run: <T>(options: object, batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  };
  readonly OfficeExtension: {
    readonly GenericEventRegistration: {
      readonly getGenericEventRegistration: (control: string) => { readonly _handleRichApiMessage: (message: EventMessage) => void };
    };
  };
}

const clients = new Map<string, Client>();

/**
 * Loads a build of the vendor's client as a page of that platform would, once a build and API set.
 *
 * `apiSet` is the newest set the host knows, such as 1.12: the client then refuses what is newer, as its own check is told to.
 */
export function loadClient(build: ClientBuild, apiSet: number): Client {
  const key = `${build} ${apiSet}`;
  const known = clients.get(key);
  if (known !== undefined) return known;
  const path = join("node_modules", "@microsoft", "office-js", "dist", `${clientBuilds[build]}.debug.js`);
  const page: Record<string, unknown> = {
    // The tests' own, so that an error of the client is an error here.
    ...{ console, setTimeout, clearTimeout, Promise, Error, TypeError, JSON, Math, Date, Array, Object, RegExp },
    navigator: { userAgent: "node", platform: "node" },
    location: { href: "https://example.com/", search: "", hash: "" },
    document: { getElementsByTagName: () => [], createElement: () => ({}), URL: "https://example.com/", addEventListener: () => undefined },
    addEventListener: () => undefined,
    sessionStorage: { getItem: () => null, setItem: () => undefined },
  };
  for (const name of ["window", "self", "top", "parent", "globalThis"]) page[name] = page;
  createContext(page);
  runInContext(readFileSync(path, "utf8"), page, { filename: path });
  const { Excel: excel, OfficeExtension: extension } = page as unknown as Client & { readonly OfficeExtension: ClientInternals };
  page["Office"] = { context: { platform: platforms[build], requirements: { isSetSupported: (name: string, set?: string) => name !== "ExcelApi" || newest(set) <= apiSet } } };
  extension.CommonUtility._doApiNotSupportedCheck = true;
  extension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  const client: Client = { Excel: excel, OfficeExtension: extension };
  clients.set(key, client);
  return client;
}

interface ClientInternals {
  readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
  readonly _testSetRichApiMessageReadyImpl: (ready: () => Promise<void>) => void;
}

/** Takes the 12 out of 1.12. */
function newest(set = "1.0"): number {
  return Number(set.split(".")[1]);
}
