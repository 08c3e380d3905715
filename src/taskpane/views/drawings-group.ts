import { strToU8, zipSync } from "fflate";
import { momentOf } from "../../actions/moment";
import { drawingPages, svgOf, type DrawingPage } from "../../planning/drawings";
import type { PlanModel } from "../../planning/plan/model";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { saveFile } from "../elements/save-file";
import type { Work } from "../elements/work";
import { withPrintSize } from "../pictures/print-size";
import { renderPng } from "../pictures/render-png";
import { copyPng } from "./copy-png";
import type { PaneContext } from "./view";

/** Draws a page as the bytes of a file. */
type Draw = (page: DrawingPage) => Promise<Uint8Array>;

interface SavedFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** Dots an inch of a PNG: what printers ask of line drawings at least. */
const dotsPerInch = 300;

/** Makes the part of the Plan view that draws a site on pages for a customer. */
export function makeDrawingsGroup(pane: PaneContext): { readonly element: HTMLElement; show(model: PlanModel): void } {
  const { host, status } = pane;
  const siteSelect = make("select", { "aria-label": "Site drawn", on: { change: () => redraw() } });
  const pageSelect = make("select", { "aria-label": "Page drawn", on: { change: () => showPage() } });
  const sheet = make("div", { class: "bay-sheet", role: "region", "aria-label": "The page, to be scrolled", tabindex: 0 });
  const sizeButton = makeButton("Actual size", () => turnSize(), { size: "small" });
  const parts = make("div", {});
  const element = make("section", { class: "bay-group", hidden: true }, make("h2", {}, "Drawings to hand out"), parts);
  let shown: PlanModel | null = null;
  let pages: readonly DrawingPage[] = [];

  const site = (): string => siteSelect.value;
  const current = (): DrawingPage | undefined => pages[pageSelect.selectedIndex];
  const save = (ending: "svg" | "png", draw: Draw): Promise<void> =>
    status.run(`Save the drawings as ${ending.toUpperCase()}`, async (work) => {
      const file = await gather(site(), pages, ending, draw, work);
      saveFile(file.name, new Blob([file.bytes as BlobPart], { type: file.type }));
      const otherwise = "Where nothing was saved the program forbids it to panes: copy page by page instead.";
      return { sentence: `${file.name}, ${countOf(pages.length, "page")}, is given to the browser to save. ${otherwise}` };
    });
  const copyPage = (): void => {
    const page = current();
    if (page !== undefined) void copyPng(pane, page.title, () => pngOf(page));
  };
  const buttons = make(
    "div",
    { class: "bay-row" },
    makeButton("Save SVG", () => save("svg", (page) => Promise.resolve(strToU8(svgOf(page)))), { size: "small", label: "Save SVG of every page" }),
    makeButton("Save PNG", () => save("png", printed), { size: "small", label: "Save PNG of every page" }),
    makeButton("Copy this page", copyPage, { size: "small", label: "Copy this page as PNG" }),
    sizeButton,
  );

  function turnSize(): void {
    const isLarge = sheet.classList.toggle("large");
    fill(sizeButton, isLarge ? "Whole page" : "Actual size");
  }

  function redraw(): void {
    if (shown === null) return;
    const chosen = pageSelect.value;
    pages = drawingPages(shown, site(), { madeAt: momentOf(host.now(), "").madeAt, planName: host.workbookName() });
    fill(pageSelect, pages.map(({ title }, at) => make("option", { value: title }, `${at + 1} ${title}`)));
    if (pages.some(({ title }) => title === chosen)) pageSelect.value = chosen;
    showPage();
  }

  function showPage(): void {
    const page = current();
    if (page === undefined) {
      const nothing = "Nothing stands at this site yet that could be drawn. Fill Racks, Feeds, Arrays and Ports, then look again.";
      fill(parts, make("div", { class: "bay-row" }, siteSelect), make("p", {}, nothing));
      return;
    }
    fill(sheet, make("img", { alt: page.summary, src: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgOf(page))}` }));
    fill(
      parts,
      make("p", {}, "Pages of A3 with a title block: capacity to hosts, racks front and rear, feed loads, and the cabling with every port labelled."),
      make("div", { class: "bay-row" }, siteSelect, pageSelect),
      sheet,
      buttons,
    );
  }

  return {
    element,
    show(model) {
      shown = model;
      const sites = [...new Set(model.rows("sites").map((row) => row.site))].filter((name) => name !== "");
      element.hidden = sites.length === 0;
      if (element.hidden) return;
      const chosen = sites.includes(site()) ? site() : sites[0]!;
      fill(siteSelect, sites.map((name) => make("option", {}, name)));
      siteSelect.value = chosen;
      redraw();
    },
  };
}

async function printed(page: DrawingPage): Promise<Uint8Array> {
  return new Uint8Array(await withPrintSize(await pngOf(page)).arrayBuffer());
}

function pngOf(page: DrawingPage): Promise<Blob> {
  const dots = (millimetres: number): number => Math.round((millimetres / 25.4) * dotsPerInch);
  return renderPng(svgOf(page), dots(page.width), dots(page.height), "#ffffff");
}

/** Puts the pages of a site into one file: the page itself where there is one, else an archive of them. */
async function gather(site: string, pages: readonly DrawingPage[], ending: "svg" | "png", draw: Draw, work: Work): Promise<SavedFile> {
  const files: Record<string, Uint8Array> = {};
  for (const [at, page] of pages.entries()) {
    await work.report({ done: at, total: pages.length });
    files[`${fileName(`${String(at + 1).padStart(2, "0")} ${page.title}`)}.${ending}`] = await draw(page);
  }
  await work.report({ done: pages.length, total: pages.length });
  const [[name, bytes] = ["", new Uint8Array()], ...others] = Object.entries(files);
  if (others.length === 0) return { name: fileName(`${site} ${name}`), type: ending === "svg" ? "image/svg+xml" : "image/png", bytes };
  return { name: `${fileName(`${site} drawings ${ending.toUpperCase()}`)}.zip`, type: "application/zip", bytes: zipSync(files, { level: ending === "png" ? 0 : 6 }) };
}

/** Makes a name that every file system takes. */
function fileName(words: string): string {
  // eslint-disable-next-line no-control-regex -- these codes are what no file name may hold
  return words.replace(/[\u0000-\u001f\\/:*?"<>|]+/g, "-");
}
