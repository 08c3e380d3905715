// `npm run -s calc -- '=BAY.USABLE("RAID 6",12,4)' …`: evaluates formulas and prints one line of JSON each.
import { text } from "node:stream/consumers";
import { createEvaluator } from "./evaluate";

const mostLines = 10_000;
const usage = `Usage: npm run -s calc -- '=BAY.USABLE("RAID 6",12,4)' ['=…' …]
       npm run -s calc -- - < formulas.txt     one formula a line, at most ${mostLines.toLocaleString("en")}
Prints one line of JSON for each formula. Exit code 0: every formula has its line, be it an error; 2: the call itself is wrong.`;

async function main(args: readonly string[]): Promise<number> {
  if (args.includes("--help")) {
    process.stdout.write(`${usage}\n`);
    return 0;
  }
  const formulas = args.length === 1 && args[0] === "-" ? (await text(process.stdin)).split(/\r?\n/).filter((line) => line.trim() !== "") : args;
  if (formulas.length === 0 || formulas.includes("-")) return refuse(usage);
  if (formulas.length > mostLines) return refuse(`${formulas.length} formulas are too many for one call: give at most ${mostLines}.`);
  const evaluate = createEvaluator();
  const lines: string[] = [];
  for (const formula of formulas) lines.push(JSON.stringify(await evaluate(formula.trim())));
  process.stdout.write(`${lines.join("\n")}\n`);
  return 0;
}

function refuse(sentence: string): number {
  process.stderr.write(`${sentence}\n`);
  return 2;
}

void main(process.argv.slice(2)).then((code) => {
  process.exitCode = code;
});
