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
  const reopened = { reopened: "2026-03-10", reopenedBy: "EF", reason: "A drive was changed" };
  test.each([
    ["never sealed", [], false],
    ["sealed", [sealLine()], true],
    ["reopened", [sealLine({ typed: reopened })], false],
    ["sealed again after it was reopened", [sealLine({ typed: reopened }), sealLine()], true],
    ["reopened after an earlier seal", [sealLine(), sealLine({ typed: reopened })], false],
    ["with a day beside the seal, but neither name nor reason", [sealLine({ typed: { reopened: "2026-03-10" } })], true],
    ["with a day and a name, but no reason", [sealLine({ typed: { ...reopened, reason: null } })], true],
    ["with a day and a reason, but no name", [sealLine({ typed: { ...reopened, reopenedBy: null } })], true],
    ["with a name and a reason, but no day", [sealLine({ typed: { ...reopened, reopened: null } })], true],
    ["whose code or day somebody emptied", [sealLine({ typed: { code: null, sealed: null } })], true],
  ])("or not: %s", (_, seals, closed) => {
    expect(isClosed({ seals })).toBe(closed);
  });
});
