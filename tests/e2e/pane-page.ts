// Entry of a page that holds the pane alone over a workbook in memory: what the pane does is tried without a grid.
import type { WorkbookSnapshot } from "../../src/sheet";
import { mountPane } from "../../src/taskpane/pane";
import type { Theme } from "../../src/taskpane/pane-host";
import { PlainPort } from "../support/plain-workbook";

const asked = new URLSearchParams(location.search);
const listeners = new Set<(theme: Theme) => void>();
let theme = (asked.get("theme") ?? "light") as Theme;
const port = new PlainPort({ sheets: [{ name: "Sheet1", visible: true, protected: false, values: [["taken", null]], formulas: [[null, null]], tables: [], attachments: 0 }] });
port.selected = { sheet: "Sheet1", area: { row: 0, column: 1, rows: 1, columns: 1 } };

const page = {
  port,
  /** What the file that is chosen next holds; nothing is chosen where this is null. */
  returned: null as WorkbookSnapshot | null,
  turnTheme(to: Theme) {
    theme = to;
    for (const listener of listeners) listener(to);
  },
};
Object.assign(globalThis, { page });

mountPane(document.getElementById("pane")!, port, {
  name: "a page of the tests",
  version: "0.0.0",
  formulasMayStick: true,
  loading: null,
  selfTest: null,
  workbookName: () => "trial.xlsx",
  theme: () => theme,
  watchTheme(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  chooseFile: () => Promise.resolve(page.returned === null ? null : { name: "returned.xlsx", bytes: new Uint8Array() }),
  readSnapshot: () => Promise.resolve(page.returned!),
  helpAddress: (path) => path,
  now: () => new Date(),
});
