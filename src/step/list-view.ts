import { readStepWords } from "../planning/commissioning/job";
import { rowResultOf, type StepRow } from "../planning/commissioning/record";
import { progressOf } from "../planning/commissioning/reports";
import { make } from "../taskpane/elements/make";
import { makeSign } from "../taskpane/elements/sign";
import { describeProgress } from "../taskpane/views/describe-progress";
import type { Hands } from "./hands";
import type { JobTab } from "./job-file";
import { makeButton, makeHeading } from "./parts";
import { giveBackNotice } from "./step-view";
import { nextOpen } from "./walk";

/** Shows how far the work is, and every section with its steps, to be gone to. */
export function listView(job: JobTab, hands: Hands, keeping: string): HTMLElement {
  const { tab, sections, locked } = job;
  const progress = progressOf({ job: tab.title, site: "" }, tab);
  const next = nextOpen(job, null);
  const cautions = [...new Set(tab.steps.map(({ step }) => readStepWords(step).caution))].filter((text) => text !== "");
  return make(
    "article",
    {},
    makeHeading(tab.title),
    locked !== null && make("p", { class: "caution" }, locked),
    make("progress", { max: Math.max(1, progress.steps), value: progress.done, "aria-label": "Steps settled" }),
    make("p", {}, describeProgress(progress)),
    make("p", { class: "soft" }, "Anyone may stop the work."),
    next !== undefined && locked === null && makeButton(`Next open step: No. ${next.no} ${next.stepId}`, () => hands.turn({ to: "row", row: next.row }), { look: "main" }),
    makeButton(`Snags: ${tab.snags.length}`, () => hands.turn({ to: "snags" })),
    hands.notGivenBack > 0 && giveBackNotice(hands),
    cautions.length > 0 && make("details", {}, make("summary", {}, `Cautions: ${cautions.length}`), make("ul", { class: "cautions" }, cautions.map((text) => make("li", {}, text)))),
    sections.map(({ visit, title, rows }) => [
      visit !== "" && make("h2", {}, visit),
      make(
        "details",
        { open: next !== undefined && rows.includes(next) },
        make("summary", {}, make("span", {}, title === "" ? "Steps" : title), make("span", { class: "count" }, `${rows.filter(({ settled }) => settled).length} of ${rows.length}`)),
        make("ul", { class: "rows" }, rows.map((row) => make("li", {}, rowButton(row, hands)))),
      ),
    ]),
    make("p", { class: "soft" }, keeping),
    hands.notGivenBack === 0 && makeButton("Give the file back", hands.giveBack),
    hands.otherJob !== null && makeButton("Another job of this file", hands.otherJob),
    makeButton("Another file", hands.leave),
  );
}

function rowButton(row: StepRow, { turn }: Hands): HTMLElement {
  const { no, stepId, records, settled } = row;
  const isHoldPoint = records.some(({ holdPoint }) => holdPoint);
  const result = rowResultOf(row);
  const state = settled ? "good" : result === "" ? "blank" : "open";
  return makeButton(
    [
      make("span", { class: "sign", "data-state": state, "aria-hidden": true }, { good: makeSign("good"), blank: "", open: "!" }[state]),
      make("span", { class: "no" }, `${no} ${stepId}`),
      make("span", { class: "about" }, row.subject, isHoldPoint && make("strong", {}, " HOLD POINT")),
      make("span", { class: "soft brief" }, result === "" && records[0]!.slot === null ? readStepWords(records[0]!.step).do : result),
    ],
    () => turn({ to: "row", row: row.row }),
  );
}
