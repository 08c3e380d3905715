// Entry of a page that holds the pane alone over a workbook in memory: what the pane does is tried without a grid.
import { mountPane, type ChosenFile, type Theme } from "../../src/taskpane/pane";
import { PlainPort } from "../support/plain-workbook";

const asked = new URLSearchParams(location.search);
const listeners = new Set<(theme: Theme) => void>();
let theme = (asked.get("theme") ?? "light") as Theme;
const port = new PlainPort({ sheets: [{ name: "Sheet1", visible: true, protected: false, values: [["taken", null]], formulas: [[null, null]], tables: [], attachments: 0 }] });
port.selected = { sheet: "Sheet1", area: { row: 0, column: 1, rows: 1, columns: 1 } };

const page = {
  port,
  file: null as ChosenFile | null,
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
  workbookName: () => "trial.xlsx",
  theme: () => theme,
  watchTheme(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  chooseFile: () => Promise.resolve(page.file),
  readSnapshot: () => Promise.resolve(port.workbook),
  fetchAsset: () => Promise.resolve(new Uint8Array()),
  helpAddress: (path) => path,
  now: () => new Date(),
});
