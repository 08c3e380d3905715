import { lacksLimit, parseExpectation, type RecordRule } from "../../../../src/planning/commissioning/procedure/expectation";

const parse = (record: string, expect: string, tolerance: number | null = null, tolerancePercent: number | null = null, bound: RecordRule["bound"] = "") =>
  parseExpectation({ record, tolerance, tolerancePercent, bound }, expect, "Step X-1");

describe("what a step expects", () => {
  const range = (least: number, most: number) => ({ by: "range", least, most });
  const text = (wanted: string) => ({ by: "text", text: wanted });
  const address = (canonical: string, full: string) => ({ by: "address", canonical, full });

  test.each([
    ["a number", "number", "48", null, null, "48", range(48, 48)],
    ["a number with a tolerance in per cent", "number", "48", null, 5, "48 ±5%", range(45.6, 50.4)],
    ["a negative number with a tolerance in per cent", "number", "-48", null, 5, "-48 ±5%", range(-50.4, -45.6)],
    ["a number with a plain tolerance", "number", "0.3", 0.1, null, "0.3 ±0.1", range(0.2, 0.4)],
    ["a number with negative tolerances, of which the sign says nothing", "number", "10", -1, -5, "10 ±1 or ±5%", range(9, 11)],
    ["a number with tolerances of 0, which are not shown", "number", "10", 0, 0, "10", range(10, 10)],
    ["the wider of two tolerances, the plain one", "number", "100", 5, 2, "100 ±5 or ±2%", range(95, 105)],
    ["the wider of two tolerances, the one in per cent", "number", "100", 2, 5, "100 ±2 or ±5%", range(95, 105)],
    ["a number with a sign and no digit before its point", "number", "+.5", null, null, "+.5", range(0.5, 0.5)],
    ["a size in bytes", "size", "12 TiB", null, null, "12 TiB", range(13_194_139_533_312, 13_194_139_533_312)],
    ["a size with a tolerance in TB", "size", "12 TB", 0.5, null, "12 TB ±0.5", range(11.5e12, 12.5e12)],
    ["a size with a tolerance in per cent", "size", "10 TB", null, 2, "10 TB ±2%", range(9.8e12, 10.2e12)],
    ["an IPv6 address, canonically and in full", "address", "FD00:0:0::1", null, null, "fd00::1", address("fd00::1", "fd00:0000:0000:0000:0000:0000:0000:0001")],
    ["an address that begins with zero groups", "address", "::1", null, null, "::1", address("::1", "0000:0000:0000:0000:0000:0000:0000:0001")],
    ["an address that ends in zero groups", "address", "2001:db8::", null, null, "2001:db8::", address("2001:db8::", "2001:0db8:0000:0000:0000:0000:0000:0000")],
    ["an address without zero groups", "address", "1:2:3:4:5:6:7:8", null, null, "1:2:3:4:5:6:7:8", address("1:2:3:4:5:6:7:8", "0001:0002:0003:0004:0005:0006:0007:0008")],
    ["an IPv4 address", "address", "192.0.2.1", null, null, "192.0.2.1", address("192.0.2.1", "192.0.2.1")],
    ["a date as the day of the sheet", "date", "2026-05-31", null, null, "2026-05-31", range(46_173, 46_173)],
    ["a text without regard to case and doubled spaces", "text", "rr-sw1  1", null, null, "rr-sw1  1", text("RR-SW1 1")],
    ["a serial number as a text", "serial", "n-0001", null, null, "n-0001", text("N-0001")],
    ["a choice without regard to case", "choice:Complete|Incomplete", "complete", null, null, "complete", text("COMPLETE")],
    ["nothing, where anything will do", "serial", "", null, null, "", null],
    ["nothing of a number without an expectation, tolerance or not", "number", "", 5, null, "", null],
    ["nothing of a tick, which says in words what is ticked", "tick", "Door closes", null, null, "Door closes", null],
  ])("compares %s", (_, record, expected, tolerance, percent, shown, wanted) => {
    expect(parse(record, expected, tolerance, percent)).toMatchObject({ shown, wanted });
  });

  test.each<[string, string, RecordRule["bound"], number | null, string, boolean[]]>([
    ["a burn-in of 48 hours at least", "number", "at least", null, "at least 48", [false, true, true, true]],
    ["a burn-in of 48 hours at least, give or take two", "number", "at least", 2, "at least 48 ±2", [true, true, true, true]],
    ["48 at most", "number", "at most", null, "at most 48", [true, true, false, false]],
    ["48 exactly, said outright", "number", "=", null, "48", [false, true, false, false]],
  ])("takes 47, 48, 49 and 72 against %s as it should", (_, record, bound, tolerance, shown, takes) => {
    const { wanted, shown: said } = parse(record, "48", tolerance, null, bound);
    expect(said).toBe(shown);
    expect([47, 48, 49, 72].map((value) => wanted?.by === "range" && value >= wanted.least && value <= wanted.most)).toEqual(takes);
  });

  test.each(["at least", "at most"] as const)("lets nothing pass %s a figure that nobody planned, and says that it is agreed first", (bound) => {
    const expectation = parse("number", "", null, null, bound);
    const { wanted, shown } = expectation;
    expect([shown, lacksLimit(expectation)]).toEqual([`${bound} (not planned): agree it first`, true]);
    expect([-1e9, 0, 24, 1e9].filter((value) => wanted === null || (wanted.by === "range" && value >= wanted.least && value <= wanted.most))).toEqual([]);
    expect([parse("number", "24", null, null, bound), parse("number", "")].map(lacksLimit)).toEqual([false, false]);
  });

  test("knows a limit on one side of sizes and dates, and of nothing else", () => {
    expect(parse("size", "10 TB", null, null, "at least")).toMatchObject({ shown: "at least 10 TB", wanted: { least: 10e12 } });
    expect(parse("date", "2026-05-31", null, null, "at most")).toMatchObject({ shown: "at most 2026-05-31", wanted: { most: 46_173 } });
    expect(() => parse("text", "firmware 4", null, null, "at least")).toThrow("Step X-1 asks for at least of a text. Write = or nothing under Bound, or record a number, size or date.");
  });

  test.each([
    ["number", "number", []],
    [" Size ", "size", []],
    ["", "tick", []],
    ["  ", "tick", []],
    ["choice: a | b||c", "choice", ["a", "b", "c"]],
    ["CHOICE:yes: at once|no", "choice", ["yes: at once", "no"]],
  ])("reads the record %j as %s", (record, kind, choices) => {
    expect(parse(record, "")).toMatchObject({ kind, choices });
  });

  test.each([
    ["a number in words", "number", "many", 'Step X-1 expects "many", which is not a number. Write digits, such as 42 or 0.5.'],
    ["a number with a unit", "number", "4 m", 'Step X-1 expects "4 m", which is not a number. Write digits, such as 42 or 0.5.'],
    ["a decimal comma", "number", "0,95", 'Step X-1 "0,95" has a comma. Write 0.95.'],
    ["a point alone", "number", ".", 'Step X-1 expects ".", which is not a number. Write digits, such as 42 or 0.5.'],
    ["an address that is none", "address", "10.0.0.256", 'Step X-1 expects "10.0.0.256", which is no address. Mend it in the plan.'],
    ["a date in another order", "date", "31.5.2026", 'Step X-1 expects "31.5.2026", which is no date. Write it as 2026-05-31.'],
    ["a day that no month has", "date", "2026-02-31", 'Step X-1 expects "2026-02-31", which is no date. Write it as 2026-05-31.'],
    ["a choice that is not offered", "choice:a|b", "c", 'Step X-1 expects "c", which is none of its choices. Write a or b.'],
    ["a choice of one", "choice:a", "", 'Step X-1 offers "choice:a". Write at least two choices, such as choice:Complete|Incomplete.'],
    ["a choice of nothing", "choice", "", 'Step X-1 offers "choice". Write at least two choices, such as choice:Complete|Incomplete.'],
    ["a choice with a comma", "choice:a|b, c", "", 'Step X-1 offers "b, c", which holds a comma. Write it without one.'],
    ["a kind nobody knows", "picture", "", 'Step X-1 records "picture". Write tick, text, number, size, address, serial, date or choice:a|b.'],
  ])("refuses %s", (_, record, expected, sentence) => {
    expect(() => parse(record, expected)).toThrow(sentence);
  });

  test("refuses a choice that is not offered in at most 160 characters, however many there are", () => {
    const choices = Array.from({ length: 40 }, (_, index) => `choice number ${index}`);
    expect(() => parse(`choice:${choices.join("|")}`, "none")).toThrow(/^(?=.{140,160}$).* or…$/);
  });
});
