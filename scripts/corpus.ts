// `npm run -s corpus -- FOLDER [OUT]`: runs recalc over every workbook of a folder, each in a process of its own, and prints what took long, what was
// refused and what came to grief. The saved files are left in OUT for a comparison by another program.
import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** What a hostile file may cost at most. */
const budget = { seconds: 10, megabytes: 500 };

interface Run {
  readonly name: string;
  readonly code: number;
  readonly seconds: number;
  readonly megabytes: number;
  readonly complaint: string;
}

const [folder, out = join(tmpdir(), "baywright-corpus")] = process.argv.slice(2);
if (folder === undefined) {
  console.error("Usage: npm run -s corpus -- FOLDER [OUT]");
  process.exit(2);
}
mkdirSync(out, { recursive: true });
// Tells at the end how much memory the process took at most, and its time on a processor: others may share the machine.
const tellCost =
  'data:text/javascript,import{writeSync}from"node:fs";process.on("exit",()=>{' +
  'const{maxRSS,userCPUTime,systemCPUTime}=process.resourceUsage();writeSync(3,maxRSS+" "+(userCPUTime+systemCPUTime)/1e6)})';
const runner = join(__dirname, "run.mjs");

function recalc(name: string): Run {
  const { status, stderr, output } = spawnSync(process.execPath, ["--import", tellCost, runner, "src/headless/recalc.ts", join(folder!, name), "-o", join(out, name)], {
    encoding: "utf8",
    maxBuffer: 2 ** 26,
    stdio: ["ignore", "pipe", "pipe", "pipe"],
    timeout: 120_000,
  });
  const [kilobytes = 0, seconds = 0] = (output[3] ?? "").split(" ").map(Number);
  return { name, code: status ?? -1, seconds, megabytes: kilobytes / 1024, complaint: stderr.trim() };
}

const runs = readdirSync(folder).filter((name) => name.endsWith(".xlsx")).sort().map(recalc);
for (const { name, code, seconds, megabytes, complaint } of runs) {
  const isOver = seconds > budget.seconds || megabytes > budget.megabytes;
  const isTrace = complaint.includes("\n") || (code !== 0 && code !== 1 && code !== 2);
  const remarks = `${isTrace ? ", NO SENTENCE" : ""}${isOver ? ", OVER BUDGET" : ""}`;
  if (code !== 0 || isOver) console.log(`${name}: ${code}, ${seconds.toFixed(1)} s, ${megabytes.toFixed(0)} MB${remarks}  ${complaint.split("\n")[0]}`);
}
const most = (pick: (run: Run) => number) => Math.max(...runs.map(pick));
const sum = runs.reduce((total, { seconds }) => total + seconds, 0);
console.log(`${runs.length} files in ${sum.toFixed(0)} s, at most ${most(({ seconds }) => seconds).toFixed(1)} s and ${most(({ megabytes }) => megabytes).toFixed(0)} MB; saved in ${out}`);
