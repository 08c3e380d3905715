import { andMore, noAnswer, quote } from "../planning/text";
import { chooseFile } from "../taskpane/choose-file";
import { make } from "../taskpane/elements/make";
import { saveFile } from "../taskpane/elements/save-file";
import { explain } from "../taskpane/elements/work";
import type { Desk, Keeping } from "./desk";
import type { KeptPlanTitle } from "./plan-store";

/** The bar over the workbook: says where one is, and opens, starts and saves plans. */
export interface TopBar {
  readonly element: HTMLElement;
  /** Shows the name and state of the plan on the desk. */
  readonly refresh: () => void;
  /** Lets the person choose a file, and opens it. */
  readonly choose: () => Promise<void>;
  /** Opens a file that was dropped on the page: a folder too can be dropped, which has no bytes. */
  open(name: string, bytes: Promise<ArrayBuffer>): Promise<void>;
  /** Saves the workbook as a file. */
  readonly save: () => Promise<void>;
  /** Says a sentence. What is said while something is done that was asked for stands behind what is said of that. */
  readonly say: (sentence: string) => void;
}

/** What came of something that was asked for: a sentence, and a plan that one can go back to. */
interface Done {
  readonly sentence?: string;
  readonly back?: KeptPlanTitle;
}

/** What the bar says of how the plan on the desk is kept. */
const states: Readonly<Record<Keeping, string>> = {
  kept: "Kept in this browser",
  changed: "Changed",
  refused: "Not kept: save it as a file",
  passing: "Not kept in this browser: save it as a file",
};

/** Makes the bar; its buttons wait until the desk is `ready`. `further` stands behind them. */
export function makeTopBar(desk: () => Desk | null, further: HTMLElement): TopBar {
  const plan = make("span", { class: "plan-name" });
  const state = make("span", { class: "plan-state" });
  const notice = make("div", { class: "notice", role: "status" });
  const recent = make("div", { class: "recent-list", id: "recent-plans", role: "menu", "aria-label": "Recent plans", hidden: true });
  const recentButton = button("Recent", "Plans kept in this browser", () => showRecent());
  recentButton.setAttribute("aria-haspopup", "menu");
  recentButton.setAttribute("aria-controls", "recent-plans");

  const show = (sentences: readonly string[], back?: KeptPlanTitle) => {
    notice.replaceChildren(
      sentences.join(" "),
      ...(back === undefined ? [] : [backButton(back)]),
      button("×", "Close this message", () => { show([]); }),
    );
    notice.hidden = sentences.length === 0;
  };
  /** What was said since something that was asked for began: a list for each that is being done. */
  const hearing = new Set<string[]>();
  const say = (sentence: string) => {
    for (const heard of hearing) heard.push(sentence);
    show([...hearing].at(-1) ?? [sentence]);
  };
  const backButton = (back: KeptPlanTitle) =>
    button(`Back to ${back.name}`, "Put the plan that was open before back on the desk", () => open(`${back.name} is back.`, (at) => at.openKept(back.id)));
  const refresh = () => {
    const at = desk();
    plan.textContent = at?.name ?? "";
    state.textContent = at === null ? "Loading …" : states[at.keeping];
    document.title = at === null ? "Baywright: browser workbook" : `${at.name}: Baywright browser workbook`;
  };
  const run = async (work: (at: Desk) => Promise<Done>) => {
    const at = desk();
    if (at === null) {
      say("The workbook is still loading. Try again in a moment.");
      return;
    }
    const heard: string[] = [];
    hearing.add(heard);
    let { sentence = "", back }: Done = {};
    try {
      ({ sentence = "", back } = await work(at));
    } catch (thrown) {
      ({ sentence } = explain(thrown, "Do that"));
    }
    const said = [...(sentence === "" ? [] : [sentence]), ...heard];
    hearing.delete(heard);
    if (said.length > 0) show(said, back);
    refresh();
  };
  const open = (sentence: string, work: (at: Desk) => Promise<KeptPlanTitle>) => run(async (at) => ({ back: await work(at), sentence }));
  const openFile = (name: string, bytes: Promise<ArrayBuffer>) =>
    open(`${name} is open.`, async (at) => {
      const read = await bytes.catch(() => { throw noAnswer("file", name, `${quote(name)} cannot be read. Choose one file, no folder, that is still where it was.`); });
      return at.openFile(name, new Uint8Array(read));
    });
  const choose = async () => {
    const file = await chooseFile([".xlsx"]);
    if (file !== null) await open(`${file.name} is open.`, (at) => at.openFile(file.name, file.bytes));
  };
  const save = () =>
    run(async (at) => {
      const { file, outOfDate, pointing } = await at.saveFile();
      saveFile(`${at.name}.xlsx`, file);
      const of = ([first = "", ...others]: readonly string[]) => andMore(first, others.length);
      const stale =
        outOfDate.length === 0 ? [] : [`${of(outOfDate)} cannot be computed here after what was changed. The file has them without a result; the next spreadsheet program computes them.`];
      const doubtful =
        pointing.length === 0 ? [] : [`${of(pointing)} in the saved file may point to other cells, as something moved or was renamed. Keep the file that you opened, and compare.`];
      return { sentence: [...stale, ...doubtful].join(" ") };
    });

  const showRecent = (): Promise<void> | void => {
    if (recent.hidden) return run(async (at) => listRecent(await at.others()));
    recent.hidden = true;
  };
  const listRecent = (others: readonly KeptPlanTitle[]): Done => {
    recent.replaceChildren(
      ...others.map((title) => {
        const entry = button(`${title.name}, ${new Date(title.keptAt).toLocaleString()}`, `Open ${title.name}`, () => {
          recent.hidden = true;
          return open(`${title.name} is open.`, (at) => at.openKept(title.id));
        });
        entry.setAttribute("role", "menuitem");
        const removal = button("Remove", `Remove ${title.name} from this browser for good`, () => {
          if (!confirm(`Remove "${title.name}" from this browser? It cannot be brought back. Files that were saved of it stay.`)) return;
          recent.hidden = true;
          return run(async (at) => {
            await at.forget(title);
            return { sentence: `${title.name} was removed from this browser.` };
          });
        });
        removal.setAttribute("role", "menuitem");
        removal.setAttribute("aria-label", `Remove ${title.name}`);
        return make("div", { class: "recent-plan", role: "none" }, entry, removal);
      }),
      ...(others.length === 0 ? [make("p", {}, "No other plan is kept in this browser yet.")] : []),
    );
    recent.hidden = false;
    recent.querySelector("button")?.focus();
    return {};
  };
  const recentPlace = make("span", { class: "recent" }, recentButton, recent);
  recentPlace.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || recent.hidden) return;
    event.preventDefault();
    recent.hidden = true;
    recentButton.focus();
  });
  recentPlace.addEventListener("focusout", ({ relatedTarget }) => {
    if (!recentPlace.contains(relatedTarget as Node | null)) recent.hidden = true;
  });

  const element = make(
    "div",
    // The keyboard stays where it is while somebody points at a button here, as at one of a desk spreadsheet: what is typed then goes on in the cells.
    { class: "top-bar", on: { mousedown: (event) => { if ((event.target as Element).closest("button") !== null) event.preventDefault(); } } },
    make("strong", { class: "place" }, "Browser workbook"),
    plan,
    state,
    make(
      "nav",
      { "aria-label": "Plan" },
      button("New", "Start a new, empty workbook", () => open("A new plan is on the desk.", (at) => at.startNew())),
      button("Sample", "Open the sample plan", () => open("The sample plan is on the desk.", (at) => at.openSample())),
      button("Open …", "Open an .xlsx file from this machine, or drag it onto the page (Ctrl+O)", choose),
      button("Save .xlsx", "Save this workbook as an .xlsx file (Ctrl+S)", save),
      recentPlace,
      further,
      make("a", { class: "steps", href: "step/", "aria-label": "Fill a tab step by step" }, "Step by step"),
    ),
    notice,
  );
  show([]);
  refresh();
  return { element, refresh, choose, open: openFile, save, say };
}

function button(label: string, help: string, press: () => unknown): HTMLButtonElement {
  // A sign is read aloud as what it does; a word is read as itself.
  const name = /\w/.test(label) ? {} : { "aria-label": help };
  return make("button", { type: "button", title: help, ...name, on: { click: () => void press() } }, label);
}
