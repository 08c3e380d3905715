import { reEnterFormulas } from "../../actions/re-enter-formulas";
import { invalid } from "../../planning/text";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { makeSign } from "../elements/sign";
import { makeLoadingDialog } from "./loading-dialog";
import { makeTurnDialog, turnFormulasBack } from "./turn-formulas";
import type { ProgramTest } from "../pane-host";
import type { PaneContext } from "./view";

/** Makes the pane's menu: what is rarely needed, and what the add-in says about itself. */
export function makePaneMenu(pane: PaneContext): HTMLElement {
  const about = makeAbout(pane);
  const turn = makeTurnDialog(pane);
  const loading = pane.host.loading === null ? null : makeLoadingDialog(pane, pane.host.loading);
  // A menu item says "change" when it is chosen, by a click as by a key.
  const item = (label: string, run: () => unknown) => make("fluent-menu-item", { role: "menuitem", on: { change: () => void run() } }, label);
  const trigger = makeButton(makeSign("menu"), null, { slot: "trigger", appearance: "subtle", icon: true, label: "Menu" });
  // The menu item that opened a dialog is out of sight when it closes: the keyboard goes on from the menu.
  for (const dialog of [about, turn, loading?.element]) dialog?.addEventListener("close", () => trigger.focus());
  const element = make("div");
  const { selfTest } = pane.host;
  const openSelfTest = selfTest === null ? null : selfTestOpener(pane, selfTest, element, () => trigger.focus());
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
      openSelfTest !== null && item("Self-test in this program …", openSelfTest),
      loading !== null && item("Load with this workbook …", () => loading.open()),
      item("Help", () => window.open(pane.host.helpAddress("index.html"), "_blank", "noopener")),
      item("About and version", () => about.showModal()),
    ),
  );
  fill(element, menu, turn, loading?.element, about);
  return element;
}

/** Makes what shows the page of the self-test in `place`: it is loaded when it is first asked for, and keeps what it found. */
function selfTestOpener(pane: PaneContext, test: ProgramTest, place: HTMLElement, closed: () => void): () => Promise<void> {
  let page: HTMLDialogElement | null = null;
  return () =>
    pane.status.run("Open the self-test", async () => {
      if (page === null) {
        const { makeSelfTestPage } = await import(/* webpackChunkName: "self-test" */ "./self-test-page").catch(() => {
          throw invalid("view", "self-test", "The self-test could not be loaded. See that this machine reaches the add-in's address, then load the pane again.");
        });
        page = makeSelfTestPage(pane, test);
        page.addEventListener("close", closed);
        place.append(page);
      }
      page.showModal();
      return null;
    });
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
