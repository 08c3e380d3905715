import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openHeadless } from "../../src/headless/open-headless";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { runCommand } from "../support/run-command";

const sample = join(__dirname, "..", "..", "examples", "thornmere.xlsx");
/** The jobs of the sample plan, which are its tabs. */
const jobs = ["Reading Room installation", "Bindery installation", "Cold Store installation"];

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "build-tabs-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

/** Copies the sample plan with another text in a cell of the table Jobs; row 1 is the first below the header. */
async function copyWithJob(name: string, header: string, row: number, value: string): Promise<void> {
  const workbook = await openHeadless(await readFile(sample));
  const { values } = (await workbook.port.read()).sheets.find((sheet) => sheet.name === "Jobs")!;
  await workbook.port.apply([{ kind: "write", sheet: "Jobs", row: 3 + row, column: values[3]!.indexOf(header), cells: [[{ value }]] }]);
  await writeFile(at(name), await workbook.save());
  workbook.dispose();
}

async function sheetsOf(name: string): Promise<string[]> {
  return readSnapshot(new Uint8Array(await readFile(at(name)))).sheets.map((sheet) => sheet.name);
}

test("a good file ends with 0 and one line that names every job; its tabs stand in the other file", async () => {
  const { code, lines, complaint } = await runCommand("build-tabs", sample, "-o", at("good.xlsx"));
  expect({ code, complaint }).toEqual({ code: 0, complaint: "" });
  expect(lines).toMatchObject([{ file: sample, out: at("good.xlsx"), built: 3, failed: 0, jobs: jobs.map((job) => ({ job, built: true })) }]);
  expect(await sheetsOf("good.xlsx")).toEqual(expect.arrayContaining(jobs));
});

test("one broken job ends with 1; the line and a sentence name it, and the other tabs are built", async () => {
  await copyWithJob("one-broken.xlsx", "Procedure", 2, "Nobody's procedure");
  const { code, lines, complaint } = await runCommand("build-tabs", at("one-broken.xlsx"), "-o", at("two-tabs.xlsx"));
  expect(code).toBe(1);
  expect(lines).toMatchObject([{ built: 2, failed: 1, jobs: [{ built: true }, { job: jobs[1], built: false, sentence: expect.stringContaining("Nobody's procedure") as string }, { built: true }] }]);
  expect(complaint).toMatch(/^Bindery installation: .*Nobody's procedure/);
  const sheets = await sheetsOf("two-tabs.xlsx");
  expect(jobs.map((job) => sheets.includes(job))).toEqual([true, false, true]);
});

test.each([
  ["a file that is no workbook", "notes.xlsx", /is no \.xlsx workbook/],
  ["a missing file", "absent.xlsx", /cannot be read/],
  ["a workbook without a plan", "blank.xlsx", /no table Jobs/],
])("%s ends with 2 and one sentence, without a line, and nothing is written", async (_, name, sentence) => {
  if (name === "notes.xlsx") await writeFile(at(name), "these are notes");
  if (name === "blank.xlsx") {
    const blank = await openHeadless();
    await writeFile(at(name), await blank.save());
    blank.dispose();
  }
  const { code, lines, complaint } = await runCommand("build-tabs", at(name), "-o", at("never.xlsx"));
  expect(code).toBe(2);
  expect(lines).toEqual([]);
  expect(complaint).toMatch(sentence);
  expect(complaint).not.toContain("\n");
  expect((await readdir(folder)).filter((file) => file.startsWith("never"))).toEqual([]);
});

test("a folder that is not there ends with 2 and leaves no part of a file", async () => {
  await copyFile(sample, at("plan.xlsx"));
  const { code, lines, complaint } = await runCommand("build-tabs", at("plan.xlsx"), "-o", join(at("nowhere"), "out.xlsx"), "--job", jobs[0]!);
  expect({ code, lines }).toEqual({ code: 2, lines: [] });
  expect(complaint).toContain("cannot be written");
  expect((await readdir(folder)).filter((file) => file.includes("part") || file === "nowhere")).toEqual([]);
});

test("a name that is no job ends with 2", async () => {
  const { code, lines, complaint } = await runCommand("build-tabs", sample, "-o", at("never.xlsx"), "--job", "Attic");
  expect({ code, lines }).toEqual({ code: 2, lines: [] });
  expect(complaint).toContain("Attic");
});

test.each([
  ["no arguments", []],
  ["no output", [sample]],
  ["an option that is none", ["--fast"]],
  ["two plans", [sample, sample, "-o", "never.xlsx"]],
])("a call with %s ends with 2, says how it is called, and prints no line", async (_, args) => {
  const { code, lines, complaint } = await runCommand("build-tabs", ...args);
  expect({ code, lines }).toEqual({ code: 2, lines: [] });
  expect(complaint).toMatch(/^Usage: /);
});
