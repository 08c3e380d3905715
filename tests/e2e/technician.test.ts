import { readFile } from "node:fs/promises";
import { Workbook } from "exceljs";
import type { Page } from "playwright-core";
import type { CellValue, SheetSnapshot } from "../../src/sheet";
import { hasLibreOffice, saveInLibreOffice } from "../support/libre-office";
import { readPdf, textOf, withoutSpaces } from "../support/read-pdf";
import { surveyInRows } from "../support/survey-in-rows";
import { beginStory, closeWhole } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

// One story in the order in which it happens: every test goes on where the one before it left off.
const { at, open } = beginStory("technician");

const job = "Bindery survey";

let workbook: WorkbookPage;
let page: Page;

/** Texts typed into a row, by the header above them. */
type Typed = Readonly<Record<string, string>>;

/** What the technician sees at each step and types into Found. The units of the rack are miscounted at first. */
const seen: Typed = {
  "SUR-010": "Yes", "SUR-011": "Yes", "SUR-012": "Yes",
  "SUR-020": "905 × 2010", "SUR-021": "600 kg, 1.4 m deep", "SUR-022": "One threshold, by the ramp",
  "SUR-023": "Weekdays 8 to 16, the foreman opens", "SUR-024": "Store 1.05", "SUR-025": "Yes, 100 kg",
  "SUR-030": "Ground floor, room 1.03", "SUR-031": "21 °C, 45 %", "SUR-032": "5 kN/m², letter of the house technician", "SUR-033": "None", "SUR-034": "Loud, well lit",
  "SUR-040": "40", "SUR-041": "bottom", "SUR-042": "1005", "SUR-043": "Free", "SUR-044": "square", "SUR-045": "Bayed, stabilisers fitted", "SUR-046": "Both", "SUR-047": "180",
  "SUR-050": "UPS and mains board", "SUR-051": "3.1 and 2.8", "SUR-052": "16 and 16", "SUR-053": "6 and 6, C13", "SUR-054": "4000, says the house technician",
  "SUR-060": "Free, SFP28, 25 Gbit/s", "SUR-061": "12",
  "SUR-070": "Network desk", "SUR-071": "Yes", "SUR-072": "Yes", "SUR-073": "The foreman; night desk", "SUR-074": "Project folder, pictures", "SUR-075": "Yes", "SUR-904": "The lead",
};

interface StepRow {
  readonly row: number;
  /** What stands under each header. */
  readonly cells: Typed;
}

const text = (cell: CellValue | undefined): string => (cell === null || cell === undefined ? "" : typeof cell === "object" ? cell.error : String(cell));

/** Reads a tab as a person does: by the texts of its header row. */
function headersOf({ values }: SheetSnapshot): string[] {
  return values.find((line) => line.includes("Step id"))!.map(text);
}

/** The rows of the steps, by step id and what it is for. */
function stepsOf(sheet: SheetSnapshot): ReadonlyMap<string, StepRow> {
  const headers = headersOf(sheet);
  const [id, subject, snags] = [headers.indexOf("Step id"), headers.indexOf("For"), snagsRow(sheet)];
  return new Map(
    sheet.values.slice(0, snags).flatMap((line, row) => {
      if (!/^SUR-\d+$/.test(text(line[id]))) return [];
      const cells = Object.fromEntries(headers.map((header, column) => [header, text(line[column])] as const));
      return [[`${text(line[id])} ${text(line[subject])}`, { row, cells }] as const];
    }),
  );
}

/** The first row for a snag. */
const snagsRow = ({ values }: SheetSnapshot): number => values.findIndex((line) => line.includes("What was found")) + 1;

/** Everything that people typed into the steps and the snags of a tab. */
function recordsOf(sheet: SheetSnapshot): Readonly<Record<string, readonly string[]>> {
  const steps = [...stepsOf(sheet)].map(([key, { cells }]) => [key, ["Found", "Unit", "By", "Witness", "Done", "Note"].map((header) => cells[header]!)] as const);
  const last = headersOf(sheet).indexOf("Note");
  const snags = sheet.values.slice(snagsRow(sheet)).filter((line) => /^S-\d+$/.test(text(line[0])) && text(line[2]) !== "").map((line) => [text(line[0]), line.slice(0, last + 1).map(text)] as const);
  return Object.fromEntries([...steps, ...snags]);
}

const tab = () => workbook.sheet(job);
const step = async (key: string): Promise<StepRow> => stepsOf(await tab()).get(key)!;

/** Types into cells of one row of the tab. */
async function typeInto(row: number, cells: Typed): Promise<void> {
  const headers = headersOf(await tab());
  for (const [header, typed] of Object.entries(cells)) await workbook.typeFrom(job, row, headers.indexOf(header), [typed]);
}

/** Types down a column of the steps, as one does who goes from row to row with Enter. */
async function typeDown(header: string, textOf: (stepId: string) => string): Promise<void> {
  const sheet = await tab();
  const rows = new Map([...stepsOf(sheet).values()].map(({ row, cells }) => [row, textOf(cells["Step id"]!)]));
  const first = Math.min(...rows.keys());
  await workbook.typeFrom(job, first, headersOf(sheet).indexOf(header), Array.from({ length: Math.max(...rows.keys()) - first + 1 }, (_, index) => rows.get(first + index) ?? ""), "Enter");
}

/** Pastes one text into a column of every step, as one does who copies a name down: from the words of one step to those of the next. */
async function pasteDown(header: string, text: string): Promise<void> {
  const sheet = await tab();
  const rows = [...stepsOf(sheet).values()].map(({ row }) => row);
  const column = headersOf(sheet).indexOf(header);
  for (const first of rows.filter((row) => !rows.includes(row - 1))) {
    const next = Array.from({ length: rows.length + 1 }, (_, index) => first + index).find((row) => !rows.includes(row))!;
    await workbook.paste(job, first, column, Array.from({ length: next - first }, () => [text]));
  }
}

/** Waits until the pane says of the job how far it is. */
const progress = (told: string) => page.getByRole("listitem").filter({ hasText: job }).getByText(told).waitFor();

/** Waits until a row of the tab is selected. */
const selected = (row: number) =>
  workbook.until(
    async ([sheet, wanted]) => {
      const selection = await globalThis.baywright.port.selection();
      return selection.sheet === sheet && selection.area.row === wanted;
    },
    [job, row] as const,
  );

const openMore = () => page.locator(`summary[aria-label="More for ${job}"]`).click();

async function closeOut(): Promise<string> {
  await workbook.button(/^Close out/).click();
  await page.getByRole("textbox", { name: "Closed by" }).fill("GH");
  await workbook.button("Close and seal").click();
  const code = /sealed with code ((?:[A-Z2-7]{4}-){4}[A-Z2-7]{4})\./.exec(await workbook.said("is closed and sealed with code"))![1]!;
  await progress("closed and sealed");
  return code;
}

describe("a technician at the desk", () => {
  beforeAll(async () => {
    workbook = await open();
    ({ page } = workbook);
  });

  afterAll(() => closeWhole(workbook));

  test("builds the tab of a job that was written into the plan", async () => {
    // The firm has its own survey, a row a step, in place of the built-in one, which stands first.
    for (const [sheet, rows] of [["Procedures", surveyInRows.procedures], ["Steps", surveyInRows.steps]] as const) {
      const built = (await workbook.sheet(sheet)).values.slice(4).filter((line) => line.includes("Site survey")).length;
      const blank = Array.from({ length: Math.max(0, built - rows.length) }, () => rows[0]!.map(() => ""));
      await workbook.paste(sheet, 4, 0, [...rows.slice(0, -1), ...blank, rows.at(-1)!]);
    }
    const { values } = await workbook.sheet("Jobs");
    await workbook.typeFrom("Jobs", values.findIndex((line) => line[1] === "Cold Store installation") + 1, 1, [job, "Bindery", "Site survey", "bi-array-1"]);
    await workbook.turnTo("Commission");
    await progress("No tab yet");
    await workbook.button("Choose none").click();
    await page.locator(`fluent-checkbox[aria-label="Build ${job}"]`).click();
    await workbook.button("Build 1 tab").click();
    await workbook.said("1 tab built");
    await progress("Build 1 · 0 of 46 steps settled");
    expect([...stepsOf(await tab()).values()].map(({ cells }) => cells["Result"])).toEqual(Array(46).fill(""));
    await workbook.save(at("handed-out.xlsx"));
  });

  test("types what was seen, and is told at once what differs", async () => {
    await typeDown("Found", (stepId) => seen[stepId]!);
    await pasteDown("By", "AB");
    await typeInto((await step("SUR-075 Bindery")).row, { Witness: "CD" });
    await progress("45 of 46 steps settled · 1 differ");
    const others = [...stepsOf(await tab())].filter(([, { cells }]) => cells["Result"] !== "As expected");
    expect(others.map(([key, { cells }]) => [key, cells["Expected"], cells["Found"], cells["Result"]])).toEqual([["SUR-040 bi-array-1", "42", "40", "Differs"]]);
  });

  test("mends it by a snag: the retest counts, and what was found first stays", async () => {
    const sheet = await tab();
    const differing = await step("SUR-040 bi-array-1");
    const row = snagsRow(sheet);
    const label = (name: string) => sheet.values[row - 1]!.indexOf(name);
    await workbook.typeFrom(job, row, label("Row"), [differing.cells["No."]!]);
    await workbook.typeFrom(job, row, label("What was found"), ["Counted to the cable tray", "EF", "2026-11-30"]);
    await progress("1 snag open");
    expect((await tab()).values[row]![label("Step id")]).toBe("SUR-040");
    expect((await step("SUR-040 bi-array-1")).cells["Result"]).toBe("Differs");

    await workbook.typeFrom(job, row, label("Found again"), ["42"]);
    await workbook.typeFrom(job, row, label("Closed"), ["Closed"]);
    await workbook.typeFrom(job, row, label("By"), ["EF"]);
    await progress("46 of 46 steps settled");
    expect((await step("SUR-040 bi-array-1")).cells).toMatchObject({ Found: "40", Result: "As expected" });
  });

  test("builds again after the plan has changed: no record is lost, and the changed step asks to be seen again", async () => {
    const before = recordsOf(await tab());
    const { values } = await workbook.sheet("Arrays");
    const array = values.findIndex((line) => line[1] === "bi-array-1");
    await workbook.typeFrom("Arrays", array, values[3]!.indexOf("Depth mm"), ["800"]);
    await workbook.button("Build 1 tab").click();
    await workbook.said("1 tab built");
    await page.getByRole("list", { name: "Report of the build" }).getByText("46 records carried over").waitFor();
    await progress("Build 2 · 45 of 46 steps settled · 1 to be seen again");

    expect(Object.keys(before)).toHaveLength(47);
    expect(recordsOf(await tab())).toEqual(before);
    const asking = [...stepsOf(await tab())].filter(([, { cells }]) => cells["Result"] !== "As expected");
    const seen = asking.map(([key, { cells }]) => [key, cells["Before"], cells["Expected"], cells["Found"], cells["Result"]]);
    expect(seen).toEqual([["SUR-042 bi-array-1", "at least 760", "at least 800", "1005", "Check again"]]);
  });

  test("cannot close out until it is seen again; the open item leads to its row", async () => {
    await openMore();
    await workbook.button(/^Close out/).click();
    await workbook.said("1 item still to be settled");
    await page.getByRole("list", { name: "Open items" }).getByRole("button", { name: "SUR-042 asks to be seen again" }).click();
    const { row } = await step("SUR-042 bi-array-1");
    await selected(row);
    await typeInto(row, { "Rechecked by": "CD" });
    await progress("46 of 46 steps settled");
    expect((await step("SUR-042 bi-array-1")).cells).toMatchObject({ Found: "1005", Result: "As expected" });
  });

  let code: string;

  test("closes out: the code stands in the pane, in the tab and holds, and the job is closed in the plan", async () => {
    code = await closeOut();
    expect((await tab()).values.flat()).toContain(code);
    const jobs = (await workbook.sheet("Jobs")).values;
    expect(jobs.find((line) => line[1] === job)![jobs[3]!.indexOf("State")]).toBe("closed");
    expect(await page.locator(`fluent-checkbox[aria-label="Build ${job}"]`).count()).toBe(0);
    await openMore();
    await workbook.button(/^Check the seal/).click();
    await workbook.said(`The seal of ${job} holds: code ${code}`);
  });

  test("saves the handover as a PDF that has the code of the seal on every page", async () => {
    const waiting = page.waitForEvent("download");
    await workbook.button(/^Save PDF/).click();
    const download = await waiting;
    expect(download.suggestedFilename()).toBe(`${job} handover.pdf`);
    const { title, pages } = await readPdf(await readFile(await download.path()));
    expect(title).toMatch(`Handover: ${job}, build`);
    expect(pages.length).toBeGreaterThan(1);
    const isDrawing = (one: (typeof pages)[number]): boolean => textOf(one).includes(withoutSpaces("A3; text is 7 point"));
    pages.forEach((one, number) => {
      expect(textOf(one)).toContain(withoutSpaces(`seal ${code}`));
      // A drawing counts its own pages.
      if (!isDrawing(one)) expect(textOf(one)).toContain(withoutSpaces(`page ${number + 1} of ${pages.length}`));
    });
    expect(pages.filter(isDrawing).length).toBeGreaterThan(2);
    await workbook.said(`${job} handover.pdf is among your downloads.`);
  });

  test("finds the one row whose cell was changed under the seal", async () => {
    const { row, cells } = await step("SUR-044 bi-array-1");
    await typeInto(row, { Found: "round" });
    await workbook.button(/^Check the seal/).click();
    await workbook.said("does not hold: 1 cell changed");
    const changed = page.getByRole("list", { name: "Changed cells" }).getByRole("button");
    expect(await changed.allTextContents()).toEqual([`Found of No. ${cells["No."]} SUR-044 bi-array-1`]);
    await workbook.showSheet("Sites");
    await changed.click();
    await selected(row);
  });

  test("reopens with name and reason; the earlier seal stays to be read", async () => {
    await workbook.button(/^Reopen/).click();
    await page.getByRole("textbox", { name: "Reopened by" }).fill("GH");
    await page.getByRole("textbox", { name: "Reason" }).fill("Rails were exchanged");
    await page.getByRole("group", { name: `Reopen ${job}` }).getByRole("button", { name: "Reopen", exact: true }).click();
    await workbook.said(`${job} is open again`);
    await page.locator(`fluent-checkbox[aria-label="Build ${job}"]`).waitFor();
    const sealed = (await tab()).values.find((line) => line.includes(code))!;
    expect(sealed).toEqual(expect.arrayContaining(["GH", "Rails were exchanged"]));
  });
});

/** Fills the tab of a file in another program, which computes nothing, with a snag for the step that differs; answers with how many records that makes. */
async function fillElsewhere(from: string, to: string): Promise<number> {
  const file = await new Workbook().xlsx.readFile(from);
  const sheet = file.getWorksheet(job)!;
  const textsOf = (row: number) => Array.from({ length: sheet.columnCount + 1 }, (_, column) => (column === 0 ? "" : sheet.getCell(row, column).text));
  const rows = Array.from({ length: sheet.rowCount + 1 }, (_, row) => (row === 0 ? [] : textsOf(row)));
  const headers = rows.find((line) => line.includes("Step id"))!;
  const labels = rows.findIndex((line) => line.includes("What was found"));
  const write = (row: number, header: string, value: string | number, among = headers) => (sheet.getCell(row, among.indexOf(header)).value = value);
  let filled = 0;
  rows.forEach((line, row) => {
    const stepId = line[headers.indexOf("Step id")] ?? "";
    if (!/^SUR-\d+$/.test(stepId) || row > labels) return;
    filled += 1;
    write(row, "Found", /^\d+$/.test(seen[stepId]!) ? Number(seen[stepId]) : seen[stepId]!);
    write(row, "By", "AB");
    if (stepId === "SUR-075") write(row, "Witness", "CD");
    if (stepId !== "SUR-040") return;
    const snag = { Row: Number(line[headers.indexOf("No.")]), "What was found": "Counted to the cable tray", "Who puts it right": "EF", "Found again": 42, Closed: "Closed", By: "EF" };
    for (const [label, value] of Object.entries(snag)) write(labels + 1, label, value, rows[labels]);
  });
  await file.xlsx.writeFile(to);
  return filled + 1;
}

describe("a technician who fills a copy elsewhere", () => {
  let records: number;

  beforeAll(async () => {
    records = await fillElsewhere(at("handed-out.xlsx"), at("filled.xlsx"));
  });

  beforeEach(async () => {
    workbook = await open();
    ({ page } = workbook);
  });

  afterEach(() => closeWhole(workbook));

  async function bringBackAndCloseOut(returned: string): Promise<void> {
    await workbook.openFile(at("handed-out.xlsx"));
    await workbook.turnTo("Commission");
    await workbook.chooseFile(workbook.button(/^Bring back a filled tab/), returned);
    await page.getByText(`Changed by them: ${records}`).waitFor();
    await workbook.button(`Bring back ${records} records`).click();
    await workbook.said("The accepted records stand in the tabs");
    await progress("46 of 46 steps settled");
    const steps = [...stepsOf(await tab()).values()];
    const shown = steps.map(({ cells }) => [cells["Step id"], cells["Found"], cells["By"], cells["Result"]]);
    expect(shown).toEqual(steps.map(({ cells }) => [cells["Step id"], seen[cells["Step id"]!], "AB", "As expected"]));
    await openMore();
    const code = await closeOut();
    expect((await tab()).values.flat()).toContain(code);
  }

  test("brings it back through the pane, where it is closed out", () => bringBackAndCloseOut(at("filled.xlsx")));

  (hasLibreOffice ? test : test.skip)("brings it back from LibreOffice just as well", () => bringBackAndCloseOut(saveInLibreOffice(at("filled.xlsx"), at("office"))));
});
