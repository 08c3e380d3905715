import type { WorkbookPort } from "../workbook/port";
import "./elements/fluent";
import { make } from "./elements/make";
import { makeStatusBar } from "./elements/status-bar";
import { explain } from "./elements/work";
import "./pane.css";
import type { PaneHost } from "./pane-host";
import { makeCheckView } from "./views/check-view";
import { makeFunctionsView } from "./views/functions-view";
import { makePaneMenu } from "./views/pane-menu";
import { makePlanView } from "./views/plan-view";
import type { PaneContext, View } from "./views/view";

export type { ChosenFile, PaneHost, Theme } from "./pane-host";

const views: readonly { readonly name: string; readonly make: (pane: PaneContext) => View }[] = [
  { name: "Plan", make: makePlanView },
  { name: "Check", make: makeCheckView },
  { name: "Functions", make: makeFunctionsView },
];

/**
 * Puts the pane into `root` and joins it to a workbook and to the place it lives in.
 *
 * Whatever `root` held is taken out. The pane lives as long as the page does.
 */
export function mountPane(root: HTMLElement, port: WorkbookPort, host: PaneHost): void {
  const status = makeStatusBar();
  const pane: PaneContext = { port, host, status };
  const shown = views.map(({ name, make: makeView }) => ({ id: name.toLowerCase(), name, view: makeView(pane) }));

  const panels = shown.map(({ id, view }) => make("div", { id: `bay-${id}`, class: "bay-view", role: "tabpanel", "aria-labelledby": `bay-tab-${id}`, tabindex: 0, hidden: true }, view.element));
  const tabs = make(
    "fluent-tablist",
    { class: "bay-tabs", size: "small", "aria-label": "Views" },
    shown.map(({ id, name }) => make("fluent-tab", { id: `bay-tab-${id}`, "aria-controls": `bay-${id}` }, name)),
  ) as HTMLElement & { activeid: string };
  let turnedTo: View | null = null;
  tabs.addEventListener("change", () => {
    const index = shown.findIndex(({ id }) => tabs.activeid === `bay-tab-${id}`);
    const view = shown[index]?.view ?? null;
    if (view === null || view === turnedTo) return;
    turnedTo = view;
    panels.forEach((panel, place) => (panel.hidden = place !== index));
    void view.show();
  });
  void port.watch(() => turnedTo?.changed?.()).catch((thrown: unknown) => status.say(explain(thrown, "Follow changes of the workbook")));

  const frame = make("div", { class: "bay" }, make("div", { class: "bay-bar" }, makePaneMenu(pane), make("h1", {}, "Baywright")), tabs, panels, status.element);
  const follow = () => (frame.dataset["theme"] = host.theme());
  follow();
  host.watchTheme(follow);
  root.replaceChildren(frame);
}
