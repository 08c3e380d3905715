import { invalid, Problem } from "../../../planning/text";
import { sameSheetName } from "../../../sheet";
import type { ProbeOutcome, SelfTest } from "../../self-test";
import { officeHost, type OfficeHost } from "../host";
import { hostProblem } from "../host-problem";
import { officePort } from "../office-port";
import { argumentTrial, eventTrial, sizeTrial, spillTrial, textTrial, writeTrial } from "./cell-trials";
import { choiceTrial, lookTrial, memberTrial, pageTrial } from "./sheet-trials";
import type { Bench, Probe, Trial } from "./trial";

/** In the order in which they are tried; the last fills the sheet. */
const allTrials: readonly Trial[] = [textTrial, argumentTrial, spillTrial, writeTrial, choiceTrial, pageTrial, lookTrial, eventTrial, memberTrial, sizeTrial];

/** The sheet that the test adds: known by its id, as anybody may rename it. */
interface Scratch {
  readonly id: string;
  readonly name: string;
}

/** Makes the self-test of the spreadsheet program in which this page runs. */
export function officeSelfTest(host: OfficeHost = officeHost, trials: readonly Trial[] = allTrials): SelfTest {
  return async (report) => {
    const scratch = await told(addScratch(host));
    try {
      const bench = benchOn(host, scratch);
      const total = trials.reduce((sum, { probes }) => sum + probes.length, 0);
      const outcomes: ProbeOutcome[] = [];
      for (const trial of trials) {
        report({ done: outcomes.length, total, subject: trial.subject });
        outcomes.push(...(await tryOut(trial, bench)));
      }
      return outcomes;
    } finally {
      await removeScratch(host, scratch);
    }
  };
}

async function addScratch(host: OfficeHost): Promise<Scratch> {
  const name = await host.run(freeName);
  try {
    return await host.run(async (context) => {
      const sheet = context.workbook.worksheets.add(name).load("id");
      await context.sync();
      return { id: sheet.id, name };
    });
  } catch (thrown) {
    await clearEmpty(host, name);
    throw thrown;
  }
}

async function freeName(context: Excel.RequestContext): Promise<string> {
  const { worksheets, protection } = context.workbook;
  worksheets.load("items/name");
  protection.load("protected");
  await context.sync();
  if (protection.protected) throw invalid("workbook", null, "The structure of this workbook is protected, so no sheet can be added. Unprotect it under Review, or try in a new workbook.");
  const isTaken = (name: string) => worksheets.items.some((one) => sameSheetName(one.name, name));
  let name = "BAY self-test";
  for (let number = 2; isTaken(name); number += 1) name = `BAY self-test ${number}`;
  return name;
}

/** Takes a sheet away that was added though the answer was lost; whoever has added one of its name meanwhile keeps what is on it. */
async function clearEmpty(host: OfficeHost, name: string): Promise<void> {
  try {
    await host.run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name);
      const used = sheet.getUsedRangeOrNullObject(false).load("address");
      await context.sync();
      if (used.isNullObject) sheet.delete();
      await context.sync();
    });
  } catch {
    // The failure that brought us here is the one to tell.
  }
}

/** Takes the scratch sheet away again; while a cell is being edited it waits. */
async function removeScratch(host: OfficeHost, { id, name }: Scratch): Promise<void> {
  try {
    await host.look(async (context) => {
      context.workbook.worksheets.getItemOrNullObject(id).delete();
      await context.sync();
    });
  } catch {
    throw invalid("sheet", name, `The sheet ${name} could not be taken away again. Nothing else was touched: delete it yourself.`);
  }
}

async function tryOut({ subject, probes, find }: Trial, bench: Bench): Promise<ProbeOutcome[]> {
  try {
    const found = await find(bench);
    return probes.map((probe, index) => judged(subject, probe, found[index] ?? "nothing"));
  } catch (thrown) {
    const reason = thrown instanceof Error ? (thrown instanceof Problem ? thrown.sentence : thrown.message) : String(thrown);
    return probes.map(({ id, tried, expected }) => ({ id, subject, tried, expected, found: reason, verdict: "not tried" }));
  }
}

function judged(subject: string, { id, tried, expected }: Probe, found: string): ProbeOutcome {
  return { id, subject, tried, expected, found, verdict: expected === null ? "noted" : found === expected ? "as expected" : "differs" };
}

/** How long, and how often, an event is waited for. */
const [pauseMilliseconds, mostPauses] = [250, 20];

function benchOn(host: OfficeHost, { id, name }: Scratch): Bench {
  const port = officePort(host);
  const onSheet = <T>(work: (sheet: Excel.Worksheet) => T): Promise<T> =>
    told(host.run(async (context) => {
      const result = work(context.workbook.worksheets.getItem(id));
      await context.sync();
      return result;
    }));
  return {
    write: (row, column, cells) => port.apply([{ kind: "write", sheet: name, row, column, cells }]),
    read: async () => {
      const sheet = (await port.read([name])).sheets.find((one) => sameSheetName(one.name, name));
      if (sheet === undefined) throw invalid("sheet", name, `The sheet ${name} was renamed or deleted while it was used.`);
      return sheet;
    },
    spill: async (row, column) => (await port.spillAreas([{ sheet: name, row, column }]))[0] ?? null,
    set: async (queue) => { await onSheet(queue); },
    ask: async (queue) => (await onSheet(queue))(),
    changesDuring: async (work) => {
      let changes = 0;
      const stop = await port.watch(() => (changes += 1));
      try {
        await work();
        for (let pauses = 0; changes === 0 && pauses < mostPauses; pauses += 1) await host.wait(pauseMilliseconds);
        return changes;
      } finally {
        stop();
      }
    },
  };
}

async function told<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (thrown) {
    throw hostProblem(thrown);
  }
}
