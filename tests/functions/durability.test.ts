import { afr, byteslost, kofn, lossrange, lossrisk, mttdl, readfault } from "../../src/functions/durability";
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

  test("MTTDL takes repairs of seconds, and a wait that spread schemes feel and fixed groups do not", () => {
    expect(mttdl("RAID 1", 2, 1000, 1e-6)).toBeGreaterThan(mttdl("RAID 1", 2, 1000, 1e-3));
    const waits = [0, 1, 4, 12, 24].map((wait) => mttdl("8+3", 60, 1_200_000, 24, wait));
    expect(waits).toEqual([...waits].sort((a, b) => b - a));
    expect(mttdl("8+3", 60, 1_200_000, 24)).toBe(waits[1]);
    expect(mttdl("RAID 6", 12, 1_200_000, 24, 12)).toBe(mttdl("RAID 6", 12, 1_200_000, 24, 0));
  });

  test("a wait that is left out is all of a repair shorter than an hour", () => {
    expect(mttdl("8+3", 60, 1_200_000, 0.5)).toBe(mttdl("8+3", 60, 1_200_000, 0.5, 0.5));
    expect(lossrisk("8+3", 60, 16, "1.5%", 0.5, 5)).toBe(lossrisk("8+3", 60, 16, "1.5%", 0.5, 5, 0, 0, 168, 0, 0.5));
  });

  test("every further argument of LOSSRISK makes it worse, a shorter scrub better", () => {
    const risk = (...rest: readonly unknown[]): number => lossrisk("8+3", 60, 16, "1.5%", 24, 5, ...rest);
    for (const worse of [[1e-15], [0, 0.05], [0, 0, 168, "5%"], [0, 0, 168, 0, 4]]) expect(risk(...worse)).toBeGreaterThan(risk());
    expect(risk(0, 0.05, 84)).toBeLessThan(risk(0, 0.05));
    expect(risk(0, 0, 84)).toBe(risk());
  });

  test("BYTESLOST of drives without redundancy is one drive's share of the data, at the first of them that fails", () => {
    expect(byteslost("none", 4, 8, "1.5%", 24)).toBeCloseTo((1e12 * (1 - 0.985 ** 4)) / 4, 3);
  });

  test("BYTESLOST reads every argument that LOSSRISK reads", () => {
    const bytes = (...rest: readonly unknown[]): number => byteslost("8+3", 60, 16, "1.5%", 24, 5, ...rest);
    for (const other of [[1e-15], [0, 0.05], [0, 0, 168, "5%"], [0, 0, 168, 0, 4]]) expect(bytes(...other)).not.toBe(bytes());
    expect(bytes(0, 0, 168, "5%")).toBeGreaterThan(2 * bytes());
    expect(bytes("", "", "", "", "")).toBe(bytes(0, 0, 168, 0, 1));
  });

  test("LOSSRANGE shows what LOSSRISK answers, five rates if nothing is said", () => {
    const rows = lossrange("8+3", 60, 16, "0.5%", 0.08, 24, 5, 1e-15, 0.05, 336, "5%", 4);
    expect(rows[0]).toEqual(["AFR", "Risk"]);
    expect(rows.slice(1).map(([rate]) => rate)).toEqual([0.005, 0.01, 0.02, 0.04, 0.08]);
    for (const [rate, risk] of rows.slice(1)) expect(risk).toBe(lossrisk("8+3", 60, 16, rate, 24, 5, 1e-15, 0.05, 336, "5%", 4));
    expect(lossrange("RAID 6", 12, 8, "1%", "2%", 24, "", "", "", "", "", "", 2)).toHaveLength(3);
  });

  test("AFR, READFAULT and KOFN", () => {
    expect(afr(8760)).toBeCloseTo(1 - 1 / Math.E, 15);
    expect(readfault(12.5, 1e-14)).toBeCloseTo(1 - 1 / Math.E, 12);
    expect(kofn(3, 4, "90%")).toBe(0.9477);
  });

  test.each([[undefined], [null], [""]])("optional arguments that are %p mean their defaults", (blank) => {
    expect(lossrisk("RAID 6", 12, 4, 0.015, 24, blank, blank)).toBe(lossrisk("RAID 6", 12, 4, 0.015, 24, 1, 0));
    expect(lossrisk("8+3", 60, 4, 0.015, 24, blank, blank, blank, blank, blank, blank)).toBe(lossrisk("8+3", 60, 4, 0.015, 24, 1, 0, 0, 168, 0, 1));
    expect(mttdl("8+3", 60, 1e6, 24, blank)).toBe(mttdl("8+3", 60, 1e6, 24, 1));
  });
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => mttdl("RAID 6", 12, 0, 24), "#VALUE! mttfHours is 0. Write a number from 1 to 1000000000000, such as 1200000."],
    [() => mttdl("RAID 6", 12, 1e6, 0), "#VALUE! repairHours is 0. Write a number from 0.000001 to 1000000, such as 24."],
    [() => mttdl("2+100", 102, 1e9, 24), "#N/A scheme 2+100 on 102 drives lasts longer than a cell can hold. Write fewer drives."],
    [() => mttdl("2+101", 103, 1e6, 24), "#VALUE! scheme 2+101 survives 101 failures. Write one that survives at most 100."],
    [() => lossrisk("RAID 6", 12, 4, 1, 24), "#VALUE! afr is 1. Write a number from 0 to below 1, such as 0.2."],
    [() => lossrisk("RAID 6", 12, 4, 1.5, 24), "#VALUE! afr is 1.5: is it 150% or 1.5%? Write a number from 0 to below 1, or a percentage."],
    [() => lossrisk("RAID 6", 12, 4, 0.01, 24, 1, 2), "#VALUE! readErrorRate is 2. Write a number from 0 to below 1, such as 1e-15."],
    [() => mttdl("8+3", 60, 1e6, 24, 25), "#VALUE! waitHours is 25, longer than repairHours 24, of which it is a part. Write at most 24."],
    [() => mttdl("8+3", 60, 1e6, 24, -1), "#VALUE! waitHours is -1. Write a number from 0 to 1000000, such as 4."],
    [() => lossrisk("RAID 6", 12, 4, 0.01, 24, 1, 1), "#VALUE! readErrorRate is 1. Write a number from 0 to below 1, such as 1e-15."],
    [() => lossrisk("RAID 6", 12, 4, 0.01, 24, 1, 0, -1), "#VALUE! latentErrors is -1. Write a number from 0 to 1000000, such as 0.05."],
    [() => lossrisk("RAID 6", 12, 4, 0.01, 24, 1, 0, 0, 0), "#VALUE! scrubHours is 0. Write a number above 0 and at most 1000000, such as 336."],
    [() => byteslost("RAID 6", 12, 4, 0.01, 24, 1, 0, 0, 168, 5), "#VALUE! sharedCause is 5, which means 500%. Write 5% or 0.05."],
    [() => lossrange("RAID 6", 12, 4, 0, 0.08, 24), "#VALUE! afrLow is 0. Write a number from 1e-12 to below 1, such as 0.02."],
    [() => lossrange("RAID 6", 12, 4, 0.08, 0.005, 24), "#VALUE! afrLow is 0.08, above afrHigh 0.005. Write the lower rate first."],
    [() => lossrange("RAID 6", 12, 4, 0.01, 0.02, 24, 1, 0, 0, 168, 0, 1, 1), "#VALUE! rows is 1. Write a whole number from 2 to 100, such as 5."],
    // A hundred failures tolerated take a quarter of a second a row.
    [() => lossrange("2+100", 102, 4, 0.01, 0.02, 24, 1, 0, 0, 168, 0, 1, 6), "#VALUE! rows is 6. Write a whole number from 2 to 5, such as 5."],
    [() => readfault(12, ""), "#VALUE! errorRate is blank. Write a number from 0 to 1, such as 1e-15."],
    [() => kofn(5, 4, 0.9), "#VALUE! k is 5. Write a whole number from 1 to 4, such as 1."],
    [() => kofn(3, 4, 90), "#VALUE! p is 90, which means 9000%. Write 90% or 0.9."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
