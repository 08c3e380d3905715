import type { ProbeOutcome, SelfTestProgress } from "../../workbook/self-test";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { saveFile } from "../elements/save-file";
import { explain } from "../elements/work";
import type { ProgramTest } from "../pane-host";
import type { PaneContext } from "./view";

const title = "Self-test in this program";

/** What becomes of the outcomes of one verdict: their heading, and whether they are worth reading at once. */
const parts = [
  { verdict: "differs", heading: "Differs from what we count on", open: true },
  { verdict: "not tried", heading: "Could not be tried", open: true },
  { verdict: "noted", heading: "Noted", open: true },
  { verdict: "as expected", heading: "As expected", open: false },
] as const;

/**
 * Makes the page that tries the spreadsheet program on a sheet of its own, shows what differs from what we count on, and gives the answers
 * as one text to send back. The text holds nothing of the workbook.
 */
export function makeSelfTestPage(pane: PaneContext, test: ProgramTest): HTMLDialogElement {
  const state = make("p", { role: "status" });
  const results = make("div");
  const start = makeButton("Start", () => run(), { appearance: "primary" });
  const dialog: HTMLDialogElement = make(
    "dialog",
    { class: "bay-page", "aria-labelledby": "bay-self-test" },
    make("h2", { id: "bay-self-test" }, title),
    make("p", {}, "Tries what the add-in counts on: text, arguments, spilled tables, formats, choices, page set-up, events."),
    make("p", {}, "A sheet called BAY self-test is added and taken away again; your sheets are not touched. It takes up to a minute: do not type meanwhile."),
    make("div", { class: "bay-row" }, start, makeButton("Close", () => dialog.close())),
    state,
    results,
  );

  const run = () =>
    pane.status.run(title, async () => {
      start.setAttribute("disabled", "");
      fill(results);
      const told = ({ done, total, subject }: SelfTestProgress) => { fill(state, `${subject}: ${done} of ${total} …`); };
      try {
        const outcomes = [...(await test.run(told)), ...(await loadSwitch(pane))];
        const sentence = summary(outcomes);
        fill(state, sentence);
        fill(results, show(outcomes), makeAnswers(pane, test, outcomes));
        return { sentence, tone: outcomes.some(({ verdict }) => verdict === "differs") ? "trouble" : "result" };
      } catch (thrown) {
        // The pane's own line says it too, behind this page.
        fill(state, explain(thrown, title).sentence);
        throw thrown;
      } finally {
        start.removeAttribute("disabled");
      }
    });

  return dialog;
}

async function loadSwitch({ host }: PaneContext): Promise<ProbeOutcome[]> {
  if (host.loading === null) return [];
  const probe = { id: "load-switch", subject: "Load with this workbook", tried: "The mark of this workbook is asked for", expected: null };
  try {
    return [{ ...probe, found: (await host.loading.isOn()) ? "it is on" : "it is off", verdict: "noted" }];
  } catch (thrown) {
    return [{ ...probe, found: explain(thrown, probe.subject).sentence, verdict: "not tried" }];
  }
}

function summary(outcomes: readonly ProbeOutcome[]): string {
  const count = (verdict: ProbeOutcome["verdict"]) => outcomes.filter((one) => one.verdict === verdict).length;
  const [differing, untried] = [count("differs"), count("not tried")];
  const rest = untried === 0 ? "" : ` ${countOf(untried, "thing")} could not be tried.`;
  if (differing === 0) return `Nothing differs: ${count("as expected")} of ${outcomes.length} as expected, ${count("noted")} noted.${rest}`;
  return `${countOf(differing, "thing")} of ${outcomes.length} ${differing === 1 ? "differs" : "differ"}. Send the answers back: each is a defect to report.${rest}`;
}

function show(outcomes: readonly ProbeOutcome[]): readonly (HTMLElement | false)[] {
  return parts.map(({ verdict, heading, open }) => {
    const own = outcomes.filter((one) => one.verdict === verdict);
    return own.length > 0 && make("details", { open }, make("summary", {}, make("strong", {}, `${heading} (${own.length})`)), make("ul", { class: "bay-list" }, own.map(entry)));
  });
}

function entry({ subject, tried, expected, found, verdict }: ProbeOutcome): HTMLElement {
  return make(
    "li",
    { class: "bay-probe" },
    make("p", {}, make("span", { class: "soft" }, `${subject}: `), tried),
    make(
      "dl",
      { class: "small" },
      expected !== null && [make("dt", {}, "Expected"), make("dd", {}, expected)],
      make("dt", {}, verdict === "not tried" ? "Why not" : "Found"),
      make("dd", {}, found),
    ),
  );
}

/** The answers as one text, to be copied or saved: where neither is allowed to the pane it can still be selected. */
function makeAnswers(pane: PaneContext, { program }: ProgramTest, outcomes: readonly ProbeOutcome[]): HTMLElement {
  const text = JSON.stringify({ release: pane.host.version, at: pane.host.now().toISOString(), program: program(), probes: outcomes }, null, 2);
  const box = make("textarea", { readonly: true, rows: 6, spellcheck: "false", "aria-label": "The answers as one text" }, text);
  const said = make("span", { role: "status" });
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      fill(said, "Copied.");
    } catch {
      box.focus();
      box.select();
      fill(said, "Copying is not allowed to the pane here. The text is selected: press Ctrl+C, or Cmd+C on a Mac.");
    }
  };
  const save = (): void => saveFile("baywright-self-test.json", new Blob([text], { type: "application/json" }));
  return make(
    "section",
    { class: "bay-group" },
    make("h3", {}, "The answers"),
    make("p", {}, "They hold nothing of your workbook."),
    box,
    make("div", { class: "bay-row" }, makeButton("Copy", copy), makeButton("Save as a file", save), said),
  );
}
