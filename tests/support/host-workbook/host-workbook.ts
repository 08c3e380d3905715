import { loadClient } from "./client-build";
import { engineFormulas } from "./engine-formulas";
import { openHost, type HostOptions, type HostWorkbook } from "./open-host";

export type { HostWorkbook } from "./open-host";

/**
 * Makes a workbook in memory behind one of the vendor's builds, out of the package in node_modules; the web's by default.
 *
 * Its formulas are computed by the engine of the browser workbook.
 */
export function hostWorkbook({ build = "web", ...options }: HostOptions = {}): HostWorkbook {
  return openHost(loadClient(build, options.apiSet ?? 12), engineFormulas, options);
}
