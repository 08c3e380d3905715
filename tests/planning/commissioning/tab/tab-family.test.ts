import { isSpent, sheetNameWith, tabFamily, type TabReading } from "../../../../src/planning/commissioning/tab";
import { recordFingerprint } from "../../../../src/planning/commissioning/record";
import { foundText, snagOf, stepRecord } from "../../../support/job-records";
import { tabReading } from "../../../support/tab-reading";

const tab = (sheet: string, build: number, more: Partial<TabReading> = {}): TabReading => tabReading({ sheet, build, ...more });
const named = (tabs: readonly TabReading[]) => {
  const { current, others, copies, nextBuild } = tabFamily(tabs, "J1", "North hall");
  return { current: current?.sheet ?? null, others: others.map(({ sheet }) => sheet), copies: copies.map(({ sheet }) => sheet), nextBuild };
};

describe("the tab in use", () => {
  test.each<[string, TabReading[], string | null]>([
    ["none before the first build", [], null],
    ["none where other jobs have tabs", [tab("South hall", 1, { jobId: "J2" })], null],
    ["the one of the highest build", [tab("a", 1), tab("b", 3), tab("c", 2)], "b"],
    ["of one build the one with the job's name, without case", [tab("Copy", 2), tab("north HALL", 2), tab("Other", 2)], "north HALL"],
    ["of one build and no such name the first", [tab("b", 2), tab("a", 2)], "b"],
    ["a later build rather than the name", [tab("North hall", 1), tab("Other", 2)], "Other"],
    ["never one that is not whole", [tab("North hall", 1), tab("new", 2, { whole: false })], "North hall"],
    ["a visible one rather than a later hidden one", [tab("North hall", 1), tab("new", 2, { visible: false })], "North hall"],
    ["a hidden one where people hid it", [tab("a", 1, { visible: false }), tab("b", 2, { visible: false })], "b"],
    ["none where none is whole", [tab("North hall", 1, { whole: false })], null],
  ])("is %s", (_, tabs, sheet) => {
    expect(named(tabs).current).toBe(sheet);
  });
});

describe("the other tabs of a job", () => {
  test("are copies where people can see them whole, else what builds have left, newest first", () => {
    const tabs = [
      tab("North hall", 4),
      tab("North hall before 2", 1, { visible: true }),
      tab("North hall before 4 2", 3, { visible: false }),
      tab("North hall (2)", 4),
      tab("new", 5, { whole: false }),
      tab("North hall before noon", 2),
    ];
    expect(named(tabs)).toEqual({
      current: "North hall",
      others: ["new", "North hall before 4 2", "North hall before 2"],
      copies: ["North hall (2)", "North hall before noon"],
      nextBuild: 6,
    });
  });

  test("count for the number of the next build, which begins with 1", () => {
    expect(named([]).nextBuild).toBe(1);
    expect(named([tab("x", 7, { whole: false }), tab("y", 9, { jobId: "J2" })]).nextBuild).toBe(8);
  });
});

describe("an earlier tab", () => {
  const record = stepRecord({ typed: { found: "x" } });
  const current = tabReading({ build: 2, steps: [{ ...record, carried: recordFingerprint(record) }], elsewhere: [foundText()] });
  test.each<[string, Partial<TabReading>, boolean]>([
    ["can go once all of it was carried", { steps: [record] }, true],
    ["stays while a record was not", { steps: [{ ...record, typed: { ...record.typed, found: "y" } }] }, false],
    ["stays while a snag was not", { snags: [snagOf()] }, false],
    ["stays while neither a record nor a snag was", { steps: [{ ...record, typed: { ...record.typed, found: "y" } }], snags: [snagOf()] }, false],
    ["can go once a text was carried that stood elsewhere", { elsewhere: [foundText()] }, true],
    ["stays while such a text was not", { elsewhere: [foundText({ text: "other" })] }, false],
    ["can go with a text that was emptied in its block", { elsewhere: [foundText({ text: null })] }, true],
    ["stays while it cannot be read as it was built", { faults: ["The header is gone."] }, false],
    ["stays with a comment", { attachments: 1 }, false],
    ["stays where the host does not count its notes", { mayHoldNotes: true }, false],
  ])("%s", (_, more, spent) => {
    expect(isSpent(tabReading(more), current)).toBe(spent);
  });
});

describe("a name for another sheet of a job", () => {
  test("has an ending and, where it is taken, a number", () => {
    expect(sheetNameWith("North hall", "build 2", [])).toBe("North hall build 2");
    expect(sheetNameWith("North hall", "build 2", ["North hall"])).toBe("North hall build 2");
    expect(sheetNameWith("North hall", "build 2", ["NORTH HALL build 2"])).toBe("North hall build 2 2");
    expect(sheetNameWith("North hall", "build 2", ["North hall build 2", "North hall build 2 2"])).toBe("North hall build 2 3");
  });

  test("is cut to the 31 characters that a sheet's name may have, never at a blank", () => {
    expect(sheetNameWith("n".repeat(31), "build 2", [])).toBe(`${"n".repeat(23)} build 2`);
    expect(sheetNameWith(`${"n".repeat(22)}😀`, "build 2", [])).toBe(`${"n".repeat(22)} build 2`);
    expect(sheetNameWith(`${"n".repeat(22)} north`, "build 2", [])).toBe(`${"n".repeat(22)} build 2`);
  });
});
