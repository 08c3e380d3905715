import { parseProportion, parseShare } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

describe("a share is 0 to 1, or a percentage as text", () => {
  test.each<[string | number, number]>([
    [0.2, 0.2],
    ["20%", 0.2],
    ["20 %", 0.2],
    ["12.5%", 0.125],
    ["0.1%", 0.001],
    [".5%", 0.005],
    ["5.%", 0.05],
    ["+5%", 0.05],
    [0.1 + 0.2, 0.3],
    [0, 0],
    [1, 1],
    ["100%", 1],
  ])("%p is %p", (value, read) => {
    expect(parseShare(value, "reserve")).toBe(read);
  });

  test.each<[string | number | boolean | null, string]>([
    [20, "reserve is 20, which means 2000%. Write 20% or 0.2."],
    [100, "reserve is 100, which means 10000%. Write 100% or 1."],
    [1.1, "reserve is 1.1: is it 110% or 1.1%? Write a number from 0 to 1, or a percentage."],
    [101, "reserve is 101. Write a number from 0 to 1, such as 0.2."],
    ["120%", 'reserve is "120%". Write a number from 0 to 1, such as 0.2.'],
    [-0.1, "reserve is -0.1. Write a number from 0 to 1, such as 0.2."],
    ["0.2", 'reserve is the text "0.2". Write it as a number, without quotes.'],
    ["20,5%", 'reserve "20,5%" has a comma. Write 20.5%.'],
    ["%", 'reserve "%" is not a share. Write a number such as 0.2, or a percentage such as 20%.'],
    ["5%%", 'reserve "5%%" is not a share. Write a number such as 0.2, or a percentage such as 20%.'],
    [".%", 'reserve ".%" is not a share. Write a number such as 0.2, or a percentage such as 20%.'],
    [null, "reserve is blank. Write a number from 0 to 1, such as 0.2."],
    [false, "reserve is FALSE. Write a number from 0 to 1, such as 0.2."],
  ])("%p is refused", (value, sentence) => {
    expect(problemOf(() => parseShare(value, "reserve")).sentence).toBe(sentence);
  });

  test("0 and 1 can be kept out both", () => {
    const between = { aboveZero: true, belowOne: true };
    expect(parseShare(0.001, "margin", between)).toBe(0.001);
    expect(parseShare("99.9%", "margin", between)).toBe(0.999);
    expect(problemOf(() => parseShare(0, "margin", between)).sentence).toBe("margin is 0. Write a number above 0 and below 1, such as 0.2.");
    expect(problemOf(() => parseShare(1, "margin", between)).sentence).toBe("margin is 1. Write a number above 0 and below 1, such as 0.2.");
  });

  test("0 and 1 can be kept out, and a blank given a meaning", () => {
    expect(parseShare(null, "fill", { aboveZero: true, default: 1 })).toBe(1);
    expect(problemOf(() => parseShare(0, "fill", { aboveZero: true })).sentence).toBe("fill is 0. Write a number above 0 and at most 1, such as 0.2.");
    expect(problemOf(() => parseShare(1, "afr", { belowOne: true })).sentence).toBe("afr is 1. Write a number from 0 to below 1, such as 0.2.");
  });
});

describe("a proportion keeps to its bounds, such as a growth above -100 % and at most 500 %", () => {
  const growth = { above: -1, max: 5, example: 0.2 };
  test.each<[string | number, number]>([
    ["20%", 0.2],
    [5, 5],
    ["-50%", -0.5],
  ])("%p is %p", (value, proportion) => {
    expect(parseProportion(value, "yearlyGrowth", growth)).toBe(proportion);
  });

  test.each<[string | number, string]>([
    [-1, "yearlyGrowth is -1. Write a number above -1 and at most 5, such as 0.2."],
    ["-100%", 'yearlyGrowth is "-100%". Write a number above -1 and at most 5, such as 0.2.'],
    [20, "yearlyGrowth is 20, which means 2000%. Write 20% or 0.2."],
    ["501%", 'yearlyGrowth is "501%". Write a number above -1 and at most 5, such as 0.2.'],
  ])("%p is refused", (value, sentence) => {
    expect(problemOf(() => parseProportion(value, "yearlyGrowth", growth)).sentence).toBe(sentence);
  });
});
