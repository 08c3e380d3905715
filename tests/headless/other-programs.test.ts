import { copyFile, mkdir, readFile, writeFile } from "node:fs/promises";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { buildTabs } from "../../src/actions/build-tabs";
import { readTabs, type TabReading } from "../../src/planning/commissioning/tab";
import { slotColumns } from "../../src/planning/commissioning/tab/tab-columns";
import type { Scalar } from "../../src/sheet";
import type { WorkbookPort } from "../../src/workbook/port";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { addPlan, gridPlan, jobName, moment } from "../support/commissioning-plan";
import { hasLibreOffice, saveInLibreOffice } from "../support/libre-office";
import { runCommand } from "../support/run-command";
import { columnOf, tabInSight } from "../support/tab-on-sheet";
import { workbookFolder } from "../support/workbook-folder";

const { at, change } = workbookFolder();

/** Half past two in the afternoon at the 15 digits that LibreOffice keeps of a number, a moment of no whole minute, and a day. */
const moments = [46_083.604_166_666_7, 46_083.037_1, 46_084];

/** Types what the plan expects into the records of a tab for which `isMeant`, signed and dated. */
async function fill(port: WorkbookPort, isMeant: (index: number, last: number) => boolean): Promise<void> {
  const tab = await tabInSight(port);
  const writes = tab.steps.flatMap(({ row, slot, ...step }, index): [number, number, Scalar][] => {
    if (!isMeant(index, tab.steps.length - 1)) return [];
    const found = slot === null ? columnOf(tab, "found") : columnOf(tab, slotColumns[slot.place]!.found);
    if (slot !== null) return [[row, found, answerOf(step, index)]];
    const signed = { by: "AB", witness: step.sign === "two" ? "EF" : null, done: moments[index % moments.length]!, note: index % 4 === 0 ? "Seen  twice\nsince" : null };
    return [[row, found, answerOf(step, index)], ...Object.entries(signed).map(([column, value]): [number, number, Scalar] => [row, columnOf(tab, column), value])];
  });
  await port.apply(writes.map(([row, column, value]) => ({ kind: "write" as const, sheet: tab.sheet, row, column, cells: [[{ value }]] })));
}

function answerOf({ kind, expected, key }: Pick<TabReading["steps"][number], "kind" | "expected" | "key">, index: number): Scalar {
  if (kind === "tick") return "Yes";
  if (kind === "number" || kind === "size") return Number.parseFloat(expected);
  return expected !== "" ? expected : `000${index}-${key.slice(-4)}`;
}

/** Reads what a tab says of its job, without its seal, which tells the minute. */
async function recordsOf(name: string): Promise<unknown> {
  const workbook = readSnapshot(new Uint8Array(await readFile(at(name))));
  return readTabs(workbook).filter(({ visible }) => visible).map(({ steps, snags, orphans, elsewhere, remarks, faults, seals }) => ({
    steps: steps.map(({ key, result, typed, row, slot }) => ({ key, result, typed, row, slot })), snags, orphans, elsewhere, remarks, faults, seals: seals.length,
  }));
}

/** Runs a filled job through the commands; `pass` hands the files that people work in through another program on their way. */
async function wholeJob(folder: string, pass: (name: string) => Promise<unknown>) {
  await mkdir(at(folder));
  const said: (readonly [string, number, ...unknown[]])[] = [];
  const file = (name: string) => at(`${folder}/${name}`);
  const run = async (command: string, ...args: readonly string[]) => {
    const { code, lines, complaint } = await runCommand(command, ...args);
    // All but the folder, and the code of a seal, which stands for the minute too.
    said.push([command, code, JSON.stringify(lines).replaceAll(`${folder}/`, "").replaceAll(/([A-Z2-7]{4}-){4}[A-Z2-7]{4}/gi, "CODE"), complaint]);
  };
  for (const name of ["returned.xlsx", "ours.xlsx"]) {
    await copyFile(at(name), file(name));
    await pass(`${folder}/${name}`);
  }
  await run("merge-tabs", file("ours.xlsx"), file("returned.xlsx"), "-o", file("merged.xlsx"));
  await run("build-tabs", file("merged.xlsx"), "-o", file("again.xlsx"));
  await run("close-out", file("again.xlsx"), "--job", jobName, "--name", "Ida Fell", "-o", file("closed.xlsx"));
  await pass(`${folder}/closed.xlsx`);
  await run("check-seal", file("closed.xlsx"));
  await run("handover", file("closed.xlsx"), "--job", jobName, "-o", file("handover.xlsx"));
  await run("check-plan", file("closed.xlsx"));
  return { said, merged: await recordsOf(`${folder}/merged.xlsx`), closed: await recordsOf(`${folder}/closed.xlsx`) };
}

let alone: Awaited<ReturnType<typeof wholeJob>>;

beforeAll(async () => {
  await change(null, "built.xlsx", async ({ port }) => {
    await addPlan(port, gridPlan());
    for await (const { outcome } of buildTabs(port, moment, [jobName])) expect(outcome.built).toBe(true);
  });
  // The lead types the first records and the last one, the technician all but the last.
  await change("built.xlsx", "returned.xlsx", ({ port }) => fill(port, (index, last) => index < last));
  await change("built.xlsx", "ours.xlsx", ({ port }) => fill(port, (index, last) => index < 3 || index === last));
  alone = await wholeJob("alone", () => Promise.resolve());
});

test("a filled job goes through the commands, and its plan is one that the check has something to say of", () => {
  expect(alone.said.map(([command, code]) => [command, code])).toEqual([["merge-tabs", 0], ["build-tabs", 0], ["close-out", 0], ["check-seal", 0], ["handover", 0], ["check-plan", 1]]);
});

(hasLibreOffice ? test : test.skip)("a filled job whose files go through LibreOffice between the commands says and records what it does without", async () => {
  const passed = await wholeJob("passed", async (name) => {
    await copyFile(saveInLibreOffice(at(name), at("saved")), at(name));
  });
  expect(passed).toEqual(alone);
});

test("and so does one whose formulas lose their results between the commands, as in libraries that write files and compute nothing (openpyxl)", async () => {
  let lost = 0;
  const passed = await wholeJob("bare", async (name) => {
    const files = Object.entries(unzipSync(await readFile(at(name)))).map(([part, bytes]) => {
      if (!part.startsWith("xl/worksheets/sheet")) return [part, bytes] as const;
      const bare = strFromU8(bytes).replaceAll(/(<f(?: [^>]*)?(?:\/>|>[^<]*<\/f>))<v>[^<]*<\/v>/g, (_all, formula: string) => {
        lost += 1;
        return formula;
      });
      return [part, strToU8(bare)] as const;
    });
    await writeFile(at(name), zipSync(Object.fromEntries(files)));
  });
  expect(lost).toBeGreaterThan(100);
  expect(passed).toEqual(alone);
});
