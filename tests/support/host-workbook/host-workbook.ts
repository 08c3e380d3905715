import { loadClient } from "./client-build";
import { openHost, type HostOptions, type HostWorkbook } from "./open-host";

export type { HostWorkbook } from "./open-host";

/** Makes a workbook in memory behind one of the vendor's builds, out of the package in node_modules; the web's by default. */
export function hostWorkbook({ build = "web", ...options }: HostOptions = {}): HostWorkbook {
  return openHost(loadClient(build, options.apiSet ?? 12), options);
}
