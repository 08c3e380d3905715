import { bringBack, previewReturned } from "../../src/actions/bring-back";
import { checkSeal } from "../../src/actions/check-seal";
import { closeOut } from "../../src/actions/close-out";
import { answersOfTab, readTab, type TabReading } from "../../src/planning/commissioning/tab";
import type { WorkbookSnapshot } from "../../src/sheet";
import { fileWith, JobFile, stepEntries, type Entry } from "../../src/step/job-file";
import { rowsOf } from "../../src/step/walk";
import { openDocumentPort } from "../../src/workbook/document/document-port";
import type { WorkbookPort } from "../../src/workbook/port";
import { FilePackage } from "../../src/workbook/xlsx/file-package";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { readFile } from "../../src/workbook/xlsx/read-workbook";
import { writeFile } from "../../src/workbook/xlsx/write-workbook";
import { jobName, moment } from "../support/commissioning-plan";
import { foundInRows, tabFile } from "../support/step-plan";

let bytes: Uint8Array;
let answers: Entry[];
let returned: Uint8Array;

beforeAll(async () => {
  bytes = await tabFile();
  const file = JobFile.open(bytes);
  const job = await file.read(jobName);
  answers = rowsOf(job).flatMap(({ records }, index) => [foundInRows[index]!].flat().flatMap((found, place) => {
    const record = records[place]!;
    const names = record.slot === null ? { by: "AB", done: 46_350, ...(record.sign === "two" && { witness: "CD" }) } : {};
    // The second array shows its size in the other unit.
    return stepEntries(job, record, { found, ...names, ...(found === 7.3 && { unit: "TiB" }) });
  }));
  await file.write(answers);
  returned = await fileWith(bytes, answers);
});

const tabIn = (workbook: WorkbookSnapshot): TabReading => readTab(workbook.sheets.find(({ name }) => name === jobName)!)!;

/** Opens a file as the lead does, without a program. */
function openPort(file: Uint8Array): { readonly port: WorkbookPort; readonly save: () => Uint8Array } {
  const open = readFile(file);
  const { port, finish } = openDocumentPort(open.document, answersOfTab);
  return { port, save: () => writeFile(open, open.document, finish()) };
}

describe("a file that is given back", () => {
  test("holds every record exactly as it was answered, and each row says what follows from it", () => {
    const { steps, elsewhere, faults } = tabIn(readSnapshot(returned));
    expect([elsewhere, faults]).toEqual([[], []]);
    const found = new Map<string, unknown[]>();
    for (const { no, typed } of steps) found.set(no, [...(found.get(no) ?? []), typed.found]);
    expect([...found.values()]).toEqual(foundInRows.map((value) => [value].flat()));
    expect(steps.filter(({ settled }) => !settled)).toEqual([]);
    expect(steps.find(({ no }) => no === "11")?.typed).toMatchObject({ found: 7.3, unit: "TiB", by: "AB", witness: null, done: 46_350 });
    expect(steps.find(({ no }) => no === "8")?.typed).toMatchObject({ by: "AB", witness: "CD" });
  });

  test("shows in its formulas what the twin says of them, so that no program needs to compute it", () => {
    const sheet = readSnapshot(returned).sheets.find(({ name }) => name === jobName)!;
    const result = sheet.values[1]!.indexOf("Result");
    const shown = tabIn(readSnapshot(returned)).steps.map(({ row }) => sheet.values[row]![result]);
    expect(new Set(shown)).toEqual(new Set(["As expected"]));
  });

  test("is otherwise the file that came, part by part", () => {
    const [before, after] = [FilePackage.open(bytes), FilePackage.open(returned)];
    expect(after.names().sort()).toEqual(before.names().sort());
    const changed = before.names().filter((name) => before.read(name) !== after.read(name));
    const sheet = readFile(bytes).sheets.find(({ name }) => name === jobName)!.part;
    expect(changed.filter((name) => !/^(\[Content_Types\]\.xml|xl\/(workbook|styles)\.xml)$/.test(name))).toEqual([sheet]);
  });

  test("comes back over the plan whole but for hold points, which the lead signs; then the tab is closed, sealed and checked", async () => {
    const { port, save } = openPort(bytes);
    const [preview] = await previewReturned(port, readSnapshot(returned));
    expect(preview!.holdPoints.map(({ label }) => label)).toEqual(["No. 4 T-09 n-1", "No. 8 T-09 n-2"]);
    const outcome = await bringBack(port, preview!, new Set(preview!.items.map(({ id }) => id)), moment);
    expect(outcome).toMatchObject({ built: true, kept: 0, again: 0 });

    const lead = JobFile.open(save());
    const job = await lead.read(jobName);
    const signatures = job.tab.steps.filter(({ holdPoint }) => holdPoint).flatMap((step) => stepEntries(job, step, { found: "Yes", by: "AB", witness: "CD", done: 46_350 }));
    await port.apply(signatures.map(({ sheet, row, column, value }) => ({ kind: "write", sheet, row, column, cells: [[{ value }]] })));
    const code = await closeOut(port, jobName, "GH", "2026-11-27 10:00");
    expect(await checkSeal(port, jobName)).toMatchObject({ holds: true, code });

    const sealed = await JobFile.open(save()).read(jobName);
    expect(sealed.locked).toMatch(/^This tab is closed and sealed/);
    expect(sealed.tab.steps.map(({ typed }) => typed.found)).toEqual(foundInRows.flat());
  });
});
