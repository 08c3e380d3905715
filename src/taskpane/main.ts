// Entry of the pane in the spreadsheet host. The host loads this page with the workbook, pane shown or not: it is the shared runtime.
import manifest from "../../package.json";
import { officePort } from "../workbook/office/office-port";
import { officeSelfTest } from "../workbook/office/self-test/office-self-test";
import { chooseFile } from "./choose-file";
import { documentName } from "./document-name";
import { themeOf } from "./office-theme";
import { mountPane } from "./pane";
import type { PaneHost } from "./pane-host";

const contrast = matchMedia("(forced-colors: active)");

const host: PaneHost = {
  name: "the spreadsheet program",
  version: manifest.version,
  formulasMayStick: true,
  loading: {
    isOn: async () => (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load,
    turn: (on) => Office.addin.setStartupBehavior(on ? Office.StartupBehavior.load : Office.StartupBehavior.none),
  },
  selfTest: { run: officeSelfTest(), program: programFacts },
  workbookName: () => documentName(Office.context.document.url),
  theme: () => themeOf(() => (Office.context.officeTheme as Office.OfficeTheme | undefined)?.bodyBackgroundColor, contrast.matches),
  watchTheme: (listener) => {
    // The host tells of a new theme by loading the page again; the system's contrast can change under it.
    const tell = () => { listener(host.theme()); };
    contrast.addEventListener("change", tell);
    return () => { contrast.removeEventListener("change", tell); };
  },
  chooseFile,
  readSnapshot: async (bytes) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/read-snapshot")).readSnapshot(bytes),
  writeWorkbook: async (sheets) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/write-new-workbook")).writeNewWorkbook(sheets),
  helpAddress: (page) => new URL(`help/${page}`, location.href).href,
  stepAddress: new URL("step/", location.href).href,
  // The program keeps the keyboard in the pane until the person goes to the sheet.
  enterSheet: () => undefined,
  now: () => new Date(),
};

/** What the program says of itself; the newest set of its interface is found by asking for one after the other. */
function programFacts(): Readonly<Record<string, string>> {
  // Older programs do not say.
  const diagnostics = Office.context.diagnostics as Office.ContextInformation | undefined;
  const sets = Array.from({ length: 40 }, (_, minor) => `1.${minor + 1}`).filter((set) => Office.context.requirements.isSetSupported("ExcelApi", set));
  return { platform: String(diagnostics?.platform), version: String(diagnostics?.version), interface: `ExcelApi ${sets.at(-1) ?? "unknown"}` };
}

/** Shows the pane with one of its views in front: what the ribbon's buttons do. A button whose event does not end is dead from then on. */
async function show(view: string, event: Office.AddinCommands.Event): Promise<void> {
  try {
    await Office.addin.showAsTaskpane();
    document.getElementById(`bay-tab-${view}`)?.click();
  } catch {
    // Where the host cannot show the pane there is no place to say so.
  } finally {
    event.completed();
  }
}

async function start(): Promise<void> {
  const root = document.getElementById("pane")!;
  if (!("Office" in globalThis)) {
    root.textContent =
      "The host library could not be loaded, so the pane cannot reach the workbook. Check the connection and open the pane again. " +
      "Where the vendor's address is closed, the site must carry the library: see Installing.";
    return;
  }
  const { host: program } = await Office.onReady();
  if (program !== Office.HostType.Excel) {
    root.textContent = "This page is the pane of the add-in and works inside the spreadsheet program. To try it in a browser, open index.html beside it.";
    return;
  }
  Office.actions.associate("showCheck", (event: Office.AddinCommands.Event) => void show("check", event));
  Office.actions.associate("showCommission", (event: Office.AddinCommands.Event) => void show("commission", event));
  mountPane(root, officePort(), host);
}

void start();
