import { memoise } from "../../../src/planning/quantity";

test("a text is worked out once, until ten thousand others have been", () => {
  let parsed = 0;
  const length = memoise((text: string) => {
    parsed++;
    return text.length;
  });
  length("abc", "first");
  expect(length("abc", "second")).toBe(3);
  expect(parsed).toBe(1);
  for (let other = 0; other < 10_000; other++) length(`text ${other}`, "first");
  expect(length("abc", "first")).toBe(3);
  expect(parsed).toBe(10_002);
});
