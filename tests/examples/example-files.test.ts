// That the files hold what their plans say is held by `npm run examples -- --check`.
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { brokenFindings, samplePlan } from "../../scripts/examples/broken-plan";
import { openHeadless } from "../../src/headless/open-headless";
import { checkPlan, rules } from "../../src/planning/checks";
import { isBlank, isError, type WorkbookSnapshot } from "../../src/sheet";
import { cellOf } from "../support/plan-rows";

async function open(file: string): Promise<WorkbookSnapshot> {
  const workbook = await openHeadless(await readFile(join(__dirname, "..", "..", "examples", file)));
  await workbook.settle();
  const snapshot = await workbook.port.read();
  workbook.dispose();
  return snapshot;
}

describe("examples/thornmere.xlsx", () => {
  let workbook: WorkbookSnapshot;
  beforeAll(async () => (workbook = await open("thornmere.xlsx")));

  test("has its tables by name, so that they are found wherever they are moved", () => {
    expect(workbook.sheets.flatMap(({ tables }) => tables.map(({ name }) => name))).toEqual(samplePlan().flatMap(({ tables }) => tables!.map(({ name }) => name)));
  });

  test("shows no error, and the usable capacity by hand: 18 of 22 members of 8 TB, 9 of 11 of 16 TB, 8/11 of 23 of 8 TB, a tenth kept free", () => {
    expect(workbook.sheets.flatMap(({ values }) => values.flat()).filter(isError)).toEqual([]);
    const arrays = workbook.sheets.find(({ name }) => name === "Arrays")!;
    const usable = arrays.values[3]!.indexOf("Usable");
    const figures = arrays.values.slice(4, 10).map((line) => line[usable] as number);
    [129.6, 129.6, 129.6, 129.6, 120.436364, 120.436364].forEach((figure, at) => expect(figures[at]).toBeCloseTo(figure, 6));
  });

  test("prices by the array, by the site, and not at all what has no capacity", () => {
    const { values } = workbook.sheets.find(({ name }) => name === "Quote")!;
    const [usable, price, perTb] = ["Usable TB", "Sell price", "Price per TB"].map((header) => values[3]!.indexOf(header)) as [number, number, number];
    // 2 x 21,400 / (1 - 0.22) = 2 x 27,435.897, rounded to cents a piece; two arrays of 129.6 TB.
    expect([values[4]![usable], values[4]![price]]).toEqual([259.2, 54871.8]);
    // Two copies over the arrays of the pool leave hosts half of that.
    const toHosts = values[3]!.indexOf("To hosts TB");
    expect(values[4]![toHosts]).toBeCloseTo(129.6, 9);
    expect(values[4]![perTb]).toBeCloseTo(54871.8 / 129.6, 9);
    expect(values[6]![toHosts]).toBeCloseTo(120.436364, 6);
    expect(values[6]![usable]).toBeCloseTo(120.436364, 6);
    expect([values[8]![usable], values[8]![perTb]].every(isBlank)).toBe(true);
  });

  test("has nothing that the checks would stop or warn about", () => {
    expect(checkPlan(workbook, rules, "2026-06-01").filter(({ weight }) => weight !== "note")).toEqual([]);
  });
});

describe("examples/thornmere-broken.xlsx", () => {
  let workbook: WorkbookSnapshot;
  beforeAll(async () => (workbook = await open("thornmere-broken.xlsx")));

  test("has exactly the findings listed beside it", () => {
    const found = checkPlan(workbook, rules, "2026-06-01").map((finding) => `${finding.rule} ${cellOf(workbook, finding)}`);
    expect(found.sort()).toEqual(brokenFindings.map(({ rule, cell }) => `${rule} ${cell}`).sort());
  });
});
