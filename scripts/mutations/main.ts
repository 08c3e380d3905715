// `npm run mutations -- ROOM` changes one small thing at a time in the files of a room, and counts how many of the changes the unit tests notice.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import ts from "typescript";
import { seededRandom } from "../../tests/support/seeded-random";
import { compileCheck } from "./compile-check";
import { findMutants, type Mutant } from "./find-mutants";
import { RunOrder } from "./run-order";
import { mutated, type SourceTexts } from "./source-texts";
import { surveyTests } from "./survey-tests";
import { wilsonInterval } from "./wilson";
import { shareOut } from "./worker-process";

const root = join(__dirname, "..", "..");

async function main(): Promise<void> {
  const { positionals, values } = parseArgs({
    allowPositionals: true,
    options: { sample: { type: "string", default: "400" }, seed: { type: "string", default: "1" }, tests: { type: "string" } },
  });
  const [room = ""] = positionals;
  const folder = ["src/planning", "src"].map((above) => join(above, room)).find((path) => room !== "" && existsSync(join(root, path)));
  if (!folder) throw new Error("Write a folder of src/planning or of src, such as: npm run mutations -- addressing --sample 400 --seed 1");
  const testFolders = values.tests?.split(",") ?? [...testFoldersOf(folder)];

  const texts = readTexts(join(root, folder));
  const all = [...texts].flatMap(([file, text]) => findMutants(file, text));
  const { sample, uncompiled } = drawSample(all, Number(values.sample), Number(values.seed), compileCheck(root, texts));
  console.log(`${folder}: ${all.length} mutants, ${sample.length} drawn by seed ${values.seed}; ${uncompiled} more were drawn that do not compile`);

  const survey = await surveyTests(root, testFolders, texts, sample);
  console.log(`${survey.files.length} test files in ${testFolders.join(", ")} reach the room`);
  for (const { testFile, why } of survey.leftOut) console.log(`left out: ${relative(root, testFile)}: ${why}`);

  const order = new RunOrder();
  const fates = await shareOut(sample.map((mutant, id) => [id, mutant] as const), async ([id, mutant], worker) => {
    const overlay = { [mutant.file]: mutated(mutant, texts) };
    const runs = order.sorted(survey.testsOf(id));
    for (const { testFile, only, ms } of runs) {
      const outcome = await worker.run({ testFile, only, overlay }, 10_000 + 5 * ms);
      order.note(testFile, !outcome || outcome.failure !== undefined);
      if (!outcome) return "timed out";
      if (outcome.failure !== undefined) return "failed";
    }
    return runs.length > 0 ? "survived" : "not reached";
  });
  report(sample, fates, texts);
}

/** A room is held by the tests of its neighbours too, and the plan by the checks: what they find shows that it was read right. */
function testFoldersOf(folder: string): Set<string> {
  const neighbourhood = relative("src", folder).split("/").slice(0, 2).join("/");
  return new Set([neighbourhood, "planning/checks", "functions", "golden", "published"]);
}

function readTexts(folder: string): SourceTexts {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts")).sort();
  return new Map(files.map((file) => [join(folder, file), readFileSync(join(folder, file), "utf8")]));
}

/** Draws compiling mutants without replacement, each as likely as any other. */
function drawSample(all: readonly Mutant[], size: number, seed: number, compiles: (mutant: Mutant) => boolean): { sample: Mutant[]; uncompiled: number } {
  const rest = [...all];
  const sample: Mutant[] = [];
  const random = seededRandom(seed);
  let uncompiled = 0;
  while (sample.length < size && rest.length > 0) {
    const [mutant] = rest.splice(Math.floor(random() * rest.length), 1);
    if (compiles(mutant!)) sample.push(mutant!);
    else uncompiled += 1;
  }
  return { sample, uncompiled };
}

function report(sample: readonly Mutant[], fates: readonly string[], texts: SourceTexts): void {
  const alive = sample.map((mutant, id) => ({ mutant, fate: fates[id]! })).filter(({ fate }) => fate === "survived" || fate === "not reached");
  const place = ({ file, start }: Mutant) => ts.getLineAndCharacterOfPosition(ts.createSourceFile(file, texts.get(file)!, ts.ScriptTarget.Latest), start);
  alive.sort((a, b) => a.mutant.file.localeCompare(b.mutant.file) || a.mutant.start - b.mutant.start);
  for (const { mutant, fate } of alive) {
    const { line, character } = place(mutant);
    const original = texts.get(mutant.file)!.slice(mutant.start, mutant.end);
    console.log(`${relative(root, mutant.file)}:${line + 1}:${character + 1} ${fate}: ${mutant.kind}: ${clip(original)} -> ${clip(mutant.replacement) || "(nothing)"}`);
  }
  const killed = sample.length - alive.length;
  const timedOut = fates.filter((fate) => fate === "timed out").length;
  const [low, high] = wilsonInterval(killed, sample.length).map(percent);
  console.log(`killed ${killed} of ${sample.length}: ${percent(killed / sample.length)} (95 % interval ${low} to ${high}), of these ${timedOut} by a timeout or a crash`);
}

function clip(text: string): string {
  const line = text.replaceAll(/\s+/g, " ");
  return line.length > 70 ? `${line.slice(0, 69)}…` : line;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

void main();
