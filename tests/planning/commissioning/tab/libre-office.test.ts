import ExcelJS from "exceljs";
import { readFileSync, writeFileSync } from "node:fs";
import { mkdtemp, mkdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { answersOf, snagAnswersOf, type Snag, type SnagAnswers, type StepAnswers, type StepRecord } from "../../../../src/planning/commissioning/record";
import { forgedCells, isTab, readTab, type TabReading } from "../../../../src/planning/commissioning/tab";
import { snagColumns } from "../../../../src/planning/commissioning/tab/snag-columns";
import { slotColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import type { SheetSnapshot } from "../../../../src/sheet";
import { readSnapshot } from "../../../../src/workbook/xlsx/read-snapshot";
import { hasLibreOffice, saveInLibreOffice } from "../../../support/libre-office";
import { fillAtRandom, openRandomTab } from "../../../support/random-records";

// What LibreOffice computed of random records, in one batch. Where it is installed the batch is computed anew; UPDATE_GOLDEN=1 writes what comes out.
const file = join(__dirname, "libre-office-vectors.json");
const [records, seed] = [480, 480];

/** What of a step its answers follow from, and what a sheet showed for them. */
interface Vectors {
  readonly steps: readonly { readonly step: Pick<StepRecord, (typeof judged)[number]>; readonly shown: Partial<StepAnswers> }[];
  readonly snags: readonly { readonly snag: Snag; readonly shown: SnagAnswers }[];
}
const judged = ["key", "slot", "no", "stepId", "kind", "expected", "wanted", "seenUnit", "expectedBefore", "typed", "errors", "sign"] as const;

/** Reads what a tab shows where its formulas stand. */
function vectorsOf(sheet: SheetSnapshot, tab: TabReading): Vectors {
  const cell = (row: number, column: number | undefined) => {
    const value = column === undefined ? null : (sheet.values[row]?.[column] ?? null);
    return value ?? "";
  };
  const { columns } = tab.places;
  const stepAnswers = ["result", "compares", "retest", "retestCompares", "settled"] as const;
  const snagAnswers = ["stepId", "place", "retest", "isOpen", "key"] as const;
  const shownIn = <Answer extends string>(answers: readonly Answer[], valueOf: (answer: Answer) => unknown) => Object.fromEntries(answers.map((answer) => [answer, valueOf(answer)]));
  return JSON.parse(JSON.stringify({
    steps: tab.steps.map((step) => ({
      step: Object.fromEntries(judged.map((field) => [field, step[field]])),
      // Of a slot what it says of itself: Result of its row is that of the worst.
      shown: step.slot === null ? shownIn(stepAnswers, (answer) => cell(step.row, columns[answer])) : { compares: cell(step.row, columns[slotColumns[step.slot.place]!.compares]) },
    })),
    snags: tab.snags.map((snag) => ({ snag, shown: shownIn(snagAnswers, (answer) => cell(snag.row, columns[snagColumns[answer]])) })),
  })) as Vectors;
}

/** Writes a line a record, so that a difference can be read. */
function textOf({ steps, snags }: Vectors): string {
  const lines = (list: readonly unknown[]): string => list.map((one) => JSON.stringify(one)).join(",\n");
  return `{"steps":[\n${lines(steps)}\n],"snags":[\n${lines(snags)}\n]}\n`;
}

/** Fills a tab at random, takes out what the engine computed, and lets LibreOffice compute and save it. */
async function computedInLibreOffice(folder: string): Promise<SheetSnapshot> {
  const workbook = await openRandomTab(records);
  await fillAtRandom(workbook, seed);
  const plain = new ExcelJS.Workbook();
  await plain.xlsx.load((await workbook.close()) as unknown as ArrayBuffer);
  plain.eachSheet((sheet) => {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        if (cell.formula) cell.value = { formula: cell.formula, date1904: false };
      });
    });
  });
  await plain.xlsx.writeFile(join(folder, "random.xlsx"));
  await mkdir(join(folder, "computed"));
  const saved = saveInLibreOffice(join(folder, "random.xlsx"), join(folder, "computed"));
  return readSnapshot(readFileSync(saved)).sheets.find(isTab)!;
}

test("the twin says of every record what LibreOffice computed of it", () => {
  const { steps, snags } = JSON.parse(readFileSync(file, "utf8")) as Vectors;
  expect([steps.length, snags.length > 8, steps.filter(({ step: { slot } }) => slot !== null).length > 30]).toEqual([records, true, true]);
  const all = snags.map(({ snag }) => snag);
  const named = steps.map(({ step }) => step);
  for (const { step, shown } of steps) expect({ no: step.no, key: step.key, ...answersOf(step, all) }).toMatchObject({ no: step.no, key: step.key, ...shown });
  for (const { snag, shown } of snags) expect({ id: snag.id, ...snagAnswersOf(snag, { snags: all, steps: named }) }).toEqual({ id: snag.id, ...shown });
});

(hasLibreOffice ? test : test.skip)("LibreOffice computes of every record what is written here, and shows no cell of ours as forged", async () => {
  const folder = await mkdtemp(join(tmpdir(), "baywright-vectors-"));
  try {
    const sheet = await computedInLibreOffice(folder);
    const tab = readTab(sheet)!;
    expect([tab.faults, tab.steps.length]).toEqual([[], records]);
    expect(forgedCells(sheet, tab)).toEqual([]);
    const vectors = vectorsOf(sheet, tab);
    if (process.env.UPDATE_GOLDEN === "1") writeFileSync(file, textOf(vectors));
    expect(vectors).toEqual(JSON.parse(readFileSync(file, "utf8")));
  } finally {
    await rm(folder, { recursive: true });
  }
});
