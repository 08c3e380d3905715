import { explainComma, invalid } from "../../../src/planning/text";

const takeAll = (): null => null;

describe("a number with a comma", () => {
  test.each<[string, string, (string | number)[]]>([
    ["0,95", 'fill "0,95" has a comma. Write 0.95.', [0.95]],
    ["-0,5", 'fill "-0,5" has a comma. Write -0.5.', [-0.5]],
    ["20,5%", 'fill "20,5%" has a comma. Write 20.5%.', ["20.5%"]],
    ["3,84 TB", 'fill "3,84 TB" has a comma. Write 3.84 TB.', ["3.84 TB"]],
    ["1.234,5", 'fill "1.234,5" has a comma. Write 1234.5.', [1234.5]],
    ["1,234.5", 'fill "1,234.5" has a comma. Write 1234.5.', [1234.5]],
    ["1,234,567", 'fill "1,234,567" has a comma. Write 1234567.', [1_234_567]],
    ["0,125", 'fill "0,125" has a comma. Write 0.125.', [0.125]],
    ["1,250", 'fill "1,250" has a comma: is it 1.25 or 1250? Write it without the comma.', []],
    ["3,842 TB", 'fill "3,842 TB" has a comma: is it 3.842 TB or 3842 TB? Write it without the comma.', []],
  ])("%s is told to be written with a point, or asked about", (text, sentence, proposals) => {
    expect(explainComma(text, "fill", takeAll)).toMatchObject({ argument: "fill", received: text, sentence, proposals });
  });

  test.each(["0.95", "many", "a,b", "1,2,3", ",5", "5,", "10,20,0,9", "1,,2"])("%s is none", (text) => {
    expect(explainComma(text, "fill", takeAll)).toBeNull();
  });

  test("is written with the unit that a bare one means", () => {
    expect(explainComma("3,84", "size", takeAll, " TB")?.proposals).toEqual(["3.84 TB"]);
  });

  test("means what would be taken, where only one of its readings is", () => {
    const takeWhole = (proposal: string | number): void => {
      if (!Number.isInteger(proposal)) throw invalid("drives", proposal, "drives is no whole number.");
    };
    expect(explainComma("1,250", "drives", takeWhole)?.proposals).toEqual([1250]);
    expect(explainComma("12,5", "drives", takeWhole)).toBeNull();
  });
});
