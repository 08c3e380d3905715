import { afr, kofn, lossrisk, mttdl, readfault } from "../../src/functions/durability";
import { cellAnswer } from "../support/cell-answer";

describe("an answer in a cell", () => {
  test("MTTDL is in years of 8760 hours", () => {
    expect(mttdl("none", 10, 876_000, 24)).toBe(10);
  });

  test("LOSSRISK grows with the years and the read-error rate", () => {
    const year = lossrisk("RAID 6", 12, 4, "1.5%", 24);
    expect(lossrisk("RAID 6", 12, 4, 0.015, 24, 1, 0)).toBe(year);
    expect(lossrisk("RAID 6", 12, 4, 0.015, 24, 5) / year).toBeCloseTo(5, 1);
    expect(lossrisk("RAID 6", 12, 4, 0.015, 24, 1, 1e-15)).toBeGreaterThan(year);
  });

  test("AFR, READFAULT and KOFN", () => {
    expect(afr(8760)).toBeCloseTo(1 - 1 / Math.E, 15);
    expect(readfault(12.5, 1e-14)).toBeCloseTo(1 - 1 / Math.E, 12);
    expect(kofn(3, 4, "90%")).toBe(0.9477);
  });

  test.each([[undefined], [null], [""]])("optional arguments that are %p mean their defaults", (blank) => {
    expect(lossrisk("RAID 6", 12, 4, 0.015, 24, blank, blank)).toBe(lossrisk("RAID 6", 12, 4, 0.015, 24, 1, 0));
  });
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => mttdl("RAID 6", 12, 0, 24), "#VALUE! mttfHours is 0. Write a number from 1 to 1000000000000, such as 1200000."],
    [() => mttdl("RAID 6", 12, 1e6, 0), "#VALUE! repairHours is 0. Write a number from 0.001 to 1000000, such as 24."],
    [() => mttdl("2+100", 102, 1e9, 24), "#N/A scheme 2+100 on 102 drives lasts longer than a cell can hold. Write fewer drives."],
    [() => mttdl("2+101", 103, 1e6, 24), "#VALUE! scheme 2+101 survives 101 failures. Write one that survives at most 100."],
    [() => lossrisk("RAID 6", 12, 4, 1, 24), "#VALUE! afr is 1. Write a number from 0 to below 1, such as 0.2."],
    [() => lossrisk("RAID 6", 12, 4, 1.5, 24), "#VALUE! afr is 1.5: is it 150% or 1.5%? Write a number from 0 to below 1, or a percentage."],
    [() => lossrisk("RAID 6", 12, 4, 0.01, 24, 1, 2), "#VALUE! readErrorRate is 2. Write a number from 0 to 1, such as 1e-15."],
    [() => readfault(12, ""), "#VALUE! errorRate is blank. Write a number from 0 to 1, such as 1e-15."],
    [() => kofn(5, 4, 0.9), "#VALUE! k is 5. Write a whole number from 1 to 4, such as 1."],
    [() => kofn(3, 4, 90), "#VALUE! p is 90, which means 9000%. Write 90% or 0.9."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
