import { invalid } from "../planning/text";
import type { WorkbookPort } from "../workbook/port";
import "./elements/fluent";
import { make } from "./elements/make";
import { makeStatusBar } from "./elements/status-bar";
import { explain } from "./elements/work";
import "./pane.css";
import type { PaneHost } from "./pane-host";
import { makePaneMenu } from "./views/pane-menu";
import type { PaneContext, View } from "./views/view";

export type { ChosenFile, PaneHost, Theme } from "./pane-host";

type MakeView = (pane: PaneContext) => View;

/** The views, each loaded when the person first turns to it. */
const views: readonly { readonly name: string; readonly load: () => Promise<MakeView> }[] = [
  { name: "Plan", load: async () => (await import(/* webpackChunkName: "plan-view" */ "./views/plan-view")).makePlanView },
  { name: "Check", load: async () => (await import(/* webpackChunkName: "check-view" */ "./views/check-view")).makeCheckView },
  { name: "Commission", load: async () => (await import(/* webpackChunkName: "commission-view" */ "./views/commission-view")).makeCommissionView },
  { name: "Functions", load: async () => (await import(/* webpackChunkName: "functions-view" */ "./views/functions-view")).makeFunctionsView },
];

/** Loads every view, so that none waits for a server any more. */
export async function loadViews(): Promise<void> {
  for (const { load } of views) await load();
}

/**
 * Puts the pane into `root` and joins it to a workbook and to the place it lives in; answers with what joins it to another workbook that was
 * opened in the place of that one.
 *
 * Whatever `root` held is taken out. The pane lives as long as the page does; what belonged to the workbook before is gone at once.
 */
export function mountPane(root: HTMLElement, port: WorkbookPort, host: PaneHost): (next: WorkbookPort) => void {
  let shown = fillPane(root, port, host);
  return (next) => {
    const view = shown.view();
    shown.leave();
    shown = fillPane(root, next, host, view);
  };
}

/** The pane over one workbook. */
interface FilledPane {
  /** The view in front. */
  view(): string;
  /** Lets the pane follow the workbook no longer. */
  leave(): void;
}

function fillPane(root: HTMLElement, port: WorkbookPort, host: PaneHost, first = views[0]!.name): FilledPane {
  const status = makeStatusBar();
  const pane: PaneContext = { port, host, status };
  const panels = views.map(({ name, load }) => makePanel(pane, name, load));
  let shown: Panel | null = null;
  let isLeft = false;

  const tabs = make(
    "fluent-tablist",
    { class: "bay-tabs", size: "small", "aria-label": "Views", activeid: tabId(first) },
    panels.map(({ tab }) => tab),
  ) as HTMLElement & { activeid: string };
  const turnTo = (id: string) => {
    const chosen = panels.find(({ tab }) => tab.id === id);
    if (chosen === undefined || chosen === shown) return;
    shown = chosen;
    for (const { element } of panels) element.hidden = element !== chosen.element;
    void chosen.show();
  };
  tabs.addEventListener("change", () => {
    turnTo(tabs.activeid);
  });

  const frame = make("div", { class: "bay" }, make("div", { class: "bay-bar" }, makePaneMenu(pane), make("h1", {}, "Baywright")), tabs, panels.map(({ element }) => element), status.element);
  const follow = () => (frame.dataset["theme"] = host.theme());
  follow();
  const endTheme = host.watchTheme(follow);
  root.replaceChildren(frame);
  turnTo(tabId(first));
  const watching = port.watch(() => {
    if (!isLeft) shown?.view()?.changed?.();
  });
  watching.catch((thrown: unknown) => status.say(explain(thrown, "Follow changes of the workbook")));
  return {
    view: () => shown?.name ?? first,
    leave() {
      isLeft = true;
      endTheme();
      watching.then((end) => end()).catch(() => undefined);
    },
  };
}

/** A tab and what it shows. */
interface Panel {
  readonly name: string;
  readonly tab: HTMLElement;
  readonly element: HTMLElement;
  /** The view, once it was loaded. */
  view(): View | null;
  show(): Promise<void>;
}

function makePanel(pane: PaneContext, name: string, load: () => Promise<MakeView>): Panel {
  const id = name.toLowerCase();
  const element = make("div", { id: `bay-${id}`, class: "bay-view", role: "tabpanel", "aria-labelledby": tabId(name), tabindex: 0, hidden: true });
  let view: View | null = null;
  return {
    name,
    tab: make("fluent-tab", { id: tabId(name), "aria-controls": `bay-${id}` }, name),
    element,
    view: () => view,
    async show() {
      element.ariaBusy = "true";
      try {
        if (view === null) {
          const makeView = await load().catch(() => {
            throw invalid("view", name, `The view ${name} could not be loaded. See that this machine reaches the add-in's address, then load the pane again.`);
          });
          // Somebody may have turned away and back while it was loading.
          view ??= makeView(pane);
          if (!element.contains(view.element)) element.append(view.element);
        }
        // What is still read for the view before is no reason to leave this one empty.
        await pane.status.free();
        await view.show();
      } catch (thrown) {
        pane.status.say(explain(thrown, `Show ${name}`));
      } finally {
        element.ariaBusy = "false";
      }
    },
  };
}

function tabId(name: string): string {
  return `bay-tab-${name.toLowerCase()}`;
}
