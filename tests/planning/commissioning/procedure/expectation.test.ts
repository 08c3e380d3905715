import { parseExpectation } from "../../../../src/planning/commissioning/procedure/expectation";

const parse = (record: string, expect: string, tolerance: number | null = null, tolerancePercent: number | null = null) => parseExpectation({ record, tolerance, tolerancePercent }, expect, "Step X-1");

describe("what a step expects", () => {
  test.each([
    ["a number with a tolerance in per cent", "number", "48", null, 5, { low: 45.6, high: 50.4, shown: "48 ±5%" }],
    ["a number with a plain tolerance", "number", "0.3", 0.1, null, { low: 0.2, high: 0.4, shown: "0.3 ±0.1" }],
    ["the wider of two tolerances", "number", "100", 5, 2, { low: 95, high: 105, shown: "100 ±5 or ±2%" }],
    ["a size in bytes", "size", "12 TiB", null, null, { low: 13_194_139_533_312, high: 13_194_139_533_312, shown: "12 TiB" }],
    ["an IPv6 address, canonically and in full", "address", "FD00:0:0::1", null, null, { low: "fd00::1", high: "fd00:0000:0000:0000:0000:0000:0000:0001", shown: "fd00::1" }],
    ["an address that begins with zero groups", "address", "::1", null, null, { low: "::1", high: "0000:0000:0000:0000:0000:0000:0000:0001" }],
    ["an IPv4 address", "address", "192.0.2.1", null, null, { low: "192.0.2.1", high: "192.0.2.1" }],
    ["a date as the day of the sheet", "date", "2026-05-31", null, null, { low: 46_173, high: 46_173 }],
    ["a text without regard to case and doubled spaces", "text", "rr-sw1  1", null, null, { low: "RR-SW1 1" }],
    ["a choice", "choice:Complete|Incomplete", "Complete", null, null, { kind: "choice", choices: ["Complete", "Incomplete"], low: "COMPLETE" }],
    ["anything, where nothing is expected", "serial", "", null, null, { low: null, high: null, shown: "" }],
    ["a tick in words", "tick", "Door closes", null, null, { low: null, shown: "Door closes" }],
  ])("compares %s", (_, record, expected, tolerance, percent, result) => {
    expect(parse(record, expected, tolerance, percent)).toMatchObject(result);
  });

  test.each([
    ["a number in words", "number", "many", 'Step X-1 expects "many", which is not a number'],
    ["an address that is none", "address", "10.0.0.256", 'expects "10.0.0.256", which is no address'],
    ["a date that is none", "date", "31.5.2026", "which is no date"],
    ["a choice that is not offered", "choice:a|b", "c", "none of its choices"],
    ["a choice of one", "choice:a", "", "at least two choices"],
    ["a choice with a comma", "choice:a|b, c", "", "holds a comma"],
    ["a kind nobody knows", "picture", "", 'records "picture"'],
  ])("refuses %s", (_, record, expected, reason) => {
    expect(() => parse(record, expected)).toThrow(reason);
  });
});
