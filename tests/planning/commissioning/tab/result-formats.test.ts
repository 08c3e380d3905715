import { resultFormats } from "../../../../src/planning/commissioning/tab/result-formats";

test("a cell looks like what Result says, and stands out where something is still to be typed", () => {
  const formats = resultFormats({ first: 4, last: 15 }, { first: 20, last: 29 });
  expect(formats.map(({ area: { row, column, rows, columns }, style, formula }) => [row, column, rows, columns, style, formula])).toEqual([
    [4, 4, 12, 1, "isExpected", '=LEFT($E5,11)="As expected"'],
    [4, 4, 12, 1, "isDiffering", '=LEFT($E5,7)="Differs"'],
    [4, 4, 12, 1, "isWaiting", '=OR(LEFT($E5,11)="Check again",LEFT($E5,19)="Needs a second name",LEFT($E5,14)="Compare by eye")'],
    [4, 4, 12, 1, "isSetAside", '=OR(LEFT($E5,6)="Waived",LEFT($E5,14)="Not applicable")'],
    // A name is missing beside a result of a required step, a reason beside a waiver that no snag gave, a look beside a changed expectation.
    [4, 10, 12, 1, "isMissing", '=AND(ISERROR(FIND(" grid ",$P5)),$E5<>"",$K5="",LEFT($P5,8)="required")'],
    [4, 13, 12, 1, "isMissing", '=AND(ISERROR(FIND(" grid ",$P5)),OR(LEFT($E5,6)="Waived",LEFT($E5,14)="Not applicable"),$N5="",$U5="")'],
    [4, 9, 12, 1, "isMissing", '=AND(ISERROR(FIND(" grid ",$P5)),$I5<>"",$J5="",$P5<>"")'],
    [20, 8, 10, 1, "isWaiting", "=$R21=1"],
  ]);
});
