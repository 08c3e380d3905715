import type { Expectation } from "../procedure";
import { letter, type TabColumn } from "./tab-columns";

/** Rows of a block on the sheet, counted from 0, both ends included. */
export interface RowSpan {
  readonly first: number;
  readonly last: number;
}

/** What the formulas of a step's row answer while nothing stands in Found and the tab has no snag. */
export const untouchedStep = { result: "", compares: "", retest: "", retestCompares: "", settled: 0 } as const;

/** What the formulas of a blank row for snags answer. */
export const untouchedSnag = { stepId: "", rule: "", low: "", high: 0, plannedUnit: "" } as const;

/** Names a column of a block as formulas do: `$H$12:$H$40`. */
export function spanOf(column: TabColumn, { first, last }: RowSpan): string {
  return `$${letter[column]}$${first + 1}:$${letter[column]}$${last + 1}`;
}

/** What an accepted snag hands to its step in place of a retest. */
const accepted = "~accepted";

/**
 * Writes the formulas of a step's row. All are native and look at their own sheet only.
 *
 * `compares` and `retestCompares` say yes, no or eye of what stands in Found and in the step's last snag, once that is closed.
 */
export function stepFormulas(row: number, expectation: Expectation, sign: string, snags: RowSpan): Readonly<Record<keyof typeof untouchedStep, string>> {
  const cell = (column: TabColumn): string => `$${letter[column]}${row + 1}`;
  const [found, was, by, second, note] = [cell("found"), cell("was"), cell("by"), cell("second"), cell("note")];
  const oneName = sign === "two" ? `OR(TRIM(${second})="",UPPER(TRIM(${second}))=UPPER(TRIM(${by})))` : "FALSE";
  const result = [
    `=IF(ISERROR(${found}),"Differs"`,
    `IF(${found}="",""`,
    `IF(${found}="Not applicable","Not applicable"`,
    `IF(OR(${found}="Waived",${cell("retest")}="${accepted}"),"Waived"`,
    `IF(AND(${was}<>"",${cell("seenAgain")}=""),"Check again"`,
    `IF(OR(${cell("compares")}="yes",${cell("retestCompares")}="yes"),IF(${oneName},"Needs a second name","As expected")`,
    `IF(${cell("compares")}="eye","Compare by eye","Differs")))))))`,
  ].join(",");
  const named = sign === "none" ? "TRUE" : `TRIM(${by})<>""`;
  const settled = `=IF(OR(AND(${cell("result")}="As expected",${named}),AND(OR(${cell("result")}="Waived",${cell("result")}="Not applicable"),OR(${cell("retest")}="${accepted}",AND(TRIM(${by})<>"",TRIM(${note})<>"")))),1,0)`;
  return {
    result,
    compares: `=IF(ISERROR(${found}),"no",IF(${found}="","",${comparison(expectation, found, row)}))`,
    retest: `=IFERROR(INDEX(${spanOf("low", snags)},MATCH(${cell("no")}&"#1",${spanOf("rule", snags)},0))&"","")`,
    retestCompares: `=IF(OR(${cell("retest")}="",${cell("retest")}="${accepted}"),"",${comparison(expectation, cell("retest"), row)})`,
    settled,
  };
}

function comparison({ kind, low }: Expectation, found: string, row: number): string {
  const [least, most] = [`$${letter.low}${row + 1}`, `$${letter.high}${row + 1}`];
  const within = (value: string): string => `IFERROR(IF(AND(${value}>=${least},${value}<=${most}),"yes","no"),"no")`;
  switch (kind) {
    case "tick":
      return `IF(OR(UPPER(${found})="YES",UPPER(${found})="TRUE",UPPER(${found})="X"),"yes","no")`;
    case "number":
      return low === null ? `IF(ISNUMBER(VALUE(${found})),"yes","no")`.replace(/^/, "IFERROR(").concat(',"no")') : within(`VALUE(${found})`);
    case "size": {
      const unit = `$${letter.unit}${row + 1}`;
      const bytes = `ROUND(VALUE(${found})*IF(${unit}="TB",1000000000000,IF(${unit}="TiB",1099511627776,1)),0)`;
      const known = `OR(${unit}="TB",${unit}="TiB",${unit}="bytes")`;
      return `IF(${known},${low === null ? `IFERROR(IF(${bytes}>=0,"yes","no"),"no")` : within(bytes)},"eye")`;
    }
    case "date":
      return low === null ? `IFERROR(IF(VALUE(${found})>0,"yes","no"),"no")` : within(`INT(VALUE(${found}))`);
    case "address":
      return low === null ? '"yes"' : addressComparison(found, least, most);
    default:
      return low === null ? '"yes"' : `IF(UPPER(TRIM(${found}))=${least},"yes","no")`;
  }
}

/**
 * Compares an address that is spelt canonically (RFC 5952) or in full; another one differs, unless it is spelt otherwise: with a leading
 * zero in a group, or with zero groups that the canonical form would shorten. Those are left to the eye.
 */
function addressComparison(found: string, canonical: string, full: string): string {
  const typed = `LOWER(TRIM(${found}))`;
  // Every group stands between colons of its own, and a group of one zero becomes z: what still begins with 0 has a leading zero.
  const groups = `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(":"&${typed}&":",".",":"),":","::"),":0:",":z:")`;
  const leadingZero = `ISNUMBER(FIND(":0",${groups}))`;
  const longZeros = `AND(ISNUMBER(FIND(":",${typed})),ISNUMBER(FIND(":z::z:",${groups})))`;
  return `IF(OR(${typed}=${canonical},${typed}=${full}),"yes",IF(AND(LEN(${typed})<>39,OR(${leadingZero},${longZeros})),"eye","no"))`;
}

/** Writes the formulas of a row for snags: which step it is about, and what its closing hands to that step. */
export function snagFormulas(row: number, steps: RowSpan, snags: RowSpan): Readonly<Record<keyof typeof untouchedSnag, string>> {
  const cell = (column: TabColumn): string => `$${letter[column]}${row + 1}`;
  const [about, closed] = [cell("no"), cell("result")];
  const below = `$${letter.no}${row + 1}:$${letter.no}$${snags.last + 1}`;
  const lookUp = (column: TabColumn): string => `=IF(${about}="","",IFERROR(INDEX(${spanOf(column, steps)},MATCH(${about},${spanOf("no", steps)},0)),""))`;
  return {
    stepId: lookUp("stepId"),
    // The last snag about a step is the one with no further one below it.
    rule: `=IF(${about}="","",${about}&"#"&COUNTIF(${below},${about}))`,
    low: `=IF(${closed}="Closed",${cell("found")}&"",IF(AND(${closed}="Accepted",TRIM(${cell("by")})<>""),"${accepted}",""))`,
    high: `=IF(AND(${about}="",${cell("step")}="",${cell("found")}=""),0,IF(AND(OR(${closed}="Closed",${closed}="Accepted"),TRIM(${cell("by")})<>""),0,1))`,
    plannedUnit: lookUp("key"),
  };
}

/** How many sealings a tab is made for. */
export const mostSeals = 40;

/** Writes the formulas of the summary: how far the job is, in the cells above the steps. */
export function progressFormulas(steps: RowSpan, snags: RowSpan, firstSeal: number): Readonly<Record<"next" | "done" | "open" | "differ" | "again" | "second" | "eye" | "snags" | "minutes" | "seal" | "line", string>> {
  const seals = { first: firstSeal, last: firstSeal + mostSeals - 1 };
  const sealCount = `COUNTA(${spanOf("subject", seals)})`;
  const results = (text: string): string => `COUNTIF(${spanOf("result", steps)},"${text}")`;
  const done = `SUM(${spanOf("settled", steps)})`;
  const all = `COUNT(${spanOf("no", steps)})`;
  const open = `COUNTIFS(${spanOf("rule", steps)},"required*",${spanOf("settled", steps)},0)`;
  const snagsOpen = `SUM(${spanOf("high", snags)})`;
  return {
    next: `=IFERROR("No. "&INDEX(${spanOf("no", steps)},MATCH(0,${spanOf("settled", steps)},0))&" "&INDEX(${spanOf("stepId", steps)},MATCH(0,${spanOf("settled", steps)},0)),"none")`,
    done: `=${done}&" of "&${all}`,
    open: `=${open}`,
    differ: `=${results("Differs")}`,
    again: `=${results("Check again")}`,
    second: `=${results("Needs a second name")}`,
    eye: `=${results("Compare by eye")}`,
    snags: `=${snagsOpen}`,
    minutes: `=SUMIFS(${spanOf("minutes", steps)},${spanOf("settled", steps)},0)`,
    seal: `=IF(${sealCount}=0,"not sealed",IF(INDEX(${spanOf("expected", seals)},${sealCount})="",INDEX(${spanOf("step", seals)},${sealCount}),"reopened"))`,
    line: `=${done}&" of "&${all}&" steps done, "&${open}&" required open, "&${results("Differs")}&" differ, "&${results("Check again")}&" to see again, "&${snagsOpen}&" snags open"`,
  };
}
