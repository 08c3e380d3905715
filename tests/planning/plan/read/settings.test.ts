import { initialSettings, readPlan, readSettings, settingRules } from "../../../../src/planning/plan/read";
import { planWorkbook } from "../../../support/commissioning-plan";

const read = (...settings: readonly (readonly [string, string | number | null])[]) => readSettings(readPlan(planWorkbook({ settings: settings.map(([setting, value]) => ({ setting, value })) })));

describe("the settings", () => {
  test("have their initial values where the table says nothing", () => {
    expect(read()).toEqual({
      settings: {
        sparesPerArray: 1, fillLimit: 0.8, promisedLimit: 2, readErrorRate: 1e-15, readFaultShare: 0.1, driveRate: 100, liftReachCm: 35, liftFromCm: 75, rackFootCm: 10,
        twoPersonShare: 0.667, liftTableAboveCm: 175, heavierAboveKg: 10, marginFloor: 0, offerMarginFloor: 0, marginCeiling: 0.75, warrantyNoticeDays: 90,
        labelWidthMm: 48.5, labelHeightMm: 25.4, labelsAcross: 4, labelsDown: 10, labelGapMm: 0, paper: "A4", firm: "",
      },
      faults: [],
    });
    expect(read(["Fill limit", null]).settings.fillLimit).toBe(0.8);
  });

  test("are found by name without case, and read digits that are text", () => {
    expect(read([" fill LIMIT", "90%"], ["Read error rate", "1e-16"], ["Lift reach cm", "40"], ["Spares an array", 0]).settings).toMatchObject({
      fillLimit: 0.9, readErrorRate: 1e-16, liftReachCm: 40, sparesPerArray: 0,
    });
    expect(read(["Fill limit", "0.7"]).settings.fillLimit).toBe(0.7);
  });

  test("keep their initial value where a cell cannot be read, and say why", () => {
    const { settings, faults } = read(["Drive rate MB/s", "fast"], ["Drive rate MB/s", "0"], ["Fill limit", "80"], ["Spares an array", "1.5"], ["Lift reach cm", "40,5"]);
    expect(settings).toMatchObject({ driveRate: 100, fillLimit: 0.8, sparesPerArray: 1 });
    expect(faults.map(({ row, kind, sentence }) => [row.row, kind, sentence])).toEqual([
      [4, "unreadable", 'Drive rate MB/s "fast" is not a number. Write one such as 100.'],
      [5, "unreadable", "Drive rate MB/s is 0. Write a number above 0 and at most 100000, such as 100."],
      [6, "unreadable", "Fill limit is 80, which means 8000%. Write 80% or 0.8."],
      [7, "unreadable", "Spares an array is 1.5. Write a whole number from 0 to 1000, such as 1."],
      [8, "unreadable", 'Lift reach cm "40,5" has a comma. Write 40.5.'],
    ]);
  });

  test("take the name of a firm as it is written, digits too", () => {
    expect(read(["firm", "7 Towers, storage"])).toMatchObject({ settings: { firm: "7 Towers, storage" }, faults: [] });
    expect(read(["Firm", 1890]).settings.firm).toBe("1890");
  });

  test("take one of their words, without case, and refuse any other", () => {
    expect(read(["Paper", "letter"])).toMatchObject({ settings: { paper: "Letter" }, faults: [] });
    const { settings, faults } = read(["Paper", "A5"]);
    expect(settings.paper).toBe("A4");
    expect(faults.map(({ sentence }) => sentence)).toEqual(['Paper "A5" is not known. Write A4 or Letter.']);
  });

  test.each<[string, readonly (string | number)[], readonly (string | number)[], number | null]>([
    ["Spares an array", [0, 1000], [-1, 1001, 0.5], 1],
    ["Fill limit", ["100%", 0.01], ["101%", -0.1], null],
    ["Read error rate", [0, 1], [-1e-15, 1.1], 1e-15],
    ["Read fault share", ["0%", "100%"], ["101%"], null],
    ["Drive rate MB/s", [0.1, 100_000], [0, 100_001], 100],
    ["Lift reach cm", [0.1, 200], [0, 201], 35],
    ["Lift from cm", [0, 300], [-1, 301], 75],
    ["Rack foot cm", [0, 100], [-1, 101], 10],
    ["Two person share", ["0%", "66.7%"], ["101%"], null],
    ["Lift table above cm", [0, 300], [-1, 301], 175],
    ["Heavier above kg", [0.1, 1000], [0, 1001], 10],
  ])("have bounds: %s may be any of %j and none of %j; what is usual is the example, %p", (name, inside, outside, example) => {
    expect(inside.flatMap((value) => read([name, value]).faults)).toEqual([]);
    const faults = outside.flatMap((value) => read([name, value]).faults);
    expect(faults.map(({ kind }) => kind)).toEqual(outside.map(() => "unreadable"));
    if (example !== null) for (const { sentence } of faults) expect(sentence.endsWith(`, such as ${example}.`)).toBe(true);
  });

  test("say in a sentence what each is for", () => {
    expect(initialSettings().map(({ meaning }) => meaning).filter((meaning) => !/^[A-Z].{10,}\.$/.test(meaning))).toEqual([]);
  });

  test("say that a name is not known, but for the rows that remember ids and rows without a name", () => {
    const { faults } = read(["Colour", "red"], ["last ARRAY id", "A0007"], ["Last job id", "J0001"], ["", "x"]);
    expect(faults.map(({ kind, sentence }) => [kind, sentence])).toEqual([["unknown", 'Setting "Colour" is not known, so nothing follows from it.']]);
  });

  test("are written by set-up with the value that holds without them, and rows for the last ids behind them", () => {
    const rows = initialSettings();
    expect(rows.slice(0, -3).map(({ setting, value, meaning }) => ({ setting, value, meaning }))).toEqual(Object.values(settingRules).map(({ name, initial, meaning }) => ({
      setting: name, value: initial, meaning,
    })));
    expect(rows.slice(-3).map(({ setting, value }) => [setting, value])).toEqual([["Last array id", ""], ["Last job id", ""], ["Last cable id", ""]]);
  });
});
