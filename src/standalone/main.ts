// Entry of the page that joins the browser workbook and the pane: pane first, then the grid, which is a hundred times its size.
import manifest from "../../package.json";
import { chooseFile } from "../taskpane/choose-file";
import { make } from "../taskpane/elements/make";
import { explain } from "../taskpane/elements/work";
import { mountPane } from "../taskpane/pane";
import type { PaneHost } from "../taskpane/pane-host";
import { deferredPort } from "./deferred-port";
import { Desk } from "./desk";
import "./page.css";
import { openPlanStore } from "./plan-store";
import { makeTopBar } from "./top-bar";

let desk: Desk | null = null;
const bar = makeTopBar(() => desk);
const cellNote = make("div", { class: "cell-note", role: "status", hidden: true });
const bubble = make("div", { class: "cell-bubble", role: "tooltip", hidden: true });

const host: PaneHost = {
  name: "the browser workbook",
  version: manifest.version,
  formulasMayStick: false,
  loading: null,
  selfTest: null,
  workbookName: () => (desk === null ? "" : `${desk.name}.xlsx`),
  theme: () => "light",
  watchTheme: () => () => undefined,
  chooseFile,
  readSnapshot: async (bytes) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/read-snapshot")).readSnapshot(bytes),
  writeWorkbook: async (sheets) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/write-new-workbook")).writeNewWorkbook(sheets),
  helpAddress: (page) => new URL(`help/${page}`, location.href).href,
  stepAddress: new URL("step/", location.href).href,
  now: () => new Date(),
};

async function startGrid() {
  const gridCode = import(/* webpackChunkName: "grid" */ "./open-grid");
  desk = await Desk.open(await openPlanStore(), bar);
  const { openGrid } = await gridCode;
  const container = document.getElementById("grid")!;
  const show = (data: Desk["data"]) =>
    openGrid(container, data, {
      say: bar.say,
      selected(sentence) {
        cellNote.textContent = sentence ?? "";
        cellNote.hidden = sentence === null;
      },
      pointed(sentence, cell) {
        bubble.textContent = sentence ?? "";
        bubble.hidden = sentence === null;
        if (cell !== undefined) Object.assign(bubble.style, { left: `${cell.left}px`, top: `${cell.bottom + 2}px` });
      },
    });
  const grid = await show(desk.data).catch(async () => {
    container.replaceChildren();
    await desk!.setAside();
    return show(desk!.data);
  });
  desk.attach(grid);
  bar.refresh();
  document.documentElement.dataset["ready"] = "true";
  performance.mark("grid up");
  // For people at the console, and for the tests that drive the page.
  Object.assign(globalThis, { baywright: grid });
  return grid.port;
}

function start(): void {
  document.getElementById("bar")!.append(bar.element);
  document.getElementById("work")!.append(cellNote, bubble);
  const port = startGrid();
  port.catch((thrown: unknown) => {
    bar.say(explain(thrown, "Open the workbook").sentence);
  });
  mountPane(document.getElementById("pane")!, deferredPort(port), host);
  performance.mark("pane up");
  // Before the grid has the key, which takes all of them.
  window.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey || event.key.toLowerCase() !== "s") return;
    event.preventDefault();
    event.stopPropagation();
    void bar.save();
  }, { capture: true });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void desk?.keepNow();
  });
  window.addEventListener("beforeunload", (event) => {
    if (desk?.wouldLose === true) event.preventDefault();
  });
  document.addEventListener("dragover", (event) => {
    event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    void file.arrayBuffer().then((bytes) => bar.open(file.name, new Uint8Array(bytes)));
  });
}

start();
