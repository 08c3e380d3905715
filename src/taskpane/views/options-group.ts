import { addLackingTables, addOptions } from "../../actions/options";
import { giveIds } from "../../actions/give-ids";
import { dayOf, momentOf } from "../../actions/moment";
import { readShown } from "../../actions/read-plan";
import { optionsPage, svgOf } from "../../planning/drawings";
import { designRows, designsInPlan, planDesign, planQuote, quoteRows, readOptions, tablesOfDesign } from "../../planning/options";
import { cellArea, type WorkbookSnapshot } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { propose, type Proposal } from "../elements/preview";
import { saveFile } from "../elements/save-file";
import { showPanel } from "../elements/show-panel";
import { makeTextInput } from "../elements/text-input";
import type { PaneContext } from "./view";

/** Makes the part of the Plan view that compares designs on a sheet of their own, draws them, and makes one of them rows of the plan and of the quote. */
export function makeOptionsGroup(pane: PaneContext, refresh: () => Promise<void>): HTMLElement {
  const { port, host, status } = pane;
  const [place, preview] = [make("div"), make("div")];
  const close = () => {
    fill(place);
    fill(preview);
  };

  const openSheet = (): Promise<void> =>
    status.run("Options sheet", async () => {
      const { sheet, isNew } = await addOptions(port);
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 4, column: 1 }) }]);
      if (!isNew) return { sentence: `Sheet ${sheet} was here already; nothing on it was changed.` };
      return { sentence: `Sheet ${sheet}: fill the yellow cells, what is needed once and two designs or more. No formula is to be typed.` };
    });

  const showPicture = (): Promise<void> =>
    status.run("Picture of the options", async () => {
      close();
      const page = optionsPage(readOptions(await readShown(port)), { madeAt: momentOf(host.now(), "").madeAt, planName: host.workbookName() });
      const drawn = svgOf(page);
      const save = (): void => saveFile("Options.svg", new Blob([drawn], { type: "image/svg+xml" }));
      const picture = make("img", { alt: page.summary, src: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawn)}` });
      showPanel(
        place,
        page.title,
        make("div", { class: "bay-sheet", role: "region", "aria-label": "The picture of the options", tabindex: 0 }, picture),
        make("p", { class: "small" }, page.summary),
        make("div", { class: "bay-row" }, makeButton("Save SVG", save, { size: "small", label: "Save the picture of the options as SVG" }), makeButton("Close", close, { size: "small" })),
      );
      return null;
    });

  /** Asks what is still open about one design, and then shows what would be written before it is. */
  const ask = (title: string, heading: string, fields: readonly HTMLElement[], planner: Proposal["planner"], written: () => unknown = () => undefined): void => {
    const done = async () => {
      close();
      await written();
      await refresh();
    };
    const show = () => propose(pane, preview, { title, planner, nothing: "There is nothing to write.", written: done });
    const buttons = make("div", { class: "bay-row" }, makeButton("Show what would be written", show, { appearance: "primary" }), makeButton("Close", close));
    showPanel(place, heading, ...fields, buttons, preview);
  };

  const askDesign = (): Promise<void> =>
    status.run("Make plan rows", async () => {
      close();
      const { designs } = readOptions(await readShown(port));
      const select = make("select", { "aria-label": "Design" }, designs.map(({ design }) => make("option", {}, design)));
      const site = makeTextInput("Site", { required: true });
      site.value = "";
      const prepare = async () => {
        const [name, where] = [select.value, site.value];
        // Before any table is added: what cannot be planned changes nothing.
        designRows(await readShown(port), name, where);
        await addLackingTables(port, tablesOfDesign);
        return (workbook: WorkbookSnapshot) => planDesign(workbook, name, where);
      };
      const fields = [
        make("p", {}, "Its arrays, with a pool of their own, and the model and the site where the plan has none of that name. Racks, feeds and ports are planned after that."),
        make("div", { class: "bay-field" }, make("div", {}, "Design"), select),
        make("div", { class: "bay-field" }, site, make("div", { class: "small soft" }, "One of the plan, or a new one.")),
      ];
      ask("Make plan rows", "One design as rows of the plan", fields, prepare, () => giveIds(port));
      return null;
    });

  const askQuote = (): Promise<void> =>
    status.run("Make quote rows", async () => {
      close();
      const pools = designsInPlan(await readShown(port)).map(({ pool }) => pool);
      const select = make("select", { "aria-label": "Design in the plan" }, pools.map((pool) => make("option", {}, pool)));
      // Sites stand in the order in which they were planned.
      select.value = pools.at(-1)!;
      const [offer, taxRate] = [makeTextInput("Offer", { required: true }), makeTextInput("Tax rate", { required: true })];
      [offer.value, taxRate.value] = ["", ""];
      const validUntil = make("input", { type: "date", "aria-label": "Valid until" });
      const prepare = async () => {
        const details = { offer: offer.value, taxRate: taxRate.value, validUntil: validUntil.value };
        const [pool, today] = [select.value, dayOf(host.now())];
        quoteRows(await readShown(port), pool, details, today);
        await addLackingTables(port, ["quote"]);
        return (workbook: WorkbookSnapshot) => planQuote(workbook, pool, details, today);
      };
      const fields = [
        make("p", {}, "Its arrays, and support over the years, with costs, margin and currency of the sheet of options. Work and parts are rows that you add."),
        make("div", { class: "bay-field" }, make("div", {}, "Design in the plan"), select),
        make("div", { class: "bay-field" }, offer, make("div", { class: "small soft" }, "Number under which the rows are sent out together.")),
        make("div", { class: "bay-field" }, taxRate, make("div", { class: "small soft" }, "Such as 20%, or 0% where there is none.")),
        make("div", { class: "bay-field" }, make("div", {}, "Valid until"), validUntil),
      ];
      ask("Make quote rows", "One design as rows of the quote", fields, prepare);
      return null;
    });

  const buttons = [
    makeButton("Options sheet", openSheet), makeButton("Picture of the options", showPicture), makeButton("Make plan rows …", askDesign), makeButton("Make quote rows …", askQuote),
  ];
  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "Options"),
    make("p", {}, "Two to four designs side by side, from one set of needs: capacity, the year it is full, risk, watts, price and cost over the years."),
    make("div", { class: "bay-row" }, buttons),
    place,
  );
}
