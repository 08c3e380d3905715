import { Problem } from "../../../src/planning/text/problem";
import { hostProblem } from "../../../src/workbook/office/host-problem";
import { Refusal } from "../../support/host-workbook/host-object";

describe("hostProblem", () => {
  test.each([
    "AccessDenied", "ActivityLimitReached", "Conflict", "InactiveWorkbook", "InvalidOperationInCellEditMode", "InvalidSelection", "ItemAlreadyExists", "ItemNotFound",
    "MergedRangeConflict", "NonBlankCellOffSheet", "OperationCellsExceedLimit", "PivotTableRangeConflict", "RequestAborted", "RequestPayloadSizeLimitExceeded",
    "ResponsePayloadSizeLimitExceeded", "ServiceNotAvailable", "TableOverlap", "TooManyRequests", "UnsupportedOperation", "SomethingNew", "x".repeat(300),
  ])("says something a person can act on about %.40s", (code) => {
    const problem = hostProblem(new Refusal(code)) as Problem;
    expect(problem).toBeInstanceOf(Problem);
    expect(problem.sentence.length).toBeLessThanOrEqual(160);
    expect(problem.sentence).toMatch(/\.$/);
  });

  test("leaves a problem and a defect as they are", () => {
    for (const thrown of [new Problem("invalid", "a", 1, "b"), new TypeError("x"), "text", null]) expect(hostProblem(thrown)).toBe(thrown);
  });
});
