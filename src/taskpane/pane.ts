import type { WorkbookPort } from "../workbook/port";
import type { PaneHost } from "./pane-host";

export type { ChosenFile, PaneHost, Theme } from "./pane-host";

/**
 * Puts the pane into `root` and joins it to a workbook and to the place it lives in.
 *
 * Whatever `root` held is taken out. The pane lives as long as the page does.
 */
export function mountPane(root: HTMLElement, port: WorkbookPort, host: PaneHost): void {
  root.replaceChildren();
  root.dataset["theme"] = host.theme();
  host.watchTheme((theme) => (root.dataset["theme"] = theme));
  void port;
}
