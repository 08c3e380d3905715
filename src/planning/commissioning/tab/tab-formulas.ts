import type { Sign } from "../job";
import type { Expectation } from "../procedure";
import { acceptedRetest, results, slotStates, snagEnds, snagFields, type Result, type SnagAnswers, type StepAnswers } from "../record";
import { bare, isNumber, isSame, kindsOnTab, type ComparedCells } from "./kind-on-tab";
import { requiredWord } from "./rule-cell";
import { snagColumns } from "./snag-columns";
import { letter, sealColumns, type SlotColumns, type TabColumn } from "./tab-columns";

/** Rows of a block on the sheet, counted from 0, both ends included. */
export interface RowSpan {
  readonly first: number;
  readonly last: number;
}

/** What the formulas of a blank row for snags answer. */
export const untouchedSnag = { stepId: "", place: "", retest: "", isOpen: 0, key: "" } as const satisfies SnagAnswers;

/** Names the cells of a row as formulas do: `$H12`. */
function cellsIn(row: number): (column: TabColumn) => string {
  return (column) => `$${letter[column]}${row + 1}`;
}

/** Names a column of a block as formulas do: `$H$12:$H$40`. */
function spanOf(column: TabColumn, { first, last }: RowSpan): string {
  return `$${letter[column]}$${first + 1}:$${letter[column]}$${last + 1}`;
}

/**
 * Writes the formulas of a step's row. All are native, look at their own sheet only, and decide only what every spreadsheet program decides
 * alike: `answersOf` says in the language of planning what they must answer.
 *
 * `compares` and `retestCompares` say yes, no or eye of what stands in Found and in the step's last snag, once that is closed.
 */
export function stepFormulas(row: number, { kind, wanted }: Expectation, sign: Sign, snags: RowSpan): Readonly<Record<keyof StepAnswers, string>> {
  const cell = cellsIn(row);
  const [found, expectedBefore, by, witness, note, retest, result] = [cell("found"), cell("expectedBefore"), cell("by"), cell("witness"), cell("note"), cell("retest"), cell("result")];
  const compared = (value: string): ComparedCells => {
    return { found: value, unit: cell("unit"), expected: cell("expected"), low: cell("low"), high: cell("high"), isFree: wanted === null };
  };
  const { comparison } = kindsOnTab[kind];
  const oneName = sign === "two" ? `OR(${isEmpty(witness)},${isSame(bare(witness), bare(by))})` : "FALSE";
  const steps = [
    `=IF(ISERROR(${[found, cell("unit"), cell("recheckedBy"), by, witness, note].join("&")}),"${results.differs}"`,
    `IF(${isEmpty(found)},""`,
    `IF(${found}="${results.notApplicable}","${results.notApplicable}"`,
    `IF(OR(${found}="${results.waived}",${retest}="${acceptedRetest}"),"${results.waived}"`,
    `IF(AND(LEN(${expectedBefore})>0,${isEmpty(cell("recheckedBy"))}),"${results.checkAgain}"`,
    `IF(OR(${cell("compares")}="yes",${cell("retestCompares")}="yes"),IF(${oneName},"${results.needsSecondName}","${results.asExpected}")`,
    `IF(OR(${cell("compares")}="eye",${cell("retestCompares")}="eye"),"${results.compareByEye}","${results.differs}")))))))`,
  ];
  const isSigned = sign === "none" ? "TRUE" : `LEN(${bare(by)})>0`;
  const isSetAside = `OR(${result}="${results.waived}",${result}="${results.notApplicable}")`;
  const isReasoned = `OR(${retest}="${acceptedRetest}",AND(LEN(${bare(by)})>0,LEN(${bare(note)})>0))`;
  return {
    result: steps.join(","),
    compares: `=IFERROR(IF(${isEmpty(found)},"",${comparison(compared(found))}),"no")`,
    retest: `=IFERROR(INDEX(${spanOf(snagColumns.retest, snags)},MATCH(${cell("no")}&"#1",${spanOf(snagColumns.place, snags)},0)),"")`,
    retestCompares: `=IFERROR(IF(OR(LEN(${retest})=0,${retest}="${acceptedRetest}"),"",${comparison(compared(retest))}),"no")`,
    settled: `=IFERROR(IF(OR(AND(${result}="${results.asExpected}",${isSigned}),AND(${isSetAside},${isReasoned})),1,0),0)`,
  };
}

/** A step of a grid as the formulas of its row see it. */
export interface FormulaSlot {
  readonly expectation: Pick<Expectation, "kind" | "wanted">;
  /** What its columns are called. */
  readonly name: string;
  readonly columns: SlotColumns;
}

/**
 * Writes the formulas of a grid's row: what each slot says of what stands in its Found, by its column, and the worst of it as the result of
 * the row. `answersOf` and `rowResultOf` say in the language of planning what they must answer.
 */
export function gridFormulas(row: number, slots: readonly FormulaSlot[]): Readonly<Partial<Record<TabColumn, string>>> {
  const cell = cellsIn(row);
  const stateOf = ({ expectation: { kind, wanted }, columns }: FormulaSlot): string => {
    const found = cell(columns.found);
    const compared = { found, unit: '""', expected: cell(columns.expected), low: cell(columns.low), high: cell(columns.high), isFree: wanted === null };
    const instead = [results.notApplicable, results.waived].map((word) => `IF(${found}="${word}","${word}",`).join("");
    return `=IFERROR(IF(${isEmpty(found)},"",${instead}${kindsOnTab[kind].comparison(compared)}))),"no")`;
  };
  const states = slots.map(({ columns, name }) => ({ state: cell(columns.compares), name: slots.length === 1 ? "" : `: ${name.replaceAll('"', '""')}` }));
  const worst = slotStates.flatMap(([word, result]) => states.map(({ state, name }) => `IF(${state}="${word}","${result}${name}",`));
  const isOpen = `OR(${states.map(({ state }) => `LEN(${state})=0`).join(",")})`;
  return {
    ...Object.fromEntries(slots.map((slot) => [slot.columns.compares, stateOf(slot)])),
    result: `=${worst.join("")}IF(${isOpen},"","${results.asExpected}")${")".repeat(worst.length)}`,
    settled: `=IFERROR(IF(AND(${states.map(({ state }) => `${state}="yes"`).join(",")}),1,0),0)`,
  };
}

/** Tells whether nothing but spaces stands in a cell. A 0 does. */
function isEmpty(cell: string): string {
  return `LEN(${bare(cell)})=0`;
}

/** Writes the formulas of a row for snags: which step it is about, and what its closing hands to that step. */
export function snagFormulas(row: number, steps: RowSpan, snags: RowSpan): Readonly<Record<keyof SnagAnswers, string>> {
  const cell = cellsIn(row);
  const { about, closed, by, foundAgain } = snagColumns;
  const [number, end] = [cell(about), cell(closed)];
  // The row below the last one is blank: a snag there has none below it.
  const below = `$${letter[about]}${row + 2}:$${letter[about]}$${snags.last + 2}`;
  const ofStep = (column: TabColumn): string => `=IF(${isNumber(number)},IFERROR(INDEX(${spanOf(column, steps)},MATCH(${number},${spanOf("no", steps)},0)),""),"")`;
  const isEnded = `OR(${end}="${snagEnds.closed}",${end}="${snagEnds.accepted}")`;
  const isBlank = isEmpty(snagFields.map((field) => cell(snagColumns[field])).join("&"));
  return {
    stepId: ofStep("stepId"),
    // The last snag about a step is the one with no further one below it.
    place: `=IF(${isNumber(number)},${number}&IF(ISNUMBER(MATCH(${number},${below},0)),"","#1"),"")`,
    retest: [
      `=IFERROR(IF(${end}="${snagEnds.closed}",IF(${isEmpty(cell(foundAgain))},"",${cell(foundAgain)})`,
      `IF(AND(${end}="${snagEnds.accepted}",${cell(snagColumns.isOpen)}=0),"${acceptedRetest}","")),"")`,
    ].join(","),
    isOpen: `=IFERROR(IF(${isBlank},0,IF(AND(${isEnded},LEN(${bare(cell(by))})>0),0,1)),1)`,
    key: ofStep("key"),
  };
}

/** How many sealings a tab is made for. */
const mostSeals = 40;

/** What the summary counts: how far the job is. */
export type ProgressFormulas = Readonly<Record<"next" | "done" | "open" | "differ" | "again" | "secondName" | "eye" | "snags" | "minutes" | "seal" | "line", string>>;

/** Writes the formulas of the summary, in the cells above the steps. */
export function progressFormulas(steps: RowSpan, snags: RowSpan, firstSeal: number): ProgressFormulas {
  const seals = { first: firstSeal, last: firstSeal + mostSeals - 1 };
  const sealCount = `COUNTA(${spanOf(sealColumns.by, seals)})`;
  // The row of a grid names a column behind its result, and a rule says more than whether a step is required: programs differ in what a criterion
  // with a wildcard finds, so that the beginnings are compared.
  const begins = (column: TabColumn, word: string): string => `(LEFT(${spanOf(column, steps)},${word.length})="${word}")`;
  const count = (result: Result): string => `SUMPRODUCT(1*${begins("result", result)})`;
  const done = `SUM(${spanOf("settled", steps)})`;
  const all = `COUNT(${spanOf("no", steps)})`;
  const open = `SUMPRODUCT(${begins("rule", requiredWord)}*(${spanOf("settled", steps)}=0))`;
  const snagsOpen = `SUM(${spanOf(snagColumns.isOpen, snags)})`;
  const ofFirstOpen = (column: TabColumn): string => `INDEX(${spanOf(column, steps)},MATCH(0,${spanOf("settled", steps)},0))`;
  const ofLastSeal = (column: TabColumn): string => `INDEX(${spanOf(column, seals)},${sealCount})`;
  return {
    next: `=IFERROR("No. "&${ofFirstOpen("no")}&" "&${ofFirstOpen("stepId")},"none")`,
    done: `=${done}&" of "&${all}`,
    open: `=${open}`,
    differ: `=${count(results.differs)}`,
    again: `=${count(results.checkAgain)}`,
    secondName: `=${count(results.needsSecondName)}`,
    eye: `=${count(results.compareByEye)}`,
    snags: `=${snagsOpen}`,
    minutes: `=SUMIFS(${spanOf("minutes", steps)},${spanOf("settled", steps)},0)`,
    seal: `=IF(${sealCount}=0,"not sealed",IF(${ofLastSeal(sealColumns.reopened)}="",${ofLastSeal(sealColumns.code)},"reopened"))`,
    line: [
      `=${done}&" of "&${all}&" steps done`,
      `"&${open}&" required open`,
      `"&${count(results.differs)}&" differ`,
      `"&${count(results.checkAgain)}&" to see again`,
      `"&${snagsOpen}&" snags open"`,
    ].join(", "),
  };
}
