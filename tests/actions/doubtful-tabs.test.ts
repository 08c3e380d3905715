import { bringBack, previewReturned } from "../../src/actions/bring-back";
import { buildTabs } from "../../src/actions/build-tabs";
import { checkSeal } from "../../src/actions/check-seal";
import { acceptAsItIs, closeOut, previewCloseOut } from "../../src/actions/close-out";
import { handover } from "../../src/actions/handover";
import { planAsBuilt } from "../../src/actions/plan-as-built";
import { jobStandings } from "../../src/actions/progress";
import { reopen } from "../../src/actions/reopen";
import { readCommissioningPlan } from "../../src/planning/commissioning/build";
import { readTab, readTabs, sealBlocks, tabsInUse } from "../../src/planning/commissioning/tab";
import { Problem } from "../../src/planning/text";
import type { TableRows } from "../../src/planning/plan/schema";
import type { SheetSnapshot } from "../../src/sheet";
import { complete, jobName, moment, planWorkbook, smallPlan } from "../support/commissioning-plan";
import { builtTab, columnsOf, computed, withBlocks, withCells, type Written } from "../support/filled-tab";
import { PlainPort } from "../support/plain-workbook";
import { cellOf } from "../support/tab-on-sheet";

const plan = smallPlan();
const empty = builtTab();

/** The tab of the small plan with everything as expected. */
const filled = computed(withCells(empty, ...Object.entries(complete).flatMap(([key, cells]) => Object.entries(cells).map(([column, value]): Written => {
  const at = cellOf(readTab(empty)!, key, column);
  return [at.row, at.column, value];
}))));
const sealed = computed(withBlocks(filled, sealBlocks(filled, readTab(filled)!, { by: "AB", date: "2026-03-09 14:20" })));

function portOf(rows: TableRows, ...tabs: readonly SheetSnapshot[]): PlainPort {
  return new PlainPort({ sheets: [...planWorkbook(rows).sheets, ...tabs] });
}

/** What every action says of a job, by its name; an action that goes through says "done". */
async function said(port: PlainPort, name = jobName): Promise<Record<string, string>> {
  const actions: Readonly<Record<string, () => Promise<unknown>>> = {
    build: async () => {
      for await (const { outcome } of buildTabs(port, moment, [name])) if (!outcome.built) throw new Problem("invalid", "", null, outcome.sentence);
    },
    preview: () => previewCloseOut(port, name),
    closeOut: () => closeOut(port, name, "AB", "2026-03-09"),
    accept: () => acceptAsItIs(port, name, "AB", "as it is"),
    checkSeal: () => checkSeal(port, name),
    reopen: () => reopen(port, name, "AB", "to look", "2026-03-10"),
    handover: () => handover(port, name, "2026-03-09 15:00"),
    bringBack: () => previewReturned(port, { sheets: [filled] }),
    asBuilt: async () => planAsBuilt(name)(await port.read()),
    progress: async () => {
      const fault = jobStandings(readCommissioningPlan(await port.read())).find(({ job }) => job.job === name)!.progress.fault;
      if (fault !== "") throw new Problem("invalid", "", null, fault);
    },
  };
  const sentences: Record<string, string> = {};
  for (const [action, run] of Object.entries(actions)) {
    sentences[action] = await run().then(() => "done", (thrown: unknown) => {
      if (!(thrown instanceof Problem)) throw thrown;
      return thrown.sentence;
    });
  }
  return sentences;
}

const everyAction = ["build", "preview", "closeOut", "accept", "checkSeal", "reopen", "handover", "bringBack", "asBuilt", "progress"];

/** Expects one sentence of every action, or of some, and that none of them has written anything. */
async function expectRefused(port: PlainPort, sentence: string, name = jobName, actions: readonly string[] = everyAction): Promise<void> {
  const sentences = await said(port, name);
  expect(sentences).toMatchObject(Object.fromEntries(actions.map((action) => [action, sentence])));
  expect(sentence.length).toBeLessThanOrEqual(160);
  expect(port.applied).toEqual([]);
}

describe("nothing is built, closed, sealed, handed over or brought back", () => {
  const otherJob = { ...plan.jobs![0]!, job: "Northern annex" };

  test.each(["J0001", "j0001", " J0001 ", "\u00a0J0001"])("while two jobs have one id, written %j in the second", async (id) => {
    const rows = { ...plan, jobs: [...plan.jobs!, { ...otherJob, id }] };
    await expectRefused(portOf(rows, filled), 'Jobs "North hall" and "Northern annex" have one id, J0001. Empty that of the newer one: the build gives it another.');
    const other = `Jobs "Northern annex" and "North hall" have one id, ${id.trim()}. Empty that of the newer one: the build gives it another.`;
    // A returned file names its job by the id alone: it is refused for the first.
    await expectRefused(portOf(rows, filled), other, "Northern annex", everyAction.filter((action) => action !== "bringBack"));
  });

  test("while two arrays have one id", async () => {
    const rows = { ...plan, arrays: plan.arrays!.map((row) => ({ ...row, id: "A0001" })) };
    await expectRefused(portOf(rows, filled), 'Arrays "n-1" and "n-2" have one id, A0001. Empty that of the newer one: the build gives it another.');
  });

  test("while the id of the job is written in other capitals than on its tab", async () => {
    const rows = { ...plan, jobs: plan.jobs!.map((row) => ({ ...row, id: "j0001" })) };
    const sentence = 'Tab "North hall" has the id J0001, job "North hall" has j0001. Write it in Jobs as the tab has it.';
    await expectRefused(portOf(rows, filled), sentence, jobName, everyAction.filter((action) => action !== "bringBack"));
    await expect(previewReturned(portOf(rows, filled), { sheets: [filled] })).rejects.toThrow("is of a job that this plan does not have");
  });

  test.each(["Copy of North hall", "North hall (2)"])("while a copy of the tab is in sight as %j", async (name) => {
    await expectRefused(portOf(plan, filled, { ...filled, name }), `Tabs "North hall" and "${name}" are of one job. Bring back the copy as a file, or delete it, then build.`);
  });

  test("while the tab of another plan with the same ids lies beside its own", async () => {
    const tab = readTab(filled)!;
    const born = columnsOf(tab).key! + 3;
    const foreign = withCells({ ...filled, name: "South hall" }, [tab.markRow, born, "2026-01-01T08:00:00.000Z"]);
    expect(readTab(foreign)!.born).toBe("2026-01-01T08:00:00.000Z");
    await expectRefused(portOf(plan, filled, foreign), 'Tabs "North hall" and "South hall" are of one job. Bring back the copy as a file, or delete it, then build.');
    await expectRefused(portOf(plan, filled, { ...foreign, visible: false }), 'Tab "South hall" has the id of this job, J0001, but is of another plan. Move it to a file of its own.');
  });

  test("while the plan says that the job is closed and no seal stands in its tab", async () => {
    const rows = { ...plan, jobs: plan.jobs!.map((row) => ({ ...row, state: "closed" as const })) };
    await expectRefused(portOf(rows, filled), 'Job "North hall" is closed by its State, its tab by no seal. Write the line of the seal back from the signed page, or open under State.');
    expect(await said(portOf(rows, sealed))).toMatchObject({ checkSeal: "done", progress: "done", handover: "done" });
  });
});

test("a returned file with two tabs of one job is refused by their names", async () => {
  const port = portOf(plan, empty);
  const twice = { sheets: [filled, { ...filled, name: "Copy" }] };
  await expect(previewReturned(port, twice)).rejects.toThrow('Tabs "North hall" and "Copy" of the file are of one job. Bring back one at a time, each in its own file.');
  // What a build has left hidden is no copy.
  expect(await previewReturned(port, { sheets: [filled, { ...filled, name: "North hall before 1", visible: false }] })).toHaveLength(1);
});

test("what was shown of a returned file is not written once a second tab of the job is there", async () => {
  const port = portOf(plan, empty);
  const [returned] = await previewReturned(port, { sheets: [filled] });
  port.workbook = { sheets: [...port.workbook.sheets, { ...empty, name: "Copy" }] };
  await expect(bringBack(port, returned!, new Set(returned!.items.map(({ id }) => id)), moment)).rejects.toThrow("are of one job");
  expect(port.applied).toEqual([]);
});

describe("a seal whose line is taken out", () => {
  const { places, markRow } = readTab(sealed)!;
  const line = readTab(sealed)!.seals[0]!.row;
  const count = places.columns.key! + 6;
  const emptied = sealed.values[line]!.map((_, column): Written => [line, column, null]);
  const without = (...more: readonly Written[]): SheetSnapshot => computed(withCells(sealed, ...emptied, ...more));

  test("is missed by the count of the seals", async () => {
    await expectRefused(portOf(plan, without()), 'A line of the seals of "North hall" is gone. Undo that, or write day, code and name back from the signed page.');
  });

  test.each([0, null, "none", -1])("is missed by the digests in the rows where the count says %j", async (value) => {
    const port = portOf(plan, without([markRow, count, value]));
    expect(readTabs(await port.read())[0]!.faults).toEqual([]);
    expect(await checkSeal(port, jobName)).toMatchObject({ code: "", holds: false, changed: [{ label: "The line of the seal, which is gone, or whose sealing broke off" }] });
  });

  test("is told to be there by the plan, where the digests are gone too", async () => {
    const { digest } = places.columns;
    const bare = without([markRow, count, 0], ...sealed.values.flatMap((_, row): Written[] => (row === readTab(sealed)!.headerRow ? [] : [[row, digest!, null]])));
    await expect(checkSeal(portOf(plan, bare), jobName)).rejects.toThrow("was never sealed");
    const rows = { ...plan, jobs: plan.jobs!.map((row) => ({ ...row, state: "closed" as const })) };
    await expect(checkSeal(portOf(rows, bare), jobName)).rejects.toThrow("is closed by its State, its tab by no seal.");
  });
});

test("in a file without its plan the copy of a tab is found beside the tab in use, and what a build has left is not", () => {
  const other = withCells({ ...filled, name: "Other" }, [0, columnsOf(readTab(filled)!).key! + 1, "J0002"]);
  const [one, two] = tabsInUse(readTabs({ sheets: [{ ...filled, name: "North hall before 2", visible: false }, filled, { ...filled, name: "Copy" }, other] }));
  expect([one!.tab.sheet, one!.copies.map(({ sheet }) => sheet)]).toEqual(["North hall", ["Copy"]]);
  expect([two!.tab.sheet, two!.copies]).toEqual(["Other", []]);
});
