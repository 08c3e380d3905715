import { memoise } from "../../../src/planning/quantity";

test("a text is worked out once, until ten thousand others have been", () => {
  const parsed: string[] = [];
  const length = memoise((text: string) => {
    parsed.push(text);
    return text.length;
  });
  length("abc", "first");
  for (let other = 1; other < 10_000; other++) length(`text ${other}`, "first");
  expect(length("abc", "second")).toBe(3);
  expect(parsed).toHaveLength(10_000);

  length("one more", "first");
  expect(length("abc", "first")).toBe(3);
  expect(parsed.slice(-2)).toEqual(["one more", "abc"]);
});

test("what throws is worked out anew, for the argument that asks now", () => {
  const refuse = memoise((text: string, argument): number => {
    throw new Error(`${argument} ${text} is no number`);
  });
  expect(() => refuse("abc", "first")).toThrow("first abc is no number");
  expect(() => refuse("abc", "second")).toThrow("second abc is no number");
  expect(() => refuse("abc")).toThrow(/^ abc is no number/);
});
