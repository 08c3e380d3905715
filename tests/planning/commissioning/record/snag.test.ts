import { isClosed, isSnagClosed, snagEndOf } from "../../../../src/planning/commissioning/record";
import { sealLine, snagOf } from "../../../support/job-records";

describe("a snag", () => {
  test.each([
    ["Closed", "AB", "Closed", true],
    ["Accepted", "AB", "Accepted", true],
    ["Closed", null, "Closed", false],
    ["Accepted", "  ", "Accepted", false],
    ["closed", "AB", "Closed", true],
    ["Close", "AB", null, false],
    [null, "AB", null, false],
  ])("that says %j by %j ends as %j, and is closed: %j", (closed, by, end, isDone) => {
    const snag = snagOf({ typed: { closed, by } });
    expect(snagEndOf(snag)).toBe(end);
    expect(isSnagClosed(snag)).toBe(isDone);
    expect(isSnagClosed({ ...snag, errors: ["note"] })).toBe(false);
  });
});

describe("a tab is closed", () => {
  test.each([
    ["never sealed", [], false],
    ["sealed", [sealLine()], true],
    ["reopened", [sealLine({ typed: { reopened: "2026-03-10" } })], false],
    ["sealed again after it was reopened", [sealLine({ typed: { reopened: "2026-03-10" } }), sealLine()], true],
    ["reopened after an earlier seal", [sealLine(), sealLine({ typed: { reopened: "2026-03-10" } })], false],
    ["without the day of the sealing", [sealLine({ typed: { sealed: null } })], false],
    ["without a code", [sealLine({ typed: { code: null } })], false],
  ])("or not: %s", (_, seals, closed) => {
    expect(isClosed({ seals })).toBe(closed);
  });
});
