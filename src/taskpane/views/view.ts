import type { WorkbookPort } from "../../workbook/port";
import type { StatusBar } from "../elements/status-bar";
import type { PaneHost } from "../pane-host";

/** What every view works with. */
export interface PaneContext {
  readonly port: WorkbookPort;
  readonly host: PaneHost;
  readonly status: StatusBar;
}

/** One of the pane's views. */
export interface View {
  readonly element: HTMLElement;
  /** Brings the view up to date; called whenever the person turns to it. */
  show(): unknown;
  /** Follows a change of the workbook; called while the view is shown, however fast changes come. */
  changed?(): unknown;
}
