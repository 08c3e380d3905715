import { showCell, type Scalar } from "../../../sheet";
import type { RecordKind } from "../../plan/schema";
import { seenUnits, type Wanted } from "../procedure";
import { isFilled, isText, withoutSpaces } from "./entries";
import { results, type Result } from "./result";
import { isSnagClosed, snagEndOf, snagEnds, type Snag } from "./snag";
import type { StepRecord } from "./step-record";
import { slotStates } from "./step-row";

/** What a comparison says: it holds, it does not, or a person must look. */
export type Compared = "yes" | "no" | "eye";

/** What a step hands on when a snag about it was accepted by name in place of a retest. */
export const acceptedRetest = "~accepted";

/** What the formulas of a step's row must show. */
export interface StepAnswers {
  readonly result: Result | "";
  /** Of a slot also the word that stands in place of a record. */
  readonly compares: Compared | typeof results.waived | typeof results.notApplicable | "";
  readonly retest: Scalar;
  readonly retestCompares: Compared | "";
  /** 1 where nothing more is asked of the step, else 0. */
  readonly settled: 0 | 1;
}

/** What the formulas of a snag's row must show; `stepId` and `key` are those of the step whose number stands there. */
export interface SnagAnswers {
  readonly stepId: string;
  readonly place: string;
  readonly retest: Scalar;
  readonly isOpen: 0 | 1;
  readonly key: string;
}

/** What of a step the comparison looks at. */
type Asked = Pick<StepRecord, "kind" | "expected" | "wanted" | "seenUnit">;

/** What of a step its answers follow from. */
type Judged = Asked & Pick<StepRecord, "no" | "slot" | "expectedBefore" | "typed" | "errors" | "sign">;

/** Fields of a step in which an error makes it differ. */
const judgedFields = ["found", "unit", "recheckedBy", "by", "witness", "note"] as const;

/**
 * Says what Result must be of a step, and what the hidden cells beside it: the twin of the formulas in its row.
 *
 * It decides by what was typed and by what the step expects, never by what a formula shows. `snags` stand in the order of their rows; the
 * last one about a step hands its retest to it once it is closed, or its acceptance once that has a name.
 */
export function answersOf(step: Judged, snags: readonly Snag[]): StepAnswers {
  return step.slot === null ? listAnswersOf(step, snags) : slotAnswersOf(step);
}

/**
 * Says what becomes of a slot, by what was found alone: names stand in the row that signs, and a snag, a waiver or a changed expectation
 * wants a row of its own, which the next build gives it.
 */
function slotAnswersOf(step: Judged): StepAnswers {
  const { found } = step.typed;
  const instead = [results.notApplicable, results.waived].find((word) => isText(found, word));
  const compares = found === null ? "" : step.errors.includes("found") ? "no" : (instead ?? compareSeen(step, found));
  const result = compares === "" ? "" : (slotStates.find(([state]) => state === compares)?.[1] ?? results.asExpected);
  return { result, compares, retest: "", retestCompares: "", settled: compares === "yes" ? 1 : 0 };
}

function listAnswersOf(step: Judged, snags: readonly Snag[]): StepAnswers {
  const { typed, errors } = step;
  const isUnitFaulty = step.kind === "size" && errors.includes("unit");
  const compare = (value: Scalar): Compared => (isUnitFaulty ? "no" : compareSeen(step, value));
  const retest = retestOf(step.no, snags);
  const isAccepted = retest === acceptedRetest;
  const compares = typed.found === null ? "" : errors.includes("found") ? "no" : compare(typed.found);
  const retestCompares = retest === "" || isAccepted ? "" : compare(retest);
  const result = judgedFields.some((field) => errors.includes(field)) ? results.differs : resultOf(step, { compares, retestCompares, isAccepted });
  const isNamed = withoutSpaces(typed.by) !== "";
  const isSetAside = result === results.waived || result === results.notApplicable;
  const isSettled = isSetAside
    ? isAccepted || (isNamed && withoutSpaces(typed.note) !== "")
    : result === results.asExpected && (step.sign === "none" || isNamed);
  return { result, compares, retest, retestCompares, settled: isSettled ? 1 : 0 };
}

/** What a step's record was found to be, and what its last snag says. */
interface Seen {
  readonly compares: Compared | "";
  readonly retestCompares: StepAnswers["retestCompares"];
  readonly isAccepted: boolean;
}

function resultOf({ typed, expectedBefore, sign }: Judged, { compares, retestCompares, isAccepted }: Seen): Result | "" {
  const { found, recheckedBy, by, witness } = typed;
  if (found === null) return "";
  if (isText(found, results.notApplicable)) return results.notApplicable;
  if (isText(found, results.waived) || isAccepted) return results.waived;
  if (expectedBefore !== "" && recheckedBy === null) return results.checkAgain;
  if (compares === "yes" || retestCompares === "yes") {
    const [first, other] = [withoutSpaces(by), withoutSpaces(witness)];
    return sign === "two" && (other === "" || isText(other, first)) ? results.needsSecondName : results.asExpected;
  }
  return compares === "eye" || retestCompares === "eye" ? results.compareByEye : results.differs;
}

/** Finds what the last snag about a step hands to it; "" where that is nothing. */
function retestOf(no: string, snags: readonly Snag[]): Scalar {
  const last = snags.filter(({ typed: { about } }) => typeof about === "number" && showCell(about) === no).at(-1);
  return last === undefined ? "" : handedOn(last);
}

function handedOn(snag: Snag): Scalar {
  const { foundAgain } = snag.typed;
  if (snag.errors.includes("closed")) return "";
  switch (snagEndOf(snag)) {
    case snagEnds.closed:
      return foundAgain === null || snag.errors.includes("foundAgain") ? "" : foundAgain;
    case snagEnds.accepted:
      return isSnagClosed(snag) ? acceptedRetest : "";
    case null:
      return "";
  }
}

/** Says what the formulas of a snag's row must show. */
export function snagAnswersOf(snag: Snag, { snags, steps }: { readonly snags: readonly Snag[]; readonly steps: readonly Pick<StepRecord, "key" | "no" | "stepId" | "slot">[] }): SnagAnswers {
  const { about } = snag.typed;
  const no = typeof about === "number" ? showCell(about) : null;
  const step = steps.find((one) => one.no === no);
  const isLast = !snags.some((other) => other.row > snag.row && other.typed.about === about);
  return {
    stepId: step?.stepId ?? "",
    place: no === null ? "" : `${no}${isLast ? "#1" : ""}`,
    retest: handedOn(snag),
    isOpen: isFilled(snag.typed) && !isSnagClosed(snag) ? 1 : 0,
    key: step?.slot?.rowKey ?? step?.key ?? "",
  };
}

/** Compares what was seen with what the step expects, by what all spreadsheet programs decide alike; all else is left to the eye. */
function compareSeen(asked: Asked, seen: Scalar): Compared {
  return comparisons[asked.kind](asked, seen);
}

const comparisons: Readonly<Record<RecordKind, (asked: Asked, seen: Scalar) => Compared>> = {
  tick: (_, value) => said(value === true || ["Yes", "TRUE", "X"].some((word) => isText(value, word))),
  text: compareText,
  serial: compareText,
  choice: compareText,
  number: ({ wanted, expected }, value) => (typeof value === "number" ? said(isWithin(value, wanted)) : eyeUnless(isText(value, expected))),
  date: ({ wanted, expected }, value) =>
    typeof value === "number" ? said(wanted === null ? value > 0 : isWithin(Math.floor(value), wanted)) : eyeUnless(isText(value, expected)),
  size: compareSize,
  address: compareAddress,
};

function said(holds: boolean): Compared {
  return holds ? "yes" : "no";
}

function eyeUnless(holds: boolean): Compared {
  return holds ? "yes" : "eye";
}

function isWithin(value: number, wanted: Wanted | null): boolean {
  return wanted === null || (wanted.by === "range" && value >= wanted.least && value <= wanted.most);
}

/** Takes a text that differs in its spaces alone for one to look at. */
function compareText({ wanted }: Asked, seen: Scalar): Compared {
  if (wanted === null) return "yes";
  if (wanted.by !== "text") return "no";
  if (isText(seen, wanted.text)) return "yes";
  return isText(withoutSpaces(seen), withoutSpaces(wanted.text)) ? "eye" : "no";
}

function compareSize({ wanted, seenUnit }: Asked, seen: Scalar): Compared {
  const unit = Object.entries(seenUnits).find(([name]) => isText(seenUnit, name));
  if (unit === undefined || typeof seen !== "number") return "eye";
  const bytes = roundHalfAway(seen * unit[1]);
  return said(wanted === null ? bytes >= 0 : isWithin(bytes, wanted));
}

/** Rounds as the sheet does: a half goes away from zero. */
function roundHalfAway(value: number): number {
  return Math.sign(value) * Math.round(Math.abs(value));
}

function compareAddress({ wanted }: Asked, seen: Scalar): Compared {
  if (wanted === null) return "yes";
  if (wanted.by !== "address") return "no";
  const isOne = (text: Scalar): boolean => isText(text, wanted.canonical) || isText(text, wanted.full);
  if (isOne(seen)) return "yes";
  const text = showCell(seen);
  const groups = `:${text}:`.replaceAll(".", ":").replaceAll(":", "::").replaceAll(":0:", ":z:");
  const isSpeltOtherwise = text.length !== 39 && (groups.includes(":0") || (text.includes(":") && groups.includes(":z::z:")));
  return isOne(withoutSpaces(seen)) || isSpeltOtherwise ? "eye" : "no";
}
