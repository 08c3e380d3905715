import { isClosed, isSnagClosed, snagEndOf, snagId, snagName, snagNumber, withIds } from "../../../../src/planning/commissioning/record";
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

describe("the id of a snag", () => {
  test.each([[1, "S-1"], [123_456_789, "S-123456789"]])("of number %i is %s", (number, id) => {
    expect([snagId(number), snagNumber(id)]).toEqual([id, number]);
  });

  test.each(["", "S-0", "S-01", "s-1", "S-1 ", "S-1.5", "S--1", "S-1234567890", "S-１"])("is no %j", (text) => {
    expect(snagNumber(text)).toBeNull();
  });

  test("names it in a sentence; one without is named by its row", () => {
    expect([snagName({ id: "S-3", row: 20 }), snagName({ id: "", row: 20 })]).toEqual(["snag S-3", "the snag in row 21"]);
  });

  test("is kept by the first that has it, and given anew to copies and to those without one", () => {
    const idsOf = (ids: readonly string[], used: number) => {
      const given = withIds(ids.map((id) => snagOf({ id })), used);
      return [given.snags.map(({ id }) => id), given.used];
    };
    expect(idsOf([], 4)).toEqual([[], 4]);
    expect(idsOf(["S-2", "", "S-2", "S-1", "S-2"], 0)).toEqual([["S-2", "S-3", "S-4", "S-1", "S-5"], 5]);
    expect(idsOf(["S-2", "S-2"], 9)).toEqual([["S-2", "S-10"], 10]);
  });
});
