import { readFile, writeFile } from "node:fs/promises";
import { openHeadless } from "../../src/headless/open-headless";
import { addPlan, jobName, smallPlan } from "../support/commissioning-plan";
import { runCommand as run } from "../support/run-command";
import { tabInSight, typeInto } from "../support/tab-on-sheet";
import { workbookFolder } from "../support/workbook-folder";

const { at, change } = workbookFolder();

async function foundIn(name: string): Promise<Record<string, unknown>> {
  const workbook = await openHeadless(await readFile(at(name)));
  try {
    const { steps } = await tabInSight(workbook.port);
    return Object.fromEntries(steps.filter(({ typed }) => typed.found !== null).map(({ key, typed }) => [key.slice(6), typed.found]));
  } finally {
    workbook.dispose();
  }
}

describe("tabs on the command line", () => {
  test("are built twice with every record kept, and a filled copy comes back", async () => {
    await change(null, "plan.xlsx", ({ port }) => addPlan(port, smallPlan()));
    const first = await run("build-tabs", at("plan.xlsx"), "-o", at("one.xlsx"));
    expect(first).toMatchObject({ code: 0, complaint: "", lines: [{ built: 1, jobs: [{ job: jobName, built: true, steps: 18 }] }] });

    await change("one.xlsx", "typed.xlsx", async ({ port }) => {
      await typeInto(port, await tabInSight(port), { "T-10/A0001": { found: "N-0001" }, "T-11/A0001": { found: 4 } });
    });
    expect(await run("build-tabs", at("typed.xlsx"), "-o", at("two.xlsx"))).toMatchObject({ code: 0, lines: [{ jobs: [{ carried: 2 }] }] });
    expect(await foundIn("two.xlsx")).toEqual({ "T-10/A0001": "N-0001", "T-11/A0001": 4 });

    await change("two.xlsx", "returned.xlsx", async ({ port }) => {
      await typeInto(port, await tabInSight(port), { "T-11/A0001": { found: 5 }, "T-11/A0002": { found: 8 } });
    });
    await change("two.xlsx", "ours.xlsx", async ({ port }) => {
      await typeInto(port, await tabInSight(port), { "T-11/A0001": { found: 6 } });
    });
    const left = await run("merge-tabs", at("ours.xlsx"), at("returned.xlsx"), "-o", at("left.xlsx"));
    expect(left.code).toBe(1);
    expect(left.lines).toMatchObject([{ written: 1, left: 1, jobs: [{ job: jobName, outcome: { built: true }, rows: [{ change: "both", written: false }, { change: "theirs", written: true }] }] }]);
    expect(await foundIn("left.xlsx")).toMatchObject({ "T-11/A0001": 6, "T-11/A0002": 8 });
    expect((await run("merge-tabs", at("ours.xlsx"), at("returned.xlsx"), "-o", at("theirs.xlsx"), "--take", "theirs")).code).toBe(0);
    expect(await foundIn("theirs.xlsx")).toMatchObject({ "T-11/A0001": 5, "T-11/A0002": 8 });
  });

  test("leave hold points to the plan's own tab, and tell of them with code 1, whichever side is taken", async () => {
    const small = smallPlan();
    await change(null, "held-plan.xlsx", ({ port }) => addPlan(port, { ...small, steps: small.steps!.map((row) => (row.stepId === "T-10" ? { ...row, holdPoint: "yes" as const } : row)) }));
    await run("build-tabs", at("held-plan.xlsx"), "-o", at("held.xlsx"));
    await change("held.xlsx", "held-returned.xlsx", async ({ port }) => {
      await typeInto(port, await tabInSight(port), { "T-10/A0001": { found: "N-0001" }, "T-11/A0001": { found: 4 } });
    });
    const merged = await run("merge-tabs", at("held.xlsx"), at("held-returned.xlsx"), "-o", at("held-merged.xlsx"), "--take", "theirs");
    const rows = [{ change: "theirs", written: true }, { row: "No. 2 T-10 n-1", change: "hold point", theirs: "Found: N-0001", written: false }];
    expect(merged).toMatchObject({ code: 1, lines: [{ written: 1, left: 1, jobs: [{ rows }] }] });
    expect(await foundIn("held-merged.xlsx")).toEqual({ "T-11/A0001": 4 });

    // The plan makes another step a hold point once the tab was handed out, and nothing was built since.
    await change("held.xlsx", "held-later.xlsx", async ({ port }) => {
      const { name, values } = (await port.read()).sheets.find((sheet) => sheet.name === "Steps")!;
      const column = values.find((line) => line.includes("Hold point"))!.indexOf("Hold point");
      await port.apply([{ kind: "write", sheet: name, row: values.findIndex((line) => line.includes("T-11")), column, cells: [[{ value: "yes" }]] }]);
    });
    const later = await run("merge-tabs", at("held-later.xlsx"), at("held-returned.xlsx"), "-o", at("held-merged.xlsx"), "--take", "theirs");
    expect(later).toMatchObject({ code: 1, lines: [{ written: 0, left: 2, jobs: [{ rows: [{ change: "hold point" }, { change: "hold point" }] }] }] });
  });

  test("complain in a sentence and write nothing where a file or the call is wrong", async () => {
    await writeFile(at("text.xlsx"), "no workbook");
    await change(null, "blank.xlsx", () => Promise.resolve());
    // Each writes a file of its own: two at one file are told of each other.
    const outs = [at("no-choice.xlsx"), at("no-plan.xlsx"), at("no-return.xlsx")] as const;
    const runs = await Promise.all([
      run("merge-tabs", at("blank.xlsx"), at("blank.xlsx"), "-o", outs[0], "--take", "both"),
      run("merge-tabs", at("text.xlsx"), at("blank.xlsx"), "-o", outs[1]),
      run("merge-tabs", at("blank.xlsx"), at("absent.xlsx"), "-o", outs[2]),
    ]);
    expect(runs.map(({ code }) => code)).toEqual([2, 2, 2]);
    expect(runs[2].complaint).toContain("cannot be read");
    for (const { complaint } of runs) expect(complaint).not.toMatch(/\bat .*\.ts:|undefined|Error:/);
    for (const out of outs) await expect(readFile(out)).rejects.toThrow();
  });
});
