import { results, type StepRecord } from "../planning/commissioning/record";
import { isoDateOf, showCell, type Scalar } from "../sheet";
import { countOf } from "../taskpane/elements/count-of";
import { make } from "../taskpane/elements/make";
import { requireText } from "./answer";
import { makeAnswerField, type AnswerField } from "./answer-field";
import type { Hands } from "./hands";
import { stepEntries, type Entry, type JobTab } from "./job-file";
import { makeButton, makeField, makeForm, makeHeading, makeTextField, type Field } from "./parts";
import { outcomeOf, type Question, type Screen } from "./screen";

/** Labels of the names that a step asks for. */
const nameLabels = { by: "By", witness: "Witness, somebody else", recheckedBy: "Rechecked by" } as const;

/** Shows one row of steps: where, what gets hurt, what to do, what to see, and the answer. */
export function stepView(job: JobTab, screen: Screen, hands: Hands): HTMLElement {
  const { row, questions, isHoldPoint, heldBy } = screen;
  const isGrid = isOfGrid(screen);
  const canType = job.locked === null && heldBy === null;
  const asks = canType && questions.some(({ isAsked }) => isAsked);
  return make(
    "article",
    { class: isHoldPoint ? "step hold" : "step" },
    make("p", { class: "where" }, [`${screen.position} of ${screen.total}`, screen.visit, screen.section].filter((text) => text !== "").join(" · ")),
    makeHeading(make("span", { class: "no" }, `No. ${row.no} ${isGrid ? "" : row.stepId}`), " ", screen.subject),
    isHoldPoint && make("p", { class: "hold-sign" }, make("strong", {}, "HOLD POINT"), ` Nothing further before this is done and signed${questions[0]!.record.sign === "two" ? " by two" : ""}.`),
    job.locked !== null && make("p", { class: "caution" }, job.locked),
    heldBy !== null && heldNotice(heldBy, hands),
    asks ? askForm(job, screen, hands) : questions.map((question) => describeQuestion(question, isGrid)),
    canType && !asks && nameForm(job, screen, hands),
    canType && furtherWays(job, screen, hands),
    isHoldPoint && make("p", { class: "soft" }, "Sign it on the lead's own copy as well: a file that is brought back shows what stands here, and its hold points are never taken over."),
    !screen.stays && row.settled && (isHoldPoint || screen.endsVisit) && hands.notGivenBack > 0 && giveBackNotice(hands),
  );
}

/** Names a step in the row of a grid: by its id, or by its subject where subjects stand side by side. */
function nameOf({ slot, stepId, subject }: StepRecord): string {
  return slot === null || slot.head === "" ? stepId : subject;
}

/** Tells whether several steps of a subject may stand side by side in the row. */
function isOfGrid({ questions }: Screen): boolean {
  return questions[0]!.record.slot !== null;
}

function heldNotice(hold: StepRecord, { turn }: Hands): HTMLElement {
  return make(
    "div",
    { class: "caution" },
    make("p", {}, `Nothing is done here yet: hold point No. ${hold.no} ${hold.stepId} (${hold.subject}) comes first and is not signed.`),
    makeButton("Go to the hold point", () => turn({ to: "row", row: hold.row }), { look: "main" }),
  );
}

/** Says that answers stand on this device alone, with the way to give them back. */
export function giveBackNotice({ notGivenBack, giveBack }: Hands): HTMLElement {
  const what = `${countOf(notGivenBack, "answer")} ${notGivenBack === 1 ? "stands" : "stand"}`;
  return make("div", { class: "give-back" }, make("p", {}, `${what} on this device alone.`), makeButton("Give the file back", giveBack, { look: "main" }));
}

function describeQuestion({ record, caution, do: what, makersGuide, expected, isAsked }: Question, isGrid: boolean, field?: HTMLElement): HTMLElement {
  const outcome = isAsked ? null : outcomeOf(record);
  return make(
    "section",
    { class: "question" },
    caution !== "" && make("div", { class: "caution" }, make("strong", {}, "Caution"), make("p", {}, caution)),
    make("p", { class: "do" }, isGrid && make("span", { class: "no" }, `${nameOf(record)} `), what),
    makersGuide !== "" && make("p", { class: "guide" }, make("span", { class: "soft" }, "Maker's guide: "), makersGuide),
    expected !== "" && make("p", { class: "expected" }, make("span", { class: "soft" }, "Expected "), make("strong", {}, expected)),
    outcome !== null && make(
      "div",
      { class: "outcome", role: "status", "data-result": outcome.isSettled || (record.slot !== null && outcome.result === results.asExpected) ? "good" : "open" },
      make("p", {}, make("span", { class: "soft" }, "Found "), make("strong", {}, foundText(record))),
      make("p", { class: "result" }, outcome.result),
      outcome.advice !== "" && make("p", {}, outcome.advice),
    ),
    field,
  );
}

function foundText({ kind, typed: { found }, seenUnit, plannedUnit }: StepRecord): string {
  const text = kind === "date" && typeof found === "number" ? (isoDateOf(found) ?? showCell(found)) : showCell(found);
  return typeof found === "number" ? [text, kind === "size" ? seenUnit : plannedUnit].join(" ").trim() : text;
}

/** Makes the fields for the names that a row asks for. Nobody signs a hold point, or for somebody else, by a name that was there already. */
function nameFields({ names, isHoldPoint, row }: Screen, device: Hands["names"]): Partial<Record<keyof typeof nameLabels, Field>> {
  const { by } = row.records[0]!.typed;
  return Object.fromEntries(names.map((name) => {
    const offered = name === "witness" ? device.witness : device.by;
    const value = name === "by" && !isHoldPoint ? device.by : "";
    return [name, makeField(nameLabels[name], name === "by" && by !== null ? showCell(by) : value, {}, [offered])];
  }));
}

type NameFields = ReturnType<typeof nameFields>;

function typedNames(fields: NameFields): Partial<Record<keyof NameFields, string>> {
  return Object.fromEntries(Object.entries(fields).flatMap(([name, { input }]) => (input.value.trim() === "" ? [] : [[name, input.value.trim()]])));
}

/** The answers of a row that wants some, with the names that sign for them. */
function askForm(job: JobTab, screen: Screen, hands: Hands): HTMLElement {
  const asked = screen.questions.filter(({ isAsked }) => isAsked).map(({ record }) => record);
  const isGrid = isOfGrid(screen);
  const fields = asked.map((record) => ({ record, field: answerFieldOf(record, isGrid ? `Found ${nameOf(record)}` : "Found", hands) }));
  const names = nameFields(screen, hands.names);
  const note = noteField(screen, hands);
  const entriesOf = (record: StepRecord, found: Scalar, unit: string | null = null): Entry[] => {
    const signed = { ...typedNames(names), ...(record.typed.done === null && { done: hands.today() }) };
    return stepEntries(job, record, { found, ...(unit !== null && unit !== record.seenUnit && { unit }), ...(record.slot === null && signed) });
  };
  const send = (entries: () => readonly Entry[]) => hands.record(() => {
    // A hold point without its names would only look done.
    if (screen.isHoldPoint) for (const name of screen.names) requireText(names[name]!.input.value, nameLabels[name], "Write the name.");
    return [...entries(), ...stepEntries(job, screen.row.records[0]!, note.changed())];
  }, typedNames(names));
  const record = () => send(() => {
    const answered = fields.filter(({ field }) => !field.isBlank());
    // The sentence of the first blank one says what is wanted.
    return (answered.length === 0 ? fields.slice(0, 1) : answered).flatMap(({ record: one, field }) => entriesOf(one, field.read(), field.unit()));
  });
  const setAside = (word: string) => send(() => {
    note.required();
    return fields.filter(({ field }) => !isGrid || field.isBlank()).flatMap(({ record: one }) => entriesOf(one, word));
  });
  const allAsShown = () => send(() => screen.asShown.flatMap((one) => entriesOf(one, "Yes")));
  const empty = () => hands.record(() => asked.flatMap((one) => stepEntries(job, one, { found: null, ...(one.slot === null && { by: null, witness: null, done: null }) })));
  return makeForm(
    record,
    "Record",
    [
      screen.questions.map((question) => describeQuestion(question, isGrid, fields.find(({ record: one }) => one === question.record)?.field.element)),
      Object.values(names).map(({ element }) => element),
    ],
    [
      screen.asShown.length > 0 && makeButton(`All ${screen.asShown.length} as shown`, allAsShown, { look: "answer" }),
      note.element,
      make(
        "details",
        {},
        make("summary", {}, "Cannot be done here"),
        make("p", { class: "soft" }, "Both want a name, and the reason in the note."),
        make("div", { class: "pair" }, [results.notApplicable, results.waived].map((word) => makeButton(word, () => setAside(word)))),
      ),
      asked.some(({ typed }) => typed.found !== null) && makeButton("Empty it: nothing was found yet", empty),
    ],
  );
}

function answerFieldOf(record: StepRecord, label: string, hands: Hands): AnswerField {
  const choices = hands.choices(record).filter((choice) => choice !== results.notApplicable && choice !== results.waived);
  return makeAnswerField({ kind: record.kind, label, choices, unit: record.kind === "size" ? record.seenUnit : record.plannedUnit, found: record.typed.found, say: hands.say });
}

/** The note of a row, with a place for the name of a picture. */
function noteField({ row }: Screen, { say }: Hands) {
  const before = showCell(row.records[0]!.typed.note);
  const { element, input } = makeTextField("Note", before);
  const text = () => input.value.trim();
  const addPicture = () => {
    const name = picture.files?.[0]?.name;
    if (name === undefined) return;
    input.value = [text(), `Photo: ${name}`].filter((part) => part !== "").join("\n");
    say(`${name} is named in the note. The picture itself stays on this device: hand it over beside the file.`);
  };
  const picture = make("input", { type: "file", accept: "image/*", hidden: true, "aria-label": "Photo", on: { change: addPicture } });
  return {
    element: make("details", { open: before !== "" }, make("summary", {}, "Note, name of a photo"), element, picture, makeButton("Name a photo …", () => picture.click())),
    changed: () => (text() === before ? {} : { note: text() === "" ? null : text() }),
    /** Refuses with a sentence where no reason stands in it. */
    required: () => requireText(input.value, "Note", "Write the reason."),
  };
}

/** The names, and the note, that a row wants once it was answered. */
function nameForm(job: JobTab, screen: Screen, hands: Hands): HTMLElement {
  const names = nameFields(screen, hands.names);
  const note = noteField(screen, hands);
  const [wanted] = screen.names;
  const save = () => hands.record(() => {
    const typed = { ...typedNames(names), ...note.changed() };
    // The sentence of what is wanted says so.
    if (Object.keys(typed).length === 0) requireText("", wanted === undefined ? "Note" : nameLabels[wanted], wanted === undefined ? "Write something." : "Write the name.");
    return stepEntries(job, screen.row.records[0]!, typed);
  }, typedNames(names));
  if (wanted !== undefined) return makeForm(save, "Sign", Object.values(names).map(({ element }) => element), note.element);
  note.element.append(makeButton("Keep the note", save));
  return note.element;
}

/** What else can be done about a row: what was typed by a slip is typed anew, what is wrong becomes a snag. */
function furtherWays(job: JobTab, { questions, row }: Screen, { turn }: Hands): HTMLElement {
  const isAnswered = questions.every(({ isAsked }) => !isAsked);
  const isWrong = row.records.some((record) => outcomeOf(record)?.result === results.differs || outcomeOf(record)?.result === results.compareByEye);
  const about = job.tab.snags.filter(({ typed }) => typeof typed.about === "number" && showCell(typed.about) === row.no);
  return make(
    "div",
    { class: "further" },
    about.map(({ id, row: place, typed }) => makeButton(`Snag ${id}: ${showCell(typed.foundWrong)}`, () => turn({ to: "snag", row: place }))),
    makeButton("Raise a snag", () => turn({ to: "snag", row: null }), isWrong && about.length === 0 ? { look: "main" } : {}),
    isAnswered && makeButton("It was typed wrongly", () => turn({ to: "mend" })),
  );
}
