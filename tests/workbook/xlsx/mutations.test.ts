import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { Problem } from "../../../src/planning/text";
import { readSnapshot } from "../../../src/workbook/xlsx/read-snapshot";
import { rawWorkbook } from "../../support/raw-workbook";
import { seededRandom } from "../../support/seeded-random";

const whole = rawWorkbook({
  before: '<workbookPr date1904="1"/>',
  sheets: {
    One:
      '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" state="frozen"/></sheetView></sheetViews><cols><col min="1" max="3" width="9"/></cols>' +
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Name</t></is></c><c r="B1"><f t="shared" ref="B1:B2" si="0">A2*2</f><v>4</v></c></row>' +
      '<row r="2"><c r="A2" s="1"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>0</v></c><c r="C2"><f t="array" ref="C2:C3">A1:A2</f><v>1</v></c></row></sheetData>' +
      '<mergeCells><mergeCell ref="D1:E2"/></mergeCells><dataValidations><dataValidation type="list" sqref="A5"><formula1>"a,b"</formula1></dataValidation></dataValidations>',
    Two: '<sheetData><row><c t="b"><v>1</v></c></row></sheetData>',
  },
  behind: "<definedNames><definedName name=\"Rate\" localSheetId=\"0\">One!$A$2</definedName></definedNames>",
});

function outcome(bytes: Uint8Array): string {
  try {
    return JSON.stringify(readSnapshot(bytes));
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown.sentence.length <= 160 ? "a sentence" : "a long sentence";
    throw thrown;
  }
}

test("a file in which bytes are lost, flipped or overwritten is read as it was, or refused with a sentence", () => {
  const random = seededRandom(1904);
  const below = (most: number) => Math.floor(random() * most);
  const known = outcome(whole);
  let refused = 0;
  for (let run = 0; run < 2000; run += 1) {
    const changed = Uint8Array.from(whole);
    if (run % 3 === 0) changed[below(changed.length)]! ^= 1 << below(8);
    else if (run % 3 === 1) for (let count = 0; count < 6; count += 1) changed[below(changed.length)] = below(256);
    const cut = run % 3 === 2 ? changed.subarray(0, below(changed.length)) : changed;
    const now = outcome(cut);
    expect([known, "a sentence"]).toContain(now);
    if (now === "a sentence") refused += 1;
  }
  expect(refused).toBeGreaterThan(1000);
});

test("a file whose XML somebody edited is read, or refused with a sentence; nothing else is thrown", () => {
  const random = seededRandom(29500);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const parts = unzipSync(whole);
  const numbers = ["0", "-1", "1", "2147483648", "1e999", "NaN", ""];
  const tokens = [...numbers, "A0", "XFE1", "XFD1048577", "__proto__", "constructor", "&#x110000;", "&lol;", "%ZZ", "../../..", "<c/>", "]]>", "<![CDATA[x", "\u0000", "'", "s", "shared"];
  let read = 0;
  for (let run = 0; run < 2000; run += 1) {
    const name = pick(Object.keys(parts));
    const pieces = strFromU8(parts[name]!).split(/(?<=["<>=/ ])|(?=["<>=/ ])/);
    const at = Math.floor(random() * pieces.length);
    pieces.splice(at, pick([0, 1, 1, 2]), pick(tokens));
    const bytes = zipSync({ ...parts, [name]: strToU8(pieces.join("")) });
    if (outcome(bytes).startsWith("{")) read += 1;
  }
  expect(read).toBeGreaterThan(300);
});
