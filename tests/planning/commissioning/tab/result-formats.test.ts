import { resultFormats } from "../../../../src/planning/commissioning/tab/result-formats";

test("a cell looks like what Result says, and stands out where something is still to be typed", () => {
  const formats = resultFormats({ first: 4, last: 15 }, { first: 20, last: 29 });
  expect(formats.map(({ area: { row, column, rows, columns }, style, formula }) => [row, column, rows, columns, style, formula])).toEqual([
    [4, 4, 12, 1, "isExpected", '=$E5="As expected"'],
    [4, 4, 12, 1, "isDiffering", '=$E5="Differs"'],
    [4, 4, 12, 1, "isWaiting", '=OR($E5="Check again",$E5="Needs a second name",$E5="Compare by eye")'],
    [4, 4, 12, 1, "isSetAside", '=OR($E5="Waived",$E5="Not applicable")'],
    // A name is missing beside a result of a required step, a reason beside a waiver that no snag gave, a look beside a changed expectation.
    [4, 10, 12, 1, "isMissing", '=AND($E5<>"",$K5="",LEFT($P5,8)="required")'],
    [4, 13, 12, 1, "isMissing", '=AND(OR($E5="Waived",$E5="Not applicable"),$N5="",$U5="")'],
    [4, 9, 12, 1, "isMissing", '=AND($I5<>"",$J5="")'],
    [20, 8, 10, 1, "isWaiting", "=$R21=1"],
  ]);
});
