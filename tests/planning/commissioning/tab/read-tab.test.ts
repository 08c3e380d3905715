import { isTab, readTab, readTabs } from "../../../../src/planning/commissioning/tab";
import type { CellValue, SheetSnapshot } from "../../../../src/sheet";

const headers = [
  "No.", "Step id", "Key", "Step", "For", "Result", "Expected", "Found", "Unit", "Expected before", "Rechecked by", "By", "Witness", "Done", "Note",
  "Rule", "Low", "High", "Planned unit", "Compares", "Settled", "Minutes", "Carried", "Built", "Digest",
];
const column = (header: string): number => headers.indexOf(header);

/** A row of the tab by its headers. */
function row(cells: Readonly<Record<string, CellValue>>): CellValue[] {
  return headers.map((header) => cells[header] ?? null);
}

function sheet(rows: readonly (readonly CellValue[])[], more: Partial<SheetSnapshot> = {}): SheetSnapshot {
  return { name: "Tab", visible: true, protected: false, values: rows, formulas: [], tables: [], attachments: 0, ...more };
}

const stepCells = {
  "No.": 3, "Step id": "S-1", Key: "J1/S-1/A1", Step: "Do it", For: "array 1", Expected: "4 TB", Found: 4.1, Unit: "TiB", Result: "Differs", "Expected before": "3 TB", "Rechecked by": "GH",
  By: "AB", Witness: "CD", Done: 46_083, Note: "n", Rule: "required two size", Low: 3.9e12, High: 4.1e12, "Planned unit": "TB", Settled: 1, Minutes: 7, Carried: "CCC", Digest: "DDD",
};
const mark = { "No.": "North hall", Key: "Commissioning tab", Rule: "J1", Low: 2, High: "2026-03-02T09:15:00.000Z", "Planned unit": "whole" };
const marker = row(mark);
const top = [marker, headers];
const step = row(stepCells);
const tags = { snags: row({ Key: "#snags" }), orphans: row({ Key: "#kept" }), seals: row({ Key: "#seals" }) };
const blank = row({});
const read = (rows: readonly (readonly CellValue[])[], more: Partial<SheetSnapshot> = {}) => readTab(sheet(rows, more))!;

describe("a commissioning tab", () => {
  test("is known by its marker, wherever in the first twenty rows it stands, and by headers below it", () => {
    const above = (rows: number) => [...Array.from({ length: rows }, () => ["mine"]), ...top];
    expect(isTab(sheet(top))).toBe(true);
    expect(isTab(sheet([["a commissioning tab"]]))).toBe(false);
    expect(readTab(sheet(above(19)))).toMatchObject({ jobId: "J1", headerRow: 20 });
    expect(isTab(sheet(above(20)))).toBe(false);
    expect(readTab(sheet(above(20)))).toBeNull();
    expect(readTab(sheet([marker]))).toBeNull();
    expect(readTab(sheet([headers, marker]))).toBeNull();
    expect(readTab(sheet([marker, ...Array.from({ length: 18 }, () => []), headers]))).toMatchObject({ headerRow: 19 });
    expect(readTab(sheet([marker, ...Array.from({ length: 19 }, () => []), headers]))).toBeNull();
  });

  test("says which job it is of, which build it is and whether it is whole", () => {
    expect(read(top, { visible: false, attachments: 2 })).toMatchObject({
      sheet: "Tab", title: "North hall", visible: false, attachments: 2, jobId: "J1", build: 2, born: "2026-03-02T09:15:00.000Z", whole: true, headerRow: 1,
    });
    const marked = (cells: Readonly<Record<string, CellValue>>) => read([row({ ...mark, ...cells }), headers]);
    expect(marked({ Low: "two", High: null, "Planned unit": "unfinished" })).toMatchObject({ build: 0, born: "", whole: false });
    expect(marked({ "Planned unit": "Whole" }).whole).toBe(false);
    // Where a header is gone its cell is looked for where it was built.
    expect(read([["T", null, "Commissioning tab", "J7"], ["No.", "Step id", "Key"]]).jobId).toBe("J7");
  });

  test("is read among other sheets, in their order", () => {
    const other = sheet([["Arrays"]], { name: "Arrays" });
    expect(readTabs({ sheets: [sheet(top, { name: "B" }), other, sheet(top, { name: "A" })] }).map((tab) => tab.sheet)).toEqual(["B", "A"]);
  });

  test("finds its columns by their headers, the first of each, among those that people added", () => {
    const wider = [
      [...marker.slice(0, 3), null, null, ...marker.slice(3)],
      [...headers.slice(0, 3), "Mine", null, ...headers.slice(3), "By"],
      [...step.slice(0, 3), "x", null, ...step.slice(3), "ZZ"],
    ];
    const tab = read(wider);
    expect(tab.places.columns).toMatchObject({ no: 0, key: 2, step: 5, by: 13 });
    expect(tab.steps[0]!.typed).toMatchObject({ by: "AB", found: 4.1 });
  });

  test("reads a title from its own column, and from the first one where that is gone", () => {
    expect(read([["x", "North hall", "Commissioning tab"], ["Mine", "No.", "Key"]]).title).toBe("North hall");
    expect(read([["x", "North hall", "Commissioning tab"], ["Mine", "Number", "Key", "For"]]).title).toBe("x");
  });
});

describe("the row of a step", () => {
  test("is read as its record", () => {
    expect(read([...top, step]).steps).toEqual([
      {
        key: "J1/S-1/A1", slot: null, no: "3", stepId: "S-1", step: "Do it", subject: "array 1", expected: "4 TB", plannedUnit: "TB", expectedBefore: "3 TB", result: "Differs",
        required: true, sign: "two", holdPoint: false, kind: "size", wanted: { by: "range", least: 3.9e12, most: 4.1e12 }, errors: [], seenUnit: "TiB",
        settled: false, minutes: 7, carried: "CCC", row: 2,
        typed: { found: 4.1, unit: "TiB", recheckedBy: "GH", by: "AB", witness: "CD", done: 46_083, note: "n" },
      },
    ]);
  });

  const stepWith = (cells: Readonly<Record<string, CellValue>>) => read([...top, row({ ...stepCells, ...cells })]).steps[0]!;

  test.each<[string, CellValue, CellValue]>([
    ["a number", 0, 0],
    ["a check box", false, false],
    ["blanks", "  ", null],
    ["nothing", "", null],
    ["a text with blanks", " x ", " x "],
  ])("takes %s as it was typed", (_, typed, found) => {
    expect(stepWith({ Found: typed }).typed.found).toBe(found);
  });

  test("has no unit of its own where that is the planned one", () => {
    expect(stepWith({ Unit: " TB " }).typed.unit).toBeNull();
    expect(stepWith({ Unit: "TiB" }).typed.unit).toBe("TiB");
    expect(stepWith({ Unit: null, "Planned unit": null }).typed.unit).toBeNull();
  });

  test.each<CellValue>(["As expected", "Fine", { error: "#REF!" }, "", null])("has the result that follows from what was typed, though its cell shows %j", (shown) => {
    expect(stepWith({ Result: shown, Settled: 1 })).toMatchObject({ result: "Differs", settled: false });
    expect(stepWith({ Result: shown, Settled: 0, Found: 4, Unit: "TB" })).toMatchObject({ result: "As expected", settled: true });
  });

  test.each([
    ["required none tick", { required: true, sign: "none", kind: "tick" }],
    ["optional one address", { required: false, sign: "one", kind: "address" }],
    ["required three picture", { required: true, sign: "one", kind: "text" }],
    ["required", { required: true, sign: "none", kind: "text" }],
    [null, { required: false, sign: "none", kind: "text" }],
  ])("is asked for by its rule %j", (rule, expected) => {
    expect(stepWith({ Rule: rule })).toMatchObject(expected);
  });

  test("takes no minutes that are no number", () => {
    expect(stepWith({ Minutes: "some" })).toMatchObject({ minutes: 0 });
  });

  test("tells which of its cells show an error", () => {
    expect(stepWith({ Found: { error: "#N/A" }, Note: { error: "#REF!" } })).toMatchObject({ errors: ["found", "note"], result: "Differs" });
  });

  test.each<[string, CellValue, CellValue, unknown]>([
    ["required one number", 3, 5, { by: "range", least: 3, most: 5 }],
    ["required one address", "192.0.2.1", "192.0.2.1", { by: "address", canonical: "192.0.2.1", full: "192.0.2.1" }],
    ["required one serial", "N-1", null, { by: "text", text: "N-1" }],
    ["required one number", null, null, null],
    ["required one tick", "x", null, null],
  ])("is compared, as %s, with what its hidden cells hold: %j to %j", (rule, low, high, wanted) => {
    expect(stepWith({ Rule: rule, Low: low, High: high }).wanted).toEqual(wanted);
  });

  test("keeps the result of a formula and the text of an error, and says so", () => {
    const formulas = [[], [], headers.map((header) => (header === "Found" ? "=2+2" : null))];
    const tab = read([...top, row({ ...stepCells, Found: 4, Note: { error: "#REF!" } })], { formulas });
    expect(tab.steps[0]!.typed).toMatchObject({ found: 4, note: "#REF!" });
    expect(tab.remarks).toEqual([
      "Row 3 of Tab: Found held a formula. Its result was kept; type the value instead.",
      "Row 3 of Tab: Note shows #REF!. That text was kept; type what was found.",
    ]);
  });

  test("has blank cells where their columns are gone", () => {
    const narrow = headers.filter((header) => header !== "Note" && header !== "Result");
    const tab = read([marker, narrow, narrow.map((header) => row(stepCells)[column(header)]!)]);
    expect(tab.steps[0]).toMatchObject({ typed: { note: null, by: "AB" } });
  });
});

describe("the blocks below the steps", () => {
  const snagLabels = row({ "No.": "Snag", "Step id": "Row", Step: "What was found" });
  const snag = row({
    "No.": "S-2", "Step id": 3, Step: "Dent", For: "EF", Result: 46_083, Expected: 5, Found: "AB", "Expected before": "Closed", Note: "n", Key: "#snag", Carried: "SC", Digest: "SD",
  });
  const orphan = row({ ...stepCells, "No.": null, Key: "kept:J1/S-9/A9" });
  const sealLabels = row({ "Step id": "Sealed" });
  const seal = row({ "Step id": "2026-03-09", Step: "CODE", For: "AB", Expected: "2026-03-10", Found: "EF", Note: "why", Key: "#seal", Digest: "18" });
  const all = [...top, step, blank, tags.snags, snagLabels, snag, blank, tags.orphans, orphan, blank, tags.seals, sealLabels, seal];

  test("are found by their tags and read row by row", () => {
    const tab = read(all);
    expect(tab.places).toMatchObject({ snagsRow: 4, orphansRow: 8, sealsRow: 11 });
    expect(tab.snags).toEqual([
      {
        id: "S-2", key: "J1/S-1/A1", stepId: "S-1", carried: "SC", errors: [], row: 6,
        typed: { about: 3, foundWrong: "Dent", mender: "EF", byWhen: 46_083, foundAgain: 5, closed: "Closed", by: "AB", note: "n" },
      },
    ]);
    expect(tab.orphans).toMatchObject([{ key: "J1/S-9/A9", no: "", row: 9, typed: { found: 4.1 } }]);
    expect(tab.seals).toEqual([
      { row: 13, typed: { sealed: "2026-03-09", code: "CODE", by: "AB", reopened: "2026-03-10", reopenedBy: "EF", reason: "why" } },
    ]);
    expect(tab.steps).toHaveLength(1);
  });

  test("begin with the block below where their own tag is gone", () => {
    expect(read([...top, step, blank]).places).toMatchObject({ snagsRow: 4, orphansRow: 4, sealsRow: 4 });
    expect(read([...top, step, blank, tags.seals]).places).toMatchObject({ snagsRow: 4, orphansRow: 4, sealsRow: 4 });
    expect(read([...top, step, tags.orphans, blank, tags.seals]).places).toMatchObject({ snagsRow: 3, orphansRow: 3, sealsRow: 5 });
  });

  test("take a row that people inserted into them, but not their labels", () => {
    const inserted = row({ Step: "Loose screw" });
    const note = row({ "Step id": "2026-03-11" });
    const untagged = row({ "Step id": "2026-03-12", Step: "AAAA-BBBB-CCCC-DDDD-2345" });
    const tab = read([...all.slice(0, 7), inserted, ...all.slice(7), note, untagged]);
    expect(tab.snags.map(({ typed }) => typed.foundWrong)).toEqual(["Dent", "Loose screw"]);
    // A note below the seals is none, a line that has lost its hidden tag still is.
    expect(tab.seals.map(({ typed }) => typed.sealed)).toEqual(["2026-03-09", "2026-03-12"]);
  });

  test("tell the ids of snags, and the highest that was ever one's", () => {
    const withMark = (given: CellValue, ...ids: readonly (readonly [id: CellValue, found: CellValue])[]) =>
      read([row({ ...mark, Compares: given }), headers, step, tags.snags, snagLabels, ...ids.map(([id, found]) => row({ "No.": id, Step: found, Key: "#snag" })), tags.orphans]);
    const used = (...parts: Parameters<typeof withMark>) => withMark(...parts).usedSnagIds;
    expect(withMark(4, ["S-1", "Dent"], ["S-02", "Scratch"], [7, "Bent"], [null, "Loose"]).snags.map(({ id }) => id)).toEqual(["S-1", "", "", ""]);
    expect(used(3, ["S-1", null], ["S-2", null], ["S-3", null])).toBe(0);
    expect(used(3, ["S-1", "Dent"], ["S-2", null], ["S-3", null])).toBe(1);
    expect(used(3, ["S-1", null], ["S-2", "Dent"], ["S-3", null])).toBe(2);
    // A row that was deleted had a snag, as far as anybody can tell.
    expect(used(3, ["S-1", null], ["S-3", null])).toBe(2);
    expect(used(3, ["S-1", null])).toBe(3);
    expect(used(3, ["S-9", "Dent"])).toBe(9);
    expect([used(null), used("many"), used(-5), used(1e300)]).toEqual([0, 0, 0, 1_000_000]);
  });

  test("pass over blank rows, with a tag or without", () => {
    const tab = read([...top, step, tags.snags, snagLabels, row({ Key: "#snag" }), blank, tags.orphans, tags.seals, sealLabels, row({ Key: "#seal", Digest: "3" }), blank]);
    expect([tab.snags, tab.seals]).toEqual([[], []]);
  });

  test("know the step of a snag by its number; where that is no number, by the key beside it", () => {
    const about = (no: CellValue) => read([...top, step, tags.snags, snagLabels, row({ "Step id": no, Step: "Dent", Key: "#snag", "Rechecked by": "S-8", Rule: "J1/S-8/A8" })]).snags[0]!;
    expect(about(3)).toMatchObject({ key: "J1/S-1/A1", stepId: "S-1" });
    expect(about(4)).toMatchObject({ key: "", stepId: "S-8" });
    for (const no of ["gone", "3", null]) expect(about(no)).toMatchObject({ key: "J1/S-8/A8", stepId: "S-8" });
  });
});

describe("a tab of an earlier layout", () => {
  // As tabs were built before: three headers had other names, and Result stood behind Unit.
  const earlier = ["No.", "Step id", "Step", "For", "Expected", "Found", "Unit", "Result", "Was", "Seen again", "By", "Second", "Done", "Note", "Key", "Rule", "Low", "High",
    "Planned unit", "Compares", "Retest", "Retest compares", "Settled", "Minutes", "Carried", "Digest"];
  const line = (cells: Readonly<Record<string, CellValue>>): CellValue[] => earlier.map((header) => cells[header] ?? null);
  const { "Expected before": before, "Rechecked by": recheckedBy, Witness: witness, ...same } = stepCells;
  const filled = line({ ...same, Was: before, "Seen again": recheckedBy, Second: witness });

  test("is read as one of today's, without a fault", () => {
    const tab = read([marker, earlier, filled]);
    expect(tab.places.layout).toBe("earlier");
    expect([tab.faults, tab.elsewhere]).toEqual([[], []]);
    expect(tab.steps[0]).toEqual(read([...top, step]).steps[0]);
  });

  test("has its snags where they stood then, without ids", () => {
    const snag = line({ "No.": 3, Step: "Dent", For: "EF", Expected: 46_083, Found: 5, Result: "Closed", By: "AB", Note: "n", Key: "#snag", "Planned unit": "J1/S-1/A1", Carried: "SC" });
    const tab = read([marker, earlier, filled, line({ Key: "#snags" }), line({ "No.": "Row" }), snag, line({ Key: "#kept" })]);
    expect(tab.snags).toMatchObject([
      { id: "", key: "J1/S-1/A1", stepId: "S-1", carried: "SC", typed: { about: 3, foundWrong: "Dent", mender: "EF", byWhen: 46_083, foundAgain: 5, closed: "Closed", by: "AB", note: "n" } },
    ]);
    expect(tab.usedSnagIds).toBe(0);
  });

  test("is named by its own headers where one of them is gone or not where it was", () => {
    const without = (header: string) => read([marker, earlier.map((one) => (one === header ? "Mine" : one)), filled]).faults;
    expect(without("Was")).toEqual(['The header "Was" of "Tab" is gone. Undo that, or write it back over its column in row 2.']);
    const moved = [...earlier.slice(0, 4), "Result", "Expected", "Found", "Unit", ...earlier.slice(8)];
    expect(read([marker, moved, filled]).faults).toEqual(['The header "Result" of "Tab" is not where it was. Undo that, or write it back over its column in row 2.']);
    expect(read([marker, earlier, filled], { formulas: [[], [], earlier.map((header) => (header === "Second" ? "=1" : null))] }).remarks).toEqual([
      "Row 3 of Tab: Second held a formula. Its result was kept; type the value instead.",
    ]);
  });

  test("is not meant by a column of people's own that is called as one of ours was", () => {
    const tab = read([marker, [...headers, "Was", "Second"], step]);
    expect(tab.places.layout).toBe("lists");
  });
});
