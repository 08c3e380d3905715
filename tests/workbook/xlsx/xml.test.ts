import fc from "fast-check";
import { escapeXml, parseXml } from "../../../src/workbook/xlsx/xml";

/** Characters of every script, those beyond two bytes included, that XML 1.0 knows (section 2.2). */
const scripts = fc.string({ unit: "binary" }).filter((text) => !/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.test(text));

test("a text of any script comes back from an element and from an attribute, and is written in characters of one byte (property)", () => {
  fc.assert(
    fc.property(scripts, (text) => {
      const written = `<a b="${escapeXml(text)}">${escapeXml(text)}</a>`;
      const { text: inside, attributes } = parseXml(written);
      expect([inside, attributes["b"]]).toEqual([text, text]);
      expect(written).not.toMatch(/[\u0100-\u{10ffff}]/u);
    }),
    { seed: 20, numRuns: 2_000 },
  );
});

test("quotes and a dash as typesetters set them stand by their numbers, as would be written by hand (Unicode charts 2000 to 206F)", () => {
  expect(escapeXml("“4–5” é 𝄞")).toBe("&#8220;4&#8211;5&#8221; é &#119070;");
});

test("half a pair, which is no character, is left to the bytes", () => {
  expect(escapeXml("a\ud800")).toBe("a\ud800");
});
