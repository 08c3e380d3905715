import { addOptions, addTablesOfDesign } from "../../actions/options";
import { giveIds } from "../../actions/give-ids";
import { momentOf } from "../../actions/moment";
import { readShown } from "../../actions/read-plan";
import { optionsPage, svgOf } from "../../planning/drawings";
import { designRows, planDesign, readOptions } from "../../planning/options";
import { cellArea, type WorkbookSnapshot } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import { saveFile } from "../elements/save-file";
import { showPanel } from "../elements/show-panel";
import { makeTextInput } from "../elements/text-input";
import type { PaneContext } from "./view";

/** Makes the part of the Plan view that compares designs on a sheet of their own, draws them, and makes one of them rows of the plan. */
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
        await addTablesOfDesign(port);
        return (workbook: WorkbookSnapshot) => planDesign(workbook, name, where);
      };
      const written = async () => {
        close();
        await giveIds(port);
        await refresh();
      };
      const show = () => propose(pane, preview, { title: "Make plan rows", planner: prepare, nothing: "There is nothing to write.", written });
      showPanel(
        place,
        "One design as rows of the plan",
        make("p", {}, "Its arrays, with a pool of their own, and the model and the site where the plan has none of that name. Racks, feeds and ports are planned after that."),
        make("div", { class: "bay-field" }, make("div", {}, "Design"), select),
        make("div", { class: "bay-field" }, site, make("div", { class: "small soft" }, "One of the plan, or a new one.")),
        make("div", { class: "bay-row" }, makeButton("Show what would be written", show, { appearance: "primary" }), makeButton("Close", close)),
        preview,
      );
      return null;
    });

  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "Options"),
    make("p", {}, "Two to four designs side by side, from one set of needs: capacity, the year it is full, risk, watts, price and cost over the years."),
    make("div", { class: "bay-row" }, makeButton("Options sheet", openSheet), makeButton("Picture of the options", showPicture), makeButton("Make plan rows …", askDesign)),
    place,
  );
}
