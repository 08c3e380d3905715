import type { RecordKind } from "../planning/plan/schema";
import { isoDateOf, showCell, type Scalar } from "../sheet";
import { make } from "../taskpane/elements/make";
import { readAnswer, requireText, sizeUnits } from "./answer";
import { makeButton, makeChoice, makeField } from "./parts";
import { canScan, scan } from "./scan";

/** Where somebody answers what was found. */
export interface AnswerField {
  readonly element: HTMLElement;
  /** True where nothing is typed or chosen. */
  readonly isBlank: () => boolean;
  /** Reads the answer; refuses with a sentence what cannot be meant. */
  readonly read: () => Scalar;
  /** The unit in which a size was seen; null for every other kind. */
  readonly unit: () => string | null;
}

/** What of a record its field follows from. */
interface Asked {
  readonly kind: RecordKind;
  readonly label: string;
  /** What may be chosen; none where anything may be typed. */
  readonly choices: readonly string[];
  /** Unit of a number, or in which a size is planned. */
  readonly unit: string;
  /** What stands there already. */
  readonly found: Scalar;
  readonly say: (sentence: string) => void;
}

/** Makes the field for a kind of record; a tick and a choice are large answers to be pressed. */
export function makeAnswerField({ kind, label, choices, unit, found, say }: Asked): AnswerField {
  const answers = kind === "tick" ? ["Yes", "No"] : kind === "choice" ? choices : [];
  if (answers.length > 0) {
    const { element, chosen } = makeChoice(label, answers, showCell(found));
    return { element, isBlank: () => chosen() === "", read: () => readAnswer(kind, chosen(), label), unit: () => null };
  }
  const value = kind === "date" && typeof found === "number" ? (isoDateOf(found) ?? "") : showCell(found);
  const { element, input } = makeField(kind === "number" && unit !== "" ? `${label}, ${unit}` : label, value, { class: "large", ...inputAttributes[kind] });
  const units = kind === "size" ? makeChoice("Unit that was seen", sizeUnits, unit) : null;
  const scanner = kind === "serial" && canScan() && makeButton("Scan", async () => {
    try {
      input.value = (await scan()) ?? input.value;
      input.focus();
    } catch (thrown) {
      say(thrown instanceof Error ? thrown.message : String(thrown));
    }
  });
  return {
    element: make("div", { class: "answer" }, element, scanner, units?.element),
    isBlank: () => input.value.trim() === "",
    read: () => readAnswer(kind, input.value, label),
    unit: () => (units === null ? null : requireText(units.chosen(), "Unit that was seen", "Choose one.")),
  };
}

const inputAttributes: Readonly<Record<RecordKind, Readonly<Record<string, string>>>> = {
  tick: {},
  choice: {},
  text: {},
  number: { inputmode: "decimal" },
  size: { inputmode: "decimal" },
  address: {},
  serial: {},
  date: { type: "date" },
};
