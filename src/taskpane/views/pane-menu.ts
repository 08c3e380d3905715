import { makeButton } from "../elements/button";
import { make } from "../elements/make";
import type { PaneContext } from "./view";

/** Makes the pane's menu: what is rarely needed, and what the add-in says about itself. */
export function makePaneMenu(pane: PaneContext): HTMLElement {
  const about = makeAbout(pane);
  const menu = make(
    "fluent-menu",
    {},
    makeButton("☰", null, { slot: "trigger", appearance: "subtle", icon: true, label: "Menu" }),
    make(
      "fluent-menu-list",
      {},
      make("fluent-menu-item", { on: { click: () => window.open(pane.host.helpAddress("index.html"), "_blank", "noopener") } }, "Help"),
      make("fluent-menu-item", { on: { click: () => about.showModal() } }, "About and version"),
    ),
  );
  return make("div", {}, menu, about);
}

function makeAbout({ host }: PaneContext): HTMLDialogElement {
  const dialog: HTMLDialogElement = make(
    "dialog",
    { "aria-labelledby": "bay-about" },
    make("h2", { id: "bay-about" }, `Baywright ${host.version}`),
    make("p", {}, `Capacity and address planning of rack storage, and a commissioning tab for each job at a site. Here it runs in ${host.name}.`),
    make("p", {}, "Nothing of your workbook leaves this machine by way of the add-in: it sends nothing to anyone."),
    make("p", { class: "bay-caution" }, "Loads, lifts and rack figures are planning figures. Local codes and licensed practice decide."),
    makeButton("Close", () => dialog.close(), { appearance: "primary" }),
  );
  return dialog;
}
