import fc from "fast-check";
import { orderOfTexts } from "../../../src/workbook/engine/comparison";

const letters = new Intl.Collator("en", { sensitivity: "accent" });
const known = ["a", "A", "b", "ch", "z", "0", "9", "-", " ", "_", "é", "e\u0301", "ß", "ss", "l·", "æ", "\u0301", "\u200b", "中"];
const sign = fc.oneof(fc.constantFrom(...known), fc.string({ unit: "grapheme", minLength: 1, maxLength: 1 }));
const text = fc.array(sign, { maxLength: 6 }).map((signs) => signs.join(""));

test("texts come in the order in which the language's own collation puts them, whatever signs they have (Unicode Technical Standard 10)", () => {
  fc.assert(
    fc.property(text, text, fc.boolean(), (one, rest, isLonger) => {
      const other = isLonger ? one.toUpperCase() + rest : rest;
      expect(Math.sign(orderOfTexts(one, other))).toBe(Math.sign(letters.compare(one, other)));
    }),
    { seed: 20261128, numRuns: 20_000 },
  );
});
