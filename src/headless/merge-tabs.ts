import { basename } from "node:path";
import { parseArgs } from "node:util";
import { bringBack, previewReturned } from "../actions/bring-back";
import { momentOf } from "../actions/moment";
import { openHeadless } from "./open-headless";
import { readNamedFile, runCommand, writeNamedFile, WrongCall } from "./run-command";

const usage = `Usage: npm run -s merge-tabs -- plan.xlsx returned.xlsx -o out.xlsx [--take theirs|mine]
Writes the records of a returned file into the plan's tabs, one line of JSON for each record that is written or in conflict.
Exit code 0: all is written; 1: the file is written, but a tab could not be; 2: nothing is written, the call or a file is wrong; 3: records that
both sides changed were left as the plan has them.`;

async function main(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options: { output: { type: "string", short: "o" }, take: { type: "string" } } });
  const [planFile, returnedFile] = positionals;
  const { output, take } = values;
  if (planFile === undefined || returnedFile === undefined || positionals.length > 2 || output === undefined || (take !== undefined && take !== "theirs" && take !== "mine")) throw new WrongCall();
  const plan = await openHeadless(await readNamedFile(planFile), { tabsRest: true });
  try {
    const returned = await openHeadless(await readNamedFile(returnedFile));
    const snapshot = await returned.port.read().finally(() => {
      returned.dispose();
    });
    let [left, failed] = [0, 0];
    for (const job of await previewReturned(plan.port, snapshot)) {
      const accepted = new Set(job.items.filter(({ change }) => change === "theirs" || take === "theirs").map(({ id }) => id));
      for (const { id, change, label, ours, theirs } of job.items) {
        const written = accepted.has(id);
        if (!written && take === undefined) left += 1;
        console.log(JSON.stringify({ job: job.job, row: label, change, ours, theirs, written }));
      }
      for (const remark of job.remarks) console.log(JSON.stringify({ job: job.job, remark }));
      if (accepted.size === 0) continue;
      const outcome = await bringBack(plan.port, job, accepted, momentOf(new Date(), basename(planFile)));
      if (!outcome.built) failed += 1;
      console.log(JSON.stringify(outcome));
    }
    await writeNamedFile(output, await plan.save());
    return failed > 0 ? 1 : left > 0 ? 3 : 0;
  } finally {
    plan.dispose();
  }
}

runCommand(usage, main);
