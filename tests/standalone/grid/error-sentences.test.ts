import { errorSentence } from "../../../src/standalone/grid/error-sentences";

const functions = new Set(["SUM", "SUMIF", "VLOOKUP", "BAY.USABLE", "BAY.SURVIVES", "BAY.UNITPRICE"]);
const sentenceFor = (formula: string) => errorSentence("#NAME?", formula, functions, []);

test.each([
  ["=BAY.USEABLE(1)", "There is no function BAY.USEABLE. Write BAY.USABLE?"],
  ["=BAY.USBALE(1)", "There is no function BAY.USBALE. Write BAY.USABLE?"],
  ["=USABLE(1)", "There is no function USABLE. Write BAY.USABLE?"],
  ["=1+vlokup(A1,B:C,2)", "There is no function vlokup. Write VLOOKUP?"],
  ["=SUM(SUMFI(A1:A3))", "There is no function SUMFI. Write SUMIF?"],
  ["=QUITEDIFFERENT(1)", "There is no function QUITEDIFFERENT. The Functions view of the pane lists those of this add-in."],
])("a misspelt function is answered with the one that was meant: %s", (formula, sentence) => {
  expect(sentenceFor(formula)).toBe(sentence);
});

test("a name that is no function, and text in quotes, are not taken for misspelt functions", () => {
  expect(sentenceFor("=total+1")).toContain("Put text in quotes");
  expect(sentenceFor('=SUM("USEABLE(")')).toContain("Put text in quotes");
});

test.each(["#SPILL!", "#REF!", "#DIV/0!", "#NUM!", "#N/A", "#VALUE!", "#NULL!", "#CYCLE!", "#CALC!", "#NAME?", "#ERROR!"])("%s has a sentence that says what to do", (error) => {
  expect(errorSentence(error, "=A1", functions, [])).toMatch(/\b(Clear|Undo|Fill|Look|Write|Take|Put)\b.*\.$/);
});

test.each([
  ["#NAME?", "=SUM(1;2)", "Write a comma there."],
  ["#N/A", "=SUM()", "Write its arguments between the brackets."],
  ["#REF!", "=INDEX(D1:D2,5)", "Write a range or a position that is within."],
  ["#REF!", "=#REF!+1", "write which cells are meant now."],
  ["#N/A", "=NA()", "Look at what is looked for"],
  ["#NAME?", '=USEABLE("a;b")', "Put text in quotes."],
  ["#VALUE!", '="open', "Write a quote where it ends."],
  ["#VALUE!", "=SUM((A1+2)", "A bracket is open."],
  ["#VALUE!", "=)", "A bracket closes that was never opened."],
  ["#VALUE!", "=1+", "Write what comes behind it."],
  ["#NAME?", "=A1048577", "beyond the last one of a sheet"],
  ["#NAME?", "=2*$XFE$1", "beyond the last one of a sheet"],
  ["#VALUE!", "=Nowhere!A1", 'There is no sheet "Nowhere".'],
  ["#REF!", "=SUM('No ''where'!A1:B2)", "There is no sheet \"No 'where\"."],
  ["#VALUE!", "=racks!A1+'Bay''s'!B2", "given something of the wrong kind"],
  ["#VALUE!", "=[1]Other!A1", "given something of the wrong kind"],
  ["#VALUE!", '=A1&" ("', "given something of the wrong kind"],
])("%s of %s is told by the slip that it comes of", (error, formula, sentence) => {
  expect(errorSentence(error, formula, new Set(["SUM", "USEABLE"]), ["Racks", "Bay's"])).toContain(sentence);
});

test("text that looks like no error has none", () => {
  expect(errorSentence("#1 of 3", "", functions, [])).toBeNull();
});
