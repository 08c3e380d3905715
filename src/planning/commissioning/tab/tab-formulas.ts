import type { Sign } from "../job";
import type { Expectation } from "../procedure";
import { results, snagEnds, type Result } from "../record";
import { kindsOnTab, type ComparedCells } from "./kind-on-tab";
import { requiredWord } from "./rule-cell";
import { letter, sealColumns, snagAnswers, snagColumns, type TabColumn } from "./tab-columns";

/** Rows of a block on the sheet, counted from 0, both ends included. */
export interface RowSpan {
  readonly first: number;
  readonly last: number;
}

/** What the formulas of a step's row answer while nothing stands in Found and the tab has no snag. */
export const untouchedStep = { result: "", compares: "", retest: "", retestCompares: "", settled: 0 } as const;

/** What the formulas of a blank row for snags answer. */
export const untouchedSnag = { stepId: "", place: "", retest: "", isOpen: 0, key: "" } as const;

/** Names the cells of a row as formulas do: `$H12`. */
function cellsIn(row: number): (column: TabColumn) => string {
  return (column) => `$${letter[column]}${row + 1}`;
}

/** Names a column of a block as formulas do: `$H$12:$H$40`. */
function spanOf(column: TabColumn, { first, last }: RowSpan): string {
  return `$${letter[column]}$${first + 1}:$${letter[column]}$${last + 1}`;
}

/** What an accepted snag hands to its step in place of a retest. */
const accepted = "~accepted";

/**
 * Writes the formulas of a step's row. All are native and look at their own sheet only.
 *
 * `compares` and `retestCompares` say yes, no or eye of what stands in Found and in the step's last snag, once that is closed.
 */
export function stepFormulas(row: number, { kind, wanted }: Expectation, sign: Sign, snags: RowSpan): Readonly<Record<keyof typeof untouchedStep, string>> {
  const cell = cellsIn(row);
  const [found, was, by, second, note, retest, result] = [cell("found"), cell("was"), cell("by"), cell("second"), cell("note"), cell("retest"), cell("result")];
  const compared = (value: string): ComparedCells => ({ found: value, unit: cell("unit"), low: cell("low"), high: cell("high"), isFree: wanted === null });
  const { comparison } = kindsOnTab[kind];
  const oneName = sign === "two" ? `OR(TRIM(${second})="",UPPER(TRIM(${second}))=UPPER(TRIM(${by})))` : "FALSE";
  const steps = [
    `=IF(ISERROR(${found}),"${results.differs}"`,
    `IF(${found}="",""`,
    `IF(${found}="${results.notApplicable}","${results.notApplicable}"`,
    `IF(OR(${found}="${results.waived}",${retest}="${accepted}"),"${results.waived}"`,
    `IF(AND(${was}<>"",${cell("seenAgain")}=""),"${results.checkAgain}"`,
    `IF(OR(${cell("compares")}="yes",${cell("retestCompares")}="yes"),IF(${oneName},"${results.needsSecondName}","${results.asExpected}")`,
    `IF(${cell("compares")}="eye","${results.compareByEye}","${results.differs}")))))))`,
  ];
  const isSigned = sign === "none" ? "TRUE" : `TRIM(${by})<>""`;
  const isSetAside = `OR(${result}="${results.waived}",${result}="${results.notApplicable}")`;
  const isReasoned = `OR(${retest}="${accepted}",AND(TRIM(${by})<>"",TRIM(${note})<>""))`;
  return {
    result: steps.join(","),
    compares: `=IF(ISERROR(${found}),"no",IF(${found}="","",${comparison(compared(found))}))`,
    retest: `=IFERROR(INDEX(${spanOf(snagAnswers.retest, snags)},MATCH(${cell("no")}&"#1",${spanOf(snagAnswers.place, snags)},0))&"","")`,
    retestCompares: `=IF(OR(${retest}="",${retest}="${accepted}"),"",${comparison(compared(retest))})`,
    settled: `=IF(OR(AND(${result}="${results.asExpected}",${isSigned}),AND(${isSetAside},${isReasoned})),1,0)`,
  };
}

/** Writes the formulas of a row for snags: which step it is about, and what its closing hands to that step. */
export function snagFormulas(row: number, steps: RowSpan, snags: RowSpan): Readonly<Record<keyof typeof untouchedSnag, string>> {
  const cell = cellsIn(row);
  const { about, closed, by, foundWrong, foundAgain } = snagColumns;
  const [number, end] = [cell(about), cell(closed)];
  const below = `$${letter[about]}${row + 1}:$${letter[about]}$${snags.last + 1}`;
  const isNamed = `TRIM(${cell(by)})<>""`;
  const ofStep = (column: TabColumn): string => `=IF(${number}="","",IFERROR(INDEX(${spanOf(column, steps)},MATCH(${number},${spanOf("no", steps)},0)),""))`;
  return {
    stepId: ofStep("stepId"),
    // The last snag about a step is the one with no further one below it.
    place: `=IF(${number}="","",${number}&"#"&COUNTIF(${below},${number}))`,
    retest: `=IF(${end}="${snagEnds.closed}",${cell(foundAgain)}&"",IF(AND(${end}="${snagEnds.accepted}",${isNamed}),"${accepted}",""))`,
    isOpen: `=IF(AND(${number}="",${cell(foundWrong)}="",${cell(foundAgain)}=""),0,IF(AND(OR(${end}="${snagEnds.closed}",${end}="${snagEnds.accepted}"),${isNamed}),0,1))`,
    key: ofStep("key"),
  };
}

/** How many sealings a tab is made for. */
const mostSeals = 40;

/** What the summary counts: how far the job is. */
export type ProgressFormulas = Readonly<Record<"next" | "done" | "open" | "differ" | "again" | "second" | "eye" | "snags" | "minutes" | "seal" | "line", string>>;

/** Writes the formulas of the summary, in the cells above the steps. */
export function progressFormulas(steps: RowSpan, snags: RowSpan, firstSeal: number): ProgressFormulas {
  const seals = { first: firstSeal, last: firstSeal + mostSeals - 1 };
  const sealCount = `COUNTA(${spanOf(sealColumns.by, seals)})`;
  const count = (result: Result): string => `COUNTIF(${spanOf("result", steps)},"${result}")`;
  const done = `SUM(${spanOf("settled", steps)})`;
  const all = `COUNT(${spanOf("no", steps)})`;
  const open = `COUNTIFS(${spanOf("rule", steps)},"${requiredWord}*",${spanOf("settled", steps)},0)`;
  const snagsOpen = `SUM(${spanOf(snagAnswers.isOpen, snags)})`;
  const ofFirstOpen = (column: TabColumn): string => `INDEX(${spanOf(column, steps)},MATCH(0,${spanOf("settled", steps)},0))`;
  const ofLastSeal = (column: TabColumn): string => `INDEX(${spanOf(column, seals)},${sealCount})`;
  return {
    next: `=IFERROR("No. "&${ofFirstOpen("no")}&" "&${ofFirstOpen("stepId")},"none")`,
    done: `=${done}&" of "&${all}`,
    open: `=${open}`,
    differ: `=${count(results.differs)}`,
    again: `=${count(results.checkAgain)}`,
    second: `=${count(results.needsSecondName)}`,
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
