import { isSnagClosed, results, snagEnds, snagName, type Snag, type StepRecord } from "../planning/commissioning/record";
import type { RecordKind } from "../planning/plan/schema";
import { isoDateOf, showCell } from "../sheet";
import { make } from "../taskpane/elements/make";
import { makeSign } from "../taskpane/elements/sign";
import { readAnswer, requireText } from "./answer";
import { makeAnswerField } from "./answer-field";
import type { Hands } from "./hands";
import { snagEntries, type JobTab } from "./job-file";
import { makeButton, makeChoice, makeField, makeForm, makeHeading, makeTextField } from "./parts";
import { rowsOf } from "./walk";

/** Lists what was found wrong. */
export function snagsView({ tab, locked }: JobTab, { turn }: Hands): HTMLElement {
  return make(
    "article",
    {},
    makeHeading("Snags"),
    make("p", { class: "soft" }, "What must be put right. Each is closed once a retest found it right, or accepted as it is by somebody who may."),
    make("ul", { class: "rows" }, tab.snags.map((snag) => make("li", {}, makeButton(
      [
        make("span", { class: "sign", "data-state": isSnagClosed(snag) ? "good" : "open", "aria-hidden": true }, isSnagClosed(snag) ? makeSign("good") : "!"),
        make("span", { class: "no" }, snag.id),
        make("span", { class: "about" }, showCell(snag.typed.foundWrong)),
        make("span", { class: "soft" }, isSnagClosed(snag) ? showCell(snag.typed.closed) : "open"),
      ],
      () => turn({ to: "snag", row: snag.row }),
    )))),
    tab.snags.length === 0 && make("p", {}, "None so far."),
    locked === null && makeButton("Raise a snag", () => turn({ to: "snag", row: null })),
  );
}

/** Raises a snag; about a row of steps where it was raised there. */
export function raiseView(job: JobTab, about: number | null, hands: Hands): HTMLElement {
  const row = rowsOf(job).find((one) => one.row === about);
  const wrong = row?.records.find(({ result }) => result !== null && result !== results.asExpected);
  const found = makeTextField("What was found", wrong === undefined ? "" : describeWrong(wrong));
  const mender = makeField("Who puts it right");
  const byWhen = makeField("By when", "", { type: "date" });
  const raise = () => hands.record(() => {
    const foundWrong = requireText(found.input.value, "What was found", "Write what is wrong.");
    const day = byWhen.input.value === "" ? {} : { byWhen: readAnswer("date", byWhen.input.value, "By when") };
    const name = mender.input.value.trim();
    const place = row === undefined ? {} : { about: Number(row.no) };
    return snagEntries(job, null, { ...place, foundWrong, ...(name !== "" && { mender: name }), ...day });
  });
  return make(
    "article",
    {},
    makeHeading("Raise a snag"),
    row !== undefined && make("p", { class: "where" }, `About No. ${row.no} ${row.stepId} ${row.records[0]!.subject}`),
    makeForm(raise, "Raise the snag", [found.element, mender.element, byWhen.element]),
  );
}

function describeWrong({ typed, expected, stepId, slot }: StepRecord): string {
  return `${slot === null ? "" : `${stepId}: `}Found ${showCell(typed.found)}${expected === "" ? "" : `, expected ${expected}`}`;
}

/** Shows a snag, and ends it: what the retest found, and who says so. */
export function snagView(job: JobTab, snag: Snag, hands: Hands): HTMLElement {
  const { typed } = snag;
  const step = job.tab.steps.find(({ key }) => key === snag.key);
  const kind: RecordKind = step?.kind ?? "text";
  const again = makeAnswerField({
    kind, label: "Found again", choices: step === undefined ? [] : hands.choices(step), unit: step?.plannedUnit ?? "", found: typed.foundAgain, say: hands.say,
  });
  const end = makeChoice("Ended as", Object.values(snagEnds), showCell(typed.closed));
  const by = makeField("By", showCell(typed.by), {}, [hands.names.by, hands.names.witness]);
  const note = makeTextField("Note", showCell(typed.note));
  const save = () => hands.record(() => {
    const texts = { by: by.input.value.trim(), note: note.input.value.trim(), closed: end.chosen() };
    const isEnded = texts.closed !== "";
    if (isEnded) requireText(texts.by, "By", "Write the name.");
    const changed = Object.entries(texts).filter(([field, text]) => text !== showCell(typed[field as keyof typeof texts]));
    const typedAgain = again.isBlank() ? {} : { foundAgain: again.read() };
    return snagEntries(job, snag.row, { ...Object.fromEntries(changed.map(([field, text]) => [field, text === "" ? null : text])), ...typedAgain });
  }, isSnagClosed(snag) ? {} : { by: by.input.value.trim() });
  const facts: readonly (readonly [string, string])[] = [
    ["About", step === undefined ? "" : `No. ${step.no} ${step.stepId} ${step.subject}`],
    ["Expected", step?.expected ?? ""],
    ["Who puts it right", showCell(typed.mender)],
    ["By when", typeof typed.byWhen === "number" ? (isoDateOf(typed.byWhen) ?? "") : showCell(typed.byWhen)],
  ];
  const name = snagName(snag);
  return make(
    "article",
    {},
    makeHeading(name.charAt(0).toUpperCase() + name.slice(1)),
    make("p", { class: "do" }, showCell(typed.foundWrong)),
    make("dl", {}, facts.filter(([, text]) => text !== "").map(([label, text]) => [make("dt", {}, label), make("dd", {}, text)])),
    step?.holdPoint === true && make("p", { class: "soft" }, "It is about a hold point: end it in the lead's own copy as well."),
    job.locked === null
      ? makeForm(save, "Keep it", [again.element, end.element, by.element, note.element])
      : make("p", { class: "caution" }, job.locked),
  );
}
