import { readStepWords, type StepWords } from "../planning/commissioning/job";
import { openHoldPoint, results, type Result, type StepField, type StepRecord, type StepRow } from "../planning/commissioning/record";
import { isBlank } from "../sheet";
import type { JobTab } from "./job-file";
import { rowsOf, staysAt } from "./walk";

/** One question of a screen: a step, or one of the up to four of a subject that stand side by side. */
export interface Question extends StepWords {
  readonly record: StepRecord;
  /** What is to be seen, with its unit; "" where anything of the kind will do. */
  readonly expected: string;
  /** True where it wants an answer: nothing was found yet, or what was is typed anew. */
  readonly isAsked: boolean;
}

/** What somebody has to do about a record, by its result. */
export interface Outcome {
  readonly result: Result;
  /** True where nothing more is asked. */
  readonly isSettled: boolean;
  readonly advice: string;
}

/** All that a screen shows of a row of steps. */
export interface Screen {
  readonly row: StepRow;
  /** Place among the rows, from 1, and how many they are. */
  readonly position: number;
  readonly total: number;
  readonly visit: string;
  readonly section: string;
  readonly subject: string;
  readonly isHoldPoint: boolean;
  readonly questions: readonly Question[];
  /** The open hold point that comes first; nothing may be done here before it. */
  readonly heldBy: StepRecord | null;
  /** Names that are asked for here and do not stand yet. */
  readonly names: readonly Extract<StepField, "by" | "witness" | "recheckedBy">[];
  /** Ticks that one press may answer together. */
  readonly asShown: readonly StepRecord[];
  /** True where the way on is shut. */
  readonly stays: boolean;
  /** True where a visit, or all of the work, ends with this row. */
  readonly endsVisit: boolean;
}

/** Ticks of one subject that one press may answer at most: beyond that nobody looks at each. */
const mostAsShown = 12;

/** Works out what the screen of a row shows; `isOpen` where what was found is to be typed anew. */
export function screenOf(job: JobTab, row: StepRow, isOpen: boolean): Screen {
  const all = rowsOf(job);
  const at = all.indexOf(row);
  const section = job.sections.find(({ rows }) => rows.includes(row));
  const visit = job.sections.slice(0, section === undefined ? 0 : job.sections.indexOf(section) + 1).reduce((latest, one) => (one.visit === "" ? latest : one.visit), "");
  const questions = row.records.map((record): Question => ({
    ...readStepWords(record.step),
    record,
    expected: [record.expected, record.kind === "size" || record.expected === "" ? "" : record.plannedUnit].join(" ").trim(),
    isAsked: isOpen || record.typed.found === null,
  }));
  const next = job.sections.find(({ rows }) => rows[0] === all[at + 1]);
  return {
    row,
    position: at + 1,
    total: all.length,
    visit,
    section: section?.title ?? "",
    subject: row.subject,
    isHoldPoint: row.records.some(({ holdPoint }) => holdPoint),
    questions,
    heldBy: row.records.map((record) => openHoldPoint(job.tab, record)).find((hold) => hold !== null) ?? null,
    names: namesAsked(row),
    asShown: asShown(questions),
    stays: staysAt(row),
    endsVisit: at === all.length - 1 || (next !== undefined && next.visit !== ""),
  };
}

/** Lists the names that a row still wants. A row of a grid wants none: they stand in the row that signs for it. */
function namesAsked({ records }: StepRow): Screen["names"] {
  const record = records[0]!;
  if (record.slot !== null) return [];
  const { typed, sign, expectedBefore, result } = record;
  const isSetAside = result === results.waived || result === results.notApplicable;
  return [
    ...(expectedBefore !== "" && isBlank(typed.recheckedBy) && typed.found !== null ? ["recheckedBy" as const] : []),
    ...((sign !== "none" || isSetAside) && isBlank(typed.by) ? ["by" as const] : []),
    ...(sign === "two" && (isBlank(typed.witness) || result === results.needsSecondName) ? ["witness" as const] : []),
  ];
}

/** Lists the ticks that may be answered at once: of one subject, without a caution, and nothing that is read back. */
function asShown(questions: readonly Question[]): readonly StepRecord[] {
  if (questions.some(({ record, caution }) => record.slot?.head !== "" || caution !== "")) return [];
  const ticks = questions.filter(({ record, isAsked }) => isAsked && record.kind === "tick").map(({ record }) => record);
  return ticks.length < 2 || ticks.length > mostAsShown ? [] : ticks;
}

/** Says what came of a record, and what is to be done next; null where nothing was found yet. */
export function outcomeOf(record: StepRecord): Outcome | null {
  const { result, settled } = record;
  return result === null ? null : { result, isSettled: settled, advice: settled ? settledAdvice[result] : openAdvice(record, result) };
}

const settledAdvice: Readonly<Record<Result, string>> = {
  [results.asExpected]: "Go on.",
  [results.waived]: "Set aside by name and reason. Go on.",
  [results.notApplicable]: "Set aside by name and reason. Go on.",
  [results.differs]: "", [results.checkAgain]: "", [results.needsSecondName]: "", [results.compareByEye]: "",
};

function openAdvice({ slot, expected, expectedBefore, holdPoint }: StepRecord, result: Result): string {
  const stop = holdPoint ? "Stop here. " : "";
  const own = "It gets a row of its own when the tab is built again.";
  switch (result) {
    case results.asExpected:
      return slot === null ? "It wants a name before it counts." : "Go on; the row below the grid signs for it.";
    case results.differs:
      return `${stop}Raise a snag: who puts it right, by when. What was found first stays; the retest goes into the snag.${slot === null ? "" : ` ${own}`}`;
    case results.checkAgain:
      return `What is expected has changed since: it was ${expectedBefore}. Look again, and write your name under Rechecked by.`;
    case results.needsSecondName:
      return `${stop}Somebody else looks at it too, and writes another name as witness.`;
    case results.compareByEye:
      return `${stop}Look at both: is it what is expected${expected === "" ? "" : ` (${expected})`}? Type it as it is written there, or raise a snag and have it accepted by name.`;
    case results.waived:
    case results.notApplicable:
      return slot === null ? "It wants a name and a reason in the note." : own;
  }
}
