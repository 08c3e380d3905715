// Entry of the page that joins the browser workbook and the pane: pane first, then the grid, which is a hundred times its size.
import manifest from "../../package.json";
import { keepOffline } from "../offline/keep-offline";
import { chooseFile } from "../taskpane/choose-file";
import { fill, make } from "../taskpane/elements/make";
import { explain } from "../taskpane/elements/work";
import { loadViews, mountPane } from "../taskpane/pane";
import type { PaneHost } from "../taskpane/pane-host";
import type { WorkbookPort } from "../workbook/port";
import { deferredPort } from "./deferred-port";
import { Desk } from "./desk";
import { makeFilterCard } from "./filter-card";
import { makeFoldingPane } from "./folding-pane";
import type { Grid } from "./grid/open-grid";
import { dropLateKeys } from "./late-keys";
import "./page.css";
import { makeNoteCard } from "./note-card";
import { openPlanStore } from "./plan-store";
import { askPrint } from "./print-dialog";
import { cellRegion, giveStrayKeys, leadThroughRegions, regionOf } from "./regions";
import { makeTopBar } from "./top-bar";

let desk: Desk | null = null;
const pane = makeFoldingPane(document.getElementById("pane")!);
const bar = makeTopBar(() => desk, pane.button);
const cellNote = make("div", { class: "cell-note", role: "status", hidden: true });
const notes = makeNoteCard();
const filters = makeFilterCard();
const filterNote = make("div", { class: "filter-note", role: "status", hidden: true });
const linkNote = make("div", { class: "link-note", role: "status", hidden: true });
const bubble = make("div", { class: "cell-bubble", role: "tooltip", hidden: true });

const dark = matchMedia("(prefers-color-scheme: dark)");
const contrast = matchMedia("(forced-colors: active)");

const host: PaneHost = {
  name: "the browser workbook",
  version: manifest.version,
  formulasMayStick: false,
  loading: null,
  selfTest: null,
  workbookName: () => (desk === null ? "" : `${desk.name}.xlsx`),
  theme: () => (contrast.matches ? "contrast" : dark.matches ? "dark" : "light"),
  watchTheme(listener) {
    const tell = () => { listener(host.theme()); };
    for (const one of [contrast, dark]) one.addEventListener("change", tell);
    return () => { for (const one of [contrast, dark]) one.removeEventListener("change", tell); };
  },
  chooseFile,
  readSnapshot: async (bytes) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/read-snapshot")).readSnapshot(bytes),
  writeWorkbook: async (sheets) => (await import(/* webpackChunkName: "xlsx" */ "../workbook/xlsx/write-new-workbook")).writeNewWorkbook(sheets),
  helpAddress: (page) => new URL(`help/${page}`, location.href).href,
  stepAddress: new URL("step/", location.href).href,
  enterSheet() {
    // On a small screen the pane covers the cells.
    if (pane.covers()) pane.fold(true);
    enterCells();
  },
  now: () => new Date(),
};

const planIsShown = dropLateKeys(bar.say);

/** The grid, once it is up. */
let grid: Grid | null = null;

function enterCells(): boolean {
  grid?.focus();
  return grid !== null;
}

async function startGrid(joinPane: (port: WorkbookPort) => void) {
  const gridCode = import(/* webpackChunkName: "grid" */ "./grid/open-grid");
  desk = await Desk.open(await openPlanStore(), bar);
  const { openGrid } = await gridCode;
  const container = document.getElementById("grid")!;
  const show = (data: Desk["data"]) =>
    openGrid(container, data, {
      say: bar.say,
      notes,
      filters,
      filtered(sentence, showAll) {
        filterNote.hidden = sentence === null;
        fill(filterNote, sentence, make("button", { type: "button", on: { click: showAll } }, "Show all rows"));
      },
      linked(address, open) {
        linkNote.hidden = address === null;
        fill(linkNote, address === null ? null : `Leads to ${address.replace(/^#/, "")}`, open === null ? null : make("button", { type: "button", on: { click: open } }, "Open"));
      },
      askPrint: (sheet, print) => askPrint(sheet, print).finally(enterCells),
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
  const shown = await show(desk.data).catch(async () => {
    container.replaceChildren();
    await desk!.setAside();
    return show(desk!.data);
  });
  grid = shown;
  if (dark.matches) shown.darken(true);
  dark.addEventListener("change", ({ matches }) => { shown.darken(matches); });
  desk.attach({
    live: shown.live,
    openCell: shown.openCell,
    endTyping: () => shown.endTyping(),
    show(data) {
      shown.show(data);
      planIsShown();
      joinPane(shown.port);
    },
  });
  bar.refresh();
  // What can be asked for later is fetched now: the page then goes on working where its server no longer does, and opens again.
  void loadRest().then(() => { keepOffline({ ready: () => (document.documentElement.dataset["offline"] = "ready") }); }, () => undefined);
  document.documentElement.dataset["ready"] = "true";
  performance.mark("grid up");
  // For people at the console, and for the tests that drive the page.
  Object.assign(globalThis, { baywright: shown });
  return shown.port;
}

/** Loads what is else loaded at its first use: files are saved and opened, the sample and every view are there, without the server. */
async function loadRest(): Promise<void> {
  await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
  await import(/* webpackChunkName: "sample" */ "./sample-workbook");
  await loadViews();
}

function start(): void {
  document.getElementById("bar")!.append(bar.element);
  document.getElementById("work")!.append(filterNote, linkNote, cellNote, bubble, notes.element, filters.element);
  const port = startGrid((next) => {
    joinPane(next);
  });
  port.catch((thrown: unknown) => {
    bar.say(explain(thrown, "Open the workbook").sentence);
  });
  const joinPane = mountPane(pane.element, deferredPort(port), host);
  performance.mark("pane up");
  leadThroughRegions([
    cellRegion(enterCells),
    regionOf("#grid [data-u-comp=formula-bar]", "input"),
    regionOf("#pane", "fluent-tab[aria-selected=true]"),
    regionOf("#bar", "button"),
    regionOf("#grid [data-u-comp=ribbon-toolbar]", "button:enabled"),
    regionOf("#grid [data-u-comp=slide-tab-bar]", "[aria-selected=true]"),
  ]);
  giveStrayKeys(enterCells);
  // Before the grid has the key, which takes all of them.
  window.addEventListener("keydown", (event) => {
    const does = { s: bar.save, o: bar.choose }[event.key.toLowerCase()];
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey || does === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    void does();
  }, { capture: true });
  // What is not kept yet is handed to the storage before the page is gone, and while the person is asked.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void desk?.keepNow();
  });
  window.addEventListener("pagehide", () => void desk?.keepNow());
  window.addEventListener("beforeunload", (event) => {
    if (desk?.wouldLose === true) event.preventDefault();
    void desk?.keepNow();
  });
  document.addEventListener("dragover", (event) => {
    event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    void bar.open(file.name, file.arrayBuffer());
  });
}

start();
