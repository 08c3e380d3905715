import { version as release } from "../../package.json";
import { energycost, sellprice, unitprice, version } from "../../src/functions/price";
import { cellAnswer } from "../support/cell-answer";

describe("an answer in a cell", () => {
  test.each<[string, () => unknown, unknown]>([
    ["UNITPRICE", () => unitprice(18_000, 40), 450],
    ["UNITPRICE of a bare capacity in its unit", () => unitprice(18_000, 40, "TiB"), 450],
    ["UNITPRICE of a text capacity in another unit", () => unitprice(1024, "1 TiB", "GiB"), 1],
    ["UNITPRICE of shown digits", () => unitprice(3.3, 1.1 + 2.2), 1],
    ["SELLPRICE", () => sellprice(75, "25%"), 100],
    ["SELLPRICE by mark-up, rounded", () => sellprice(2.15, 0, "Markup", 0.1), 2.2],
    ["ENERGYCOST", () => energycost(450, 0.25, 5, 0.5), 7391.25],
    ["VERSION", () => version(), release],
    ["VERSION watching a cell", () => version(7), release],
  ])("%s", (_name, call, answer) => {
    expect(call()).toBe(answer);
  });

  test.each([[undefined], [null], [""]])("optional arguments that are %p mean their defaults", (blank) => {
    expect(unitprice(100, 4, blank)).toBe(25);
    expect(sellprice(75, 0.25, blank, blank)).toBe(100);
    expect(energycost(1000, 1, blank, blank)).toBe(8760);
  });

  test("a step of 0 rounds nothing, as an empty cell does", () => {
    expect(sellprice(1, 0.3, "margin", 0)).toBe(1 / 0.7);
  });
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => unitprice(0, 40), "#VALUE! price is 0. Write a number above 0 and at most 1000000000000000, such as 18000."],
    [() => unitprice(18_000, ""), "#VALUE! capacity is blank. Write a number above 0 and at most 1000000000000000, such as 40."],
    [() => unitprice(18_000, "40 Tb"), '#VALUE! capacity "40 Tb" is in bits. Write it in bytes, with a capital B.'],
    [() => sellprice("", 0.25), "#VALUE! cost is blank. Write a number from 0 to 1000000000000000, such as 75."],
    [() => sellprice(75, 1), "#VALUE! share is 1. Write a number from 0 to below 1, such as 0.25."],
    [() => sellprice(75, 25), "#VALUE! share is 25, which means 2500%. Write 25% or 0.25."],
    [() => sellprice(75, 11, "markup"), "#VALUE! share is 11: is it 1100% or 11%? Write a number from 0 to 10, or a percentage."],
    [() => sellprice(75, 0.25, "profit"), '#VALUE! kind is "profit". Choose "margin" or "markup".'],
    [() => sellprice(75, 0.25, "margin", -1), "#VALUE! step is -1. Write a number from 0 to 1000000000000000, such as 0.05."],
    [() => energycost(450, 0.25, 1, 1.5), "#VALUE! overhead is 1.5: is it 150% or 1.5%? Write a number from 0 to 1, or a percentage."],
    [() => energycost(-1, 0.25), "#VALUE! watts is -1. Write a number above 0 and at most 1000000000, such as 450."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
