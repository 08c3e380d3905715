import { bringBack, previewReturned } from "../../src/actions/bring-back";
import { buildTabs } from "../../src/actions/build-tabs";
import { acceptAsItIs, closeOut } from "../../src/actions/close-out";
import { reopen } from "../../src/actions/reopen";
import { idOfJob } from "../../src/planning/commissioning/job";
import { isClosed } from "../../src/planning/commissioning/record";
import { readTabs, tabFamily, type TabReading } from "../../src/planning/commissioning/tab";
import { Problem } from "../../src/planning/text/problem";
import { readPlan, rowsOf } from "../../src/planning/plan/read";
import type { Scalar, WorkbookSnapshot } from "../../src/sheet";
import type { Edit } from "../../src/workbook/port";
import { jobName, moment, planSheets, smallPlan } from "../support/commissioning-plan";
import type { ClientBuild } from "../support/host-workbook/client-build";
import { hostWorkbook, type HostOptions, type HostWorkbook } from "../support/host-workbook/host-workbook";
import { cellOf, snagColumnOf, tabInSight, typeInto } from "../support/tab-on-sheet";

const records = {
  "T-01/site": { found: "Yes", by: "AB", note: "=not a formula" },
  "T-10/A0001": { found: "N-0001", by: "AB", done: 46_083 },
  "T-11/A0002": { found: 8, by: "CD" },
  "T-12/A0001": { found: 14.5, unit: "TiB", by: "CD" },
  "T-20/A0001.A.0": { found: "192.0.2.1", by: "AB" },
  "T-90/site": { found: "Accepted", by: "AB", witness: "EF" },
} as const;
/** Texts beside the summary, over a Result, and far below: row, column, text. */
const elsewhere = [[4, 30, "Mind the step"], [21, 4, "N-0001 or so"], [90, 2, "Ask the desk"]] as const;
const late = { key: "T-21/A0002.B.0", found: 8972 } as const;

/** Makes a workbook with a tab in which records and a snag were typed. */
async function filledWorkbook(options: HostOptions): Promise<HostWorkbook> {
  const workbook = hostWorkbook({ sheets: planSheets(smallPlan()), ...options });
  for await (const { outcome } of buildTabs(workbook.port, moment)) if (!outcome.built) throw new Error(outcome.sentence);
  const tab = await tabInSight(workbook.port);
  await typeInto(workbook.port, tab, records);
  await workbook.port.apply([
    { kind: "write", sheet: tab.sheet, row: tab.places.snagsRow + 2, column: 2, cells: [[{ value: "Scratch on the cover" }]] },
    ...elsewhere.map(([row, column, value]): Edit => ({ kind: "write", sheet: tab.sheet, row, column, cells: [[{ value }]] })),
  ]);
  return workbook;
}

const uncomputed: HostOptions = { calculate: () => "" };

/** Waives every other step, closes the snag and accepts what was typed over, so that the tab can be closed out. */
async function finish(workbook: HostWorkbook): Promise<void> {
  const tab = await tabInSight(workbook.port);
  const rest = tab.steps.filter(({ typed }) => typed.found === null).map(({ key }) => [key.split("/").slice(1).join("/"), { found: "Waived", by: "AB", note: "later" }] as const);
  await typeInto(workbook.port, tab, Object.fromEntries(rest));
  const { snagsRow } = tab.places;
  await workbook.port.apply([
    { kind: "write", sheet: tab.sheet, row: snagsRow + 2, column: snagColumnOf(tab, "closed"), cells: [[{ value: "Closed" }]] },
    { kind: "write", sheet: tab.sheet, row: snagsRow + 2, column: snagColumnOf(tab, "by"), cells: [[{ value: "AB" }]] },
  ]);
  // The Result that was typed over, and the six figures that follow from it.
  expect(await acceptAsItIs(workbook.port, jobName, "EF", "Agreed with the desk")).toBe(7);
}

async function returnedFile(workbook: HostWorkbook): Promise<WorkbookSnapshot> {
  const file = await workbook.port.read();
  return {
    sheets: file.sheets.map((sheet) => {
      const tab = readTabs({ sheets: [sheet] })[0];
      if (tab === undefined) return sheet;
      const { row, column } = cellOf(tab, "T-13/A0002");
      return { ...sheet, values: sheet.values.map((line, index) => (index === row ? line.map((cell, at) => (at === column ? "192.0.2.250" : cell)) : line)) };
    }),
  };
}

interface Operation {
  readonly name: string;
  /** True where it reads what formulas come to: only then are they computed, which takes longer than all else. */
  readonly readsAnswers?: true;
  readonly prepare: (workbook: HostWorkbook) => Promise<unknown>;
  readonly run: (workbook: HostWorkbook, prepared: unknown) => Promise<unknown>;
}

const operations: readonly Operation[] = [
  { name: "a build over a filled tab", prepare: () => Promise.resolve(), run: (workbook) => build(workbook) },
  { name: "a second build, with an earlier tab still there", prepare: (workbook) => build(workbook), run: (workbook) => build(workbook) },
  {
    name: "bringing a filled tab back",
    prepare: returnedFile,
    run: async (workbook, prepared) => {
      const [job] = await previewReturned(workbook.port, prepared as WorkbookSnapshot);
      const outcome = await bringBack(workbook.port, job!, new Set(job!.items.map(({ id }) => id)), moment);
      if (!outcome.built) throw new Problem("no-answer", "", null, outcome.sentence);
    },
  },
  { name: "closing out", readsAnswers: true, prepare: finish, run: (workbook) => closeOut(workbook.port, jobName, "AB", "2026-03-09") },
  {
    name: "reopening",
    readsAnswers: true,
    prepare: async (workbook) => {
      await finish(workbook);
      await closeOut(workbook.port, jobName, "AB", "2026-03-09");
    },
    run: (workbook) => reopen(workbook.port, jobName, "AB", "A drive was changed", "2026-04-01"),
  },
];

async function build(workbook: HostWorkbook): Promise<void> {
  for await (const { outcome } of buildTabs(workbook.port, moment, [jobName])) {
    if (!outcome.built) throw new Problem("no-answer", "", null, outcome.sentence);
  }
}

async function familyOf(workbook: HostWorkbook) {
  const snapshot = await workbook.port.read();
  const job = rowsOf(readPlan(snapshot), "jobs")[0]!;
  return tabFamily(readTabs(snapshot), idOfJob(job), job.job);
}

/** Counts the records that stand neither at their step nor in the kept block. */
function lostIn(tab: TabReading, expected: Readonly<Record<string, Readonly<Record<string, Scalar>>>>): string[] {
  return Object.entries(expected).flatMap(([key, cells]) => {
    const holds = [...tab.steps, ...tab.orphans].some((step) => step.key.endsWith(`/${key}`) && Object.entries(cells).every(([column, value]) => step.typed[column as "found"] === value));
    return holds ? [] : [key];
  });
}

/** After none, half and all of a request's actions. */
function thirdsOf(actions: number): number[] {
  return [...new Set([0, Math.floor(actions / 2), actions])];
}

/**
 * After how many of a request's actions it fails: each of the first and of the last ones, where sheets come and are swapped, one in the
 * middle, and all. A request that only reads leaves the workbook as it is wherever it fails.
 */
function partsOf(actions: number, changes: boolean): number[] {
  if (!changes) return thirdsOf(actions);
  const near = Array.from({ length: 10 }, (_, at) => [at, actions - at]).flat();
  return [...new Set([...near, Math.floor(actions / 2)])].filter((part) => part >= 0 && part <= actions);
}

/** Counts the texts that stand on no sheet of the workbook that is in sight, neither in their cell nor in the block for what was found. */
async function textsLost(workbook: HostWorkbook): Promise<string[]> {
  const shown = (await workbook.port.read()).sheets.filter(({ visible }) => visible).flatMap(({ values }) => values.flat());
  return elsewhere.flatMap(([, , text]) => (shown.includes(text) ? [] : [text]));
}

/** Every operation and fault point over the client for the web; of the others, whose proxies differ little, a build, at both ends and in the middle of each request. */
const cases: readonly (Operation & { readonly client: ClientBuild; readonly parts: (actions: number, changes: boolean) => number[] })[] = [
  ...operations.map((operation) => ({ ...operation, client: "web" as const, parts: partsOf })),
  ...(["Windows", "Mac", "tablet"] as const).map((client) => ({ ...operations[0]!, client, parts: thirdsOf })),
];

describe.each(cases)("a failure at any request of $name, client for $client", ({ name, readsAnswers, prepare, run, client, parts }) => {
  test("leaves one whole tab with every record, and trying again ends well", async () => {
    const filled = await filledWorkbook({ build: client, ...(readsAnswers === true ? {} : uncomputed) });
    const prepared = await prepare(filled);
    const clean = filled.copy();
    await run(clean, prepared);
    const requests = clean.exchanges();
    const steps = (await tabInSight(clean.port)).steps.length;

    let [points, lost] = [0, 0];
    for (const [index, { actions, changes }] of requests.entries()) {
      for (const after of parts(actions, changes)) {
        const workbook = filled.copy();
        workbook.failAt({ sync: index + 1, after });
        points += 1;
        await expect(run(workbook, prepared)).rejects.toBeInstanceOf(Problem);

        const { current } = await familyOf(workbook);
        expect(current).toMatchObject({ whole: true, visible: true });
        expect(current!.steps).toHaveLength(steps);
        lost += lostIn(current!, records).length + (await textsLost(workbook)).length;
        expect(current!.snags[0]?.typed.foundWrong).toBe("Scratch on the cover");

        if (name === "closing out" || name === "reopening") {
          const wanted = name === "closing out";
          if (isClosed(current!) !== wanted) await run(workbook, prepared);
          expect(isClosed(await tabInSight(workbook.port))).toBe(wanted);
        } else {
          await run(workbook, prepared);
          const again = await tabInSight(workbook.port);
          expect(again.sheet).toBe(jobName);
          lost += lostIn(again, records).length + (await textsLost(workbook)).length;
          expect(again.snags).toHaveLength(1);
        }
      }
    }
    console.log(`${name}, client for ${client}: ${points} fault points tried at ${requests.length} requests of ${requests.map(({ actions }) => actions).join(", ")} actions, records lost: ${lost}`);
    expect(lost).toBe(0);
  });
});

describe("what a colleague types while a tab is built", () => {
  test("is found under its key, whenever it was typed", async () => {
    const filled = await filledWorkbook(uncomputed);
    const clean = filled.copy();
    await build(clean);
    const syncs = clean.syncs();
    let lost = 0;
    for (let sync = 1; sync <= syncs; sync += 1) {
      const workbook = filled.copy();
      const { sheet, row, column } = cellOf(await tabInSight(workbook.port), late.key);
      workbook.before(sync, () => {
        workbook.type(sheet, row, column, late.found, "remote");
        workbook.type(sheet, 5, 31, "Typed meanwhile", "remote");
      });
      await build(workbook);
      const tab = await tabInSight(workbook.port);
      const isThere = tab.elsewhere.some(({ typed }) => typed.text === "Typed meanwhile");
      lost += (await textsLost(workbook)).length + (isThere ? 0 : 1);
      lost += lostIn(await tabInSight(workbook.port), { ...records, [late.key]: { found: late.found } }).length;
    }
    console.log(`typing at each of ${syncs} syncs of a build, records lost: ${lost}`);
    expect(lost).toBe(0);
  });
});
