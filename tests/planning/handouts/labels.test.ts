import { cableLabels, planLabels } from "../../../src/planning/handouts";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { columnPoints, type SheetPlan } from "../../../src/sheet";
import { modelOf } from "../../support/plan-model";
import { sample, workbookWith } from "../../support/plan-rows";
import { problemOf } from "../../support/sentence";

const site = "Mill";
const port = { array: "arr", controller: "A", switch: "s1" };
const rows = {
  switches: [{ switch: "s1", site }],
  arrays: [{ array: "arr", site }],
  hosts: [{ host: "h", site }],
  ports: [{ ...port, port: "0", switchPort: "1" }, { ...port, port: "0", switchPort: "1" }, { ...port, port: "1" }],
  hostPorts: [{ host: "h", card: "c1", switch: "s1", switchPort: "2" }, { host: "h", card: "c2", switch: "nowhere", switchPort: "3" }],
} satisfies TableRows;

function plan(settings: Readonly<Record<string, string>> = {}, more: TableRows = {}): SheetPlan {
  return planLabels(modelOf({ ...rows, ...more, settings: Object.entries(settings).map(([setting, value]) => ({ setting, value })) }));
}

describe("labels of cables", () => {
  test("are two a cable, each with both ends, its own first; a cable that is not known from end to end has none", () => {
    expect(cableLabels(modelOf(rows))).toEqual([
      { head: "", near: "arr port A/0", far: "s1 port 1" }, { head: "", near: "s1 port 1", far: "arr port A/0" },
      { head: "", near: "h port c1", far: "s1 port 2" }, { head: "", near: "s1 port 2", far: "h port c1" },
    ]);
  });

  test("are each the only one of its text in the sample, as ANSI/TIA-606 asks of an identifier (from memory)", () => {
    const labels = cableLabels(new PlanModel(workbookWith(sample()))).map(({ near, far }) => `${near} to ${far}`);
    expect(labels.length).toBeGreaterThan(40);
    expect(new Set(labels).size).toBe(labels.length);
  });

  test("lie in the middle of A4 (210 x 297 mm, ISO 216): 4 x 48.5 mm leave 8 mm on the left, 10 x 25.4 mm leave 21.5 mm above", () => {
    const { print, rowHeights, columnWidths, hiddenColumns } = plan();
    expect(print).toMatchObject({ paper: "A4", fitToWidth: false, marginsMm: { left: 8, top: 21.5 } });
    expect(rowHeights![0]).toBeCloseTo(72, 6);
    expect(columnPoints(columnWidths[1]!) / 72 * 25.4).toBeCloseTo(48.5, 0);
    expect(hiddenColumns).toEqual([0]);
  });

  test("have columns of the gap between them, and begin a page after as many rows as lie on one", () => {
    const { rows: lines, columnWidths, print } = plan({ "Labels across": "2", "Labels down": "1", "Label gap mm": "5", "Label width mm": "70" });
    expect(lines.map((line) => line.map(({ value }) => String(value ?? "-").replace("\n", " ")))).toEqual([
      ["Cable labels", "arr port A/0 to s1 port 1", "-", "s1 port 1 to arr port A/0", "-"],
      ["-", "h port c1 to s1 port 2", "-", "s1 port 2 to h port c1", "-"],
    ]);
    expect(columnWidths.slice(1).map((width) => Math.round(columnPoints(width!) / 72 * 25.4))).toEqual([70, 5, 70]);
    expect(print!.breaksBefore).toEqual([1]);
  });

  test("begin with what Cables says of the cable, and have room for it", () => {
    const cables = [{ id: "C0001", from: "arr port A/0", to: "s1 port 1", colour: "blue", lengthM: 3 }];
    expect(plan({}, { cables }).rows[0]![1]!.value).toBe("C0001 blue 3 m\narr port A/0\nto s1 port 1");
    const low = problemOf(() => plan({ "Label height mm": "10" }, { cables }));
    expect(low.sentence).toBe('Labels of 48.5 x 10 mm have no room for "C0001 blue 3 m arr port A/0 to s1 port 1". Take larger ones, in Settings.');
  });

  test.each<[string, Readonly<Record<string, string>>, string]>([
    ["too wide", { "Label width mm": "60" }, "4 labels across take 240 mm, A4 has 210. Write their width and number into Settings."],
    ["too high", { "Label height mm": "30" }, "10 labels down take 300 mm, A4 has 297. Write their height and number into Settings."],
    ["too small for their text", { "Label width mm": "10", "Label height mm": "8" }, 'Labels of 10 x 8 mm have no room for "arr port A/0 to s1 port 1". Take larger ones, in Settings.'],
  ])("are refused where they are %s", (_, settings, sentence) => {
    expect(problemOf(() => plan(settings)).sentence).toBe(sentence);
  });

  test("are refused for a name that no label holds, in a sentence that a person still reads", () => {
    const { sentence } = problemOf(() => plan({}, { hosts: [{ host: "x".repeat(400), site }], hostPorts: [{ host: "x".repeat(400), switch: "s1", switchPort: "2" }] }));
    expect(sentence.length).toBeLessThanOrEqual(160);
  });

  test("have no sheet where nothing is cabled", () => {
    expect(problemOf(() => plan({}, { ports: [], hostPorts: [] })).sentence).toBe("No cable of the plan has both a switch and a port of it, so there is no label. Propose the cabling first.");
  });
});
