import { iops, movetime, payload, rebuildhours, serialtime, writecost } from "../../src/functions/rates";
import { cellAnswer } from "../support/cell-answer";

describe("an answer in a cell", () => {
  test.each<[string, () => unknown, number]>([
    ["WRITECOST", () => writecost("RAID 6"), 6],
    ["IOPS", () => iops("RAID 10", 9, 150, "50%", 1), 800],
    ["PAYLOAD", () => payload(1, 1), (125 * 1460) / 1538],
    ["PAYLOAD of every option", () => payload(2, 25, 9000, 6, true, true), (50 * 125 * 8928) / 9042],
    ["MOVETIME", () => movetime(3.6, 100), 10],
    ["REBUILDHOURS", () => rebuildhours("RAID 6", 12, 3.6, 100, "25%"), 40],
    ["SERIALTIME", () => serialtime(960, 9600), 1],
  ])("%s", (_name, call, answer) => {
    expect(call()).toBeCloseTo(answer, 10);
  });

  test.each([[undefined], [null], [""]])("optional arguments that are %p mean their defaults", (blank) => {
    expect(payload(1, 1, blank, blank, blank, blank)).toBe(payload(1, 1, 1500, 4, false, false));
    expect(rebuildhours("RAID 6", 12, 4, 100, blank)).toBe(rebuildhours("RAID 6", 12, 4, 100, 1));
    expect(iops("RAID 6", 12, 100, 0.7, blank)).toBe(iops("RAID 6", 12, 100, 0.7, 0));
  });

  test("flags may be TRUE, 1 or text", () => {
    const tagged = payload(1, 1, 1500, 4, false, true);
    for (const yes of [1, "TRUE", "true"]) expect(payload(1, 1, 1500, 4, 0, yes)).toBe(tagged);
  });
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => writecost(10), '#VALUE! scheme is 10, not text. Put the scheme in quotes: "8+2".'],
    [() => iops("RAID 5", 8, 0, 0.5), "#VALUE! driveRate is 0. Write a number above 0 and at most 1000000000, such as 150."],
    [() => iops("RAID 5", 8, 150, ""), "#VALUE! readShare is blank. Write a number from 0 to 1, such as 0.2."],
    [() => iops("RAID 5", 8, 150, 70), "#VALUE! readShare is 70, which means 7000%. Write 70% or 0.7."],
    [() => payload(1.5, 1), "#VALUE! ports is 1.5. Write a whole number from 1 to 100000, such as 2."],
    [() => payload(1, 1, 1500, 5), "#VALUE! ipVersion is 5. Choose 4 or 6."],
    [() => payload(1, 1, 1500, 4, "maybe"), '#VALUE! timestamps is "maybe". Choose TRUE or FALSE.'],
    [() => payload(1, 1, 1000, 6), "#VALUE! mtu is 1000. IPv6 needs 1280 bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames."],
    [() => movetime(4, "fast"), '#VALUE! rate is the text "fast". Write a number above 0 and at most 1000000000, such as 400.'],
    [() => rebuildhours("RAID 6", 12, 4, 100, 0), "#VALUE! share is 0. Write a number above 0 and at most 1, such as 0.2."],
    [() => rebuildhours("none", 12, 4, 100), '#N/A scheme none has nothing to rebuild a drive from. Write a scheme with redundancy, such as "RAID 6".'],
    [() => serialtime(100, 0), "#VALUE! baud is 0. Write a number above 0 and at most 1000000000, such as 9600."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
