import { reEnterFormulas } from "../../actions/re-enter-formulas";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { make } from "../elements/make";
import { makeLoadingDialog } from "./loading-dialog";
import { makeTurnDialog, turnFormulasBack } from "./turn-formulas";
import type { PaneContext } from "./view";

/** Makes the pane's menu: what is rarely needed, and what the add-in says about itself. */
export function makePaneMenu(pane: PaneContext): HTMLElement {
  const about = makeAbout(pane);
  const turn = makeTurnDialog(pane);
  const loading = pane.host.loading === null ? null : makeLoadingDialog(pane, pane.host.loading);
  // A menu item says "change" when it is chosen, by a click as by a key.
  const item = (label: string, run: () => unknown) => make("fluent-menu-item", { role: "menuitem", on: { change: () => void run() } }, label);
  const trigger = makeButton("☰", null, { slot: "trigger", appearance: "subtle", icon: true, label: "Menu" });
  // The menu item that opened a dialog is out of sight when it closes: the keyboard goes on from the menu.
  for (const dialog of [about, turn, loading?.element]) dialog?.addEventListener("close", () => trigger.focus());
  const menu = make(
    "fluent-menu",
    {},
    trigger,
    make(
      "fluent-menu-list",
      { role: "menu", "aria-label": "Menu" },
      item("Turn our formulas into values …", () => turn.showModal()),
      item("Turn values back into our formulas", () => turnFormulasBack(pane)),
      pane.host.formulasMayStick && item("Enter our formulas again", () => enterAgain(pane)),
      loading !== null && item("Load with this workbook …", () => loading.open()),
      item("Help", () => window.open(pane.host.helpAddress("index.html"), "_blank", "noopener")),
      item("About and version", () => about.showModal()),
    ),
  );
  return make("div", {}, menu, turn, loading?.element, about);
}

function enterAgain({ port, status }: PaneContext): Promise<void> {
  return status.run("Enter our formulas again", async () => {
    const count = await reEnterFormulas(port);
    return { sentence: count === 0 ? "No formula of ours shows #NAME? here; nothing was changed." : `${countOf(count, "formula")} entered again; the answers follow in a moment.` };
  });
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
