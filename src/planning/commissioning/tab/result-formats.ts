import type { Area, ConditionalFormat } from "../../../sheet";
import { results, type Result } from "../record";
import { gridWord, requiredWord } from "./rule-cell";
import { snagColumns } from "./snag-columns";
import { at, letter, type TabColumn } from "./tab-columns";
import type { RowSpan } from "./tab-formulas";
import type { TabStyle } from "./tab-styles";

/** How each result looks. */
const looks = {
  [results.asExpected]: "isExpected",
  [results.differs]: "isDiffering",
  [results.checkAgain]: "isWaiting",
  [results.needsSecondName]: "isWaiting",
  [results.compareByEye]: "isWaiting",
  [results.waived]: "isSetAside",
  [results.notApplicable]: "isSetAside",
} as const satisfies Record<Result, TabStyle>;

/** Plans how cells look by what stands in their row: the results, and what is still to be typed. */
export function resultFormats(steps: RowSpan, snags: RowSpan): ConditionalFormat[] {
  const area = (column: TabColumn, { first, last }: RowSpan): Area => ({ row: first, column: at[column], rows: last - first + 1, columns: 1 });
  const cell = (column: TabColumn, { first }: RowSpan = steps): string => `$${letter[column]}${first + 1}`;
  const looksAs = (style: TabStyle): string => {
    const words = Object.values(results).filter((result) => looks[result] === style);
    // The row of a grid names a column behind its result.
    const tests = words.map((result) => `LEFT(${cell("result")},${result.length})="${result}"`);
    return tests.length === 1 ? tests[0]! : `OR(${tests.join(",")})`;
  };
  // In the row of a grid other things stand in these columns.
  const isList = `ISERROR(FIND(" ${gridWord} ",${cell("rule")}))`;
  const missing = (column: TabColumn, where: string): ConditionalFormat => ({ area: area(column, steps), formula: `=AND(${isList},${where})`, style: "isMissing" });
  return [
    ...[...new Set(Object.values(looks))].map((style) => ({ area: area("result", steps), formula: `=${looksAs(style)}`, style })),
    missing("by", `${cell("result")}<>"",${cell("by")}="",LEFT(${cell("rule")},${requiredWord.length})="${requiredWord}"`),
    missing("note", `${looksAs("isSetAside")},${cell("note")}="",${cell("retest")}=""`),
    // A row of labels has something there too, but no rule.
    missing("recheckedBy", `${cell("expectedBefore")}<>"",${cell("recheckedBy")}="",${cell("rule")}<>""`),
    { area: area(snagColumns.closed, snags), formula: `=${cell(snagColumns.isOpen, snags)}=1`, style: "isWaiting" },
  ];
}
