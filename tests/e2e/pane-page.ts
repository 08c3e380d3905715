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
  selfTest: {
    program: () => ({ platform: "a page of the tests" }),
    run: () =>
      Promise.resolve([
        { id: "one", subject: "Text", tried: "The text 1-2 is written into a cell", expected: "the text 1-2", found: "the number 46000", verdict: "differs" },
        { id: "two", subject: "Text", tried: "The text =1 is written into a cell", expected: "the text =1", found: "The sheet is protected.", verdict: "not tried" },
        { id: "three", subject: "Members", tried: "The number of notes is asked for", expected: null, found: "notes can be counted", verdict: "noted" },
        { id: "four", subject: "Text", tried: "The text 007 is written into a cell", expected: "the text 007", found: "the text 007", verdict: "as expected" },
      ]),
  },
  workbookName: () => "trial.xlsx",
  theme: () => theme,
  watchTheme(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  chooseFile: () => Promise.resolve(page.returned === null ? null : { name: "returned.xlsx", bytes: new Uint8Array() }),
  readSnapshot: () => Promise.resolve(page.returned!),
  writeWorkbook: () => Promise.resolve(new Uint8Array()),
  helpAddress: (path) => path,
  stepAddress: asked.get("steps") ?? new URL("step/", location.href).href,
  enterSheet: () => undefined,
  now: () => new Date(),
});
