import { copyFile, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { addPlan, complete, jobName, smallPlan } from "../support/commissioning-plan";
import { readPdf, textOf } from "../support/read-pdf";
import { runCommand as run } from "../support/run-command";
import { tabInSight, typeInto } from "../support/tab-on-sheet";
import { workbookFolder } from "../support/workbook-folder";

const examples = join(__dirname, "..", "..", "examples");

const { at, change } = workbookFolder();

const verbs = ["build-tabs", "merge-tabs", "check-plan", "compare-plans", "close-out", "check-seal", "handover", "offer", "calc"];
test.each(verbs)("%s says with --help how it is called, and how it ends", async (verb) => {
  const { code, complaint, text } = await run(verb, "--help");
  expect({ code, complaint }).toEqual({ code: 0, complaint: "" });
  expect(text).toMatch(new RegExp(`^Usage: npm run -s ${verb} -- `));
  expect(text).toMatch(/Exit code 0: /);
});

describe("a plan is checked on the command line", () => {
  test("with 0 stop and 0 warn for the sample, and 1 as it has a note", async () => {
    const { code, lines } = await run("check-plan", join(examples, "thornmere.xlsx"));
    expect(code).toBe(1);
    expect(lines).toMatchObject([{ stop: 0, warn: 0, note: 1, findings: [{ rule: "pool-without-scheme", weight: "note", sheet: "Pools" }] }]);
  });

  test("with every finding of the broken one by rule, sheet and cell", async () => {
    const { code, lines } = await run("check-plan", join(examples, "thornmere-broken.xlsx"));
    const { stop, warn, note, findings } = lines[0] as { stop: number; warn: number; note: number; findings: { rule: string; cell: string; sentence: string }[] };
    expect(code).toBe(1);
    expect(findings).toHaveLength(stop + warn + note);
    expect(stop).toBeGreaterThan(0);
    for (const { cell, sentence } of findings) {
      expect(cell).toMatch(/^[A-Z]+\d+$/);
      expect(sentence.length).toBeLessThanOrEqual(160);
    }
  });

  test("and a workbook without one ends with 2 and a sentence", async () => {
    await change(null, "blank.xlsx", () => Promise.resolve());
    expect(await run("check-plan", at("blank.xlsx"))).toMatchObject({ code: 2, lines: [], complaint: expect.stringContaining("holds no planning table") as string });
    expect(await run("check-plan", at(""))).toMatchObject({ code: 2, lines: [], complaint: expect.stringContaining("a folder or a device") as string });
  });
});

test("a filled tab is closed, its seal holds, a cell that is changed is named, and the handover is a file of its own", async () => {
  await change(null, "plan.xlsx", ({ port }) => addPlan(port, smallPlan()));
  expect((await run("build-tabs", at("plan.xlsx"), "-o", at("built.xlsx"))).code).toBe(0);
  expect(await run("check-seal", at("built.xlsx"))).toMatchObject({ code: 0, lines: [{ tabs: [{ job: jobName, sealed: false, holds: false, changed: [] }] }] });
  expect(await run("compare-plans", at("plan.xlsx"), at("built.xlsx"))).toMatchObject({ code: 0, lines: [{ rows: [], tabs: [] }] });
  await change(null, "moved.xlsx", ({ port }) => addPlan(port, { ...smallPlan(), racks: [] }));
  expect(await run("compare-plans", at("moved.xlsx"), at("built.xlsx"))).toMatchObject({ code: 1, lines: [{ rows: [{ table: "Racks", row: "N1", change: "added", cell: "Racks!A5" }] }] });

  const open = await run("close-out", at("built.xlsx"), "--job", jobName, "--name", "Ida Fell", "-o", at("early.xlsx"));
  expect(open).toMatchObject({ code: 1, lines: [{ out: null, closed: false, code: null }] });
  expect((open.lines[0]!.open as string[]).length).toBeGreaterThan(10);
  expect((await readdir(at(""))).filter((file) => file.includes("early"))).toEqual([]);

  await change("built.xlsx", "filled.xlsx", async ({ port }) => {
    await typeInto(port, await tabInSight(port), complete);
  });
  const closed = await run("close-out", at("filled.xlsx"), "--job", jobName, "--name", "Ida Fell", "-o", at("closed.xlsx"));
  expect(closed).toMatchObject({ code: 0, complaint: "", lines: [{ file: at("filled.xlsx"), out: at("closed.xlsx"), job: jobName, closed: true, open: [] }] });
  expect(closed.lines[0]!.code).toMatch(/^([A-Z2-7]{4}-){4}[A-Z2-7]{4}$/i);
  expect(await run("check-seal", at("closed.xlsx"))).toMatchObject({ code: 0, lines: [{ tabs: [{ sealed: true, holds: true, changed: [] }] }] });
  const text = JSON.stringify(readSnapshot(new Uint8Array(await readFile(at("closed.xlsx")))));
  expect(text).toContain("Ida Fell (by command line)");

  await change("closed.xlsx", "forged.xlsx", async ({ port }) => {
    await typeInto(port, await tabInSight(port), { "T-11/A0001": { found: 5 } });
  });
  const forged = await run("check-seal", at("forged.xlsx"));
  expect(forged.code).toBe(1);
  expect(JSON.stringify(forged.lines[0])).toContain("T-11");

  await copyFile(at("closed.xlsx"), at("again.xlsx"));
  expect(await run("close-out", at("closed.xlsx"), "--job", jobName, "--name", "Ida Fell", "-o", at("again.xlsx"))).toMatchObject({ code: 2, lines: [] });

  const pack = await run("handover", at("closed.xlsx"), "--job", jobName, "-o", at("handover.xlsx"));
  expect(pack).toMatchObject({ code: 0, lines: [{ job: jobName, sheets: [expect.any(String)] }] });
  const { sheets } = readSnapshot(new Uint8Array(await readFile(at("handover.xlsx"))));
  expect(sheets.map(({ name }) => name)).toEqual(pack.lines[0]!.sheets);
  expect(JSON.stringify(sheets)).toContain("Capacity to hosts");

  const printed = await run("handover", at("closed.xlsx"), "--job", jobName, "-o", at("handover.pdf"));
  expect(printed).toMatchObject({ code: 0, lines: [{ job: jobName, out: at("handover.pdf"), sheets: [] }] });
  const { title, pages } = await readPdf(await readFile(at("handover.pdf")));
  expect(title).toBe(`Handover: ${jobName}, build 1`);
  for (const page of pages) expect(textOf(page)).toContain(closed.lines[0]!.code);

  const neither = await run("handover", at("closed.xlsx"), "--job", jobName, "-o", at("handover.docx"));
  expect(neither).toMatchObject({ code: 2, lines: [], complaint: expect.stringContaining("Name a file that ends in .xlsx or .pdf.") as string });
  expect((await readdir(at(""))).filter((file) => file.includes("docx"))).toEqual([]);
});

test("a part that is not known and names a tab which was built again is told, once, and stays as it was", async () => {
  await change(null, "pointed-plan.xlsx", ({ port }) => addPlan(port, smallPlan()));
  expect((await run("build-tabs", at("pointed-plan.xlsx"), "-o", at("pointed.xlsx"))).complaint).toBe("");
  const parts = unzipSync(new Uint8Array(await readFile(at("pointed.xlsx"))));
  const board = strToU8("<board><tile source=\"'North hall'!A5\"/></board>");
  await writeFile(at("pointed.xlsx"), zipSync({ ...parts, "xl/boards/board1.xml": board }));
  const { code, complaint } = await run("build-tabs", at("pointed.xlsx"), "-o", at("pointed-again.xlsx"));
  expect({ code, complaint }).toEqual({ code: 0, complaint: expect.stringMatching(/^.*xl\/boards\/board1\.xml.* names a sheet that was renamed.*$/) as string });
  expect(unzipSync(new Uint8Array(await readFile(at("pointed-again.xlsx"))))["xl/boards/board1.xml"]).toEqual(board);
});
