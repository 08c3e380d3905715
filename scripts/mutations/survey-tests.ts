import { existsSync, readdirSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { build } from "esbuild";
import type { Mutant } from "./find-mutants";
import { markReached } from "./mark-reached";
import type { SourceTexts } from "./source-texts";
import type { Outcome } from "./worker";
import { shareOut, type WorkerProcess } from "./worker-process";

/** What a mutant is tried against: a test file, or some tests of it, by their place. */
export interface TestRun {
  readonly testFile: string;
  readonly only?: readonly number[];
  /** Milliseconds it takes over the files as they are. */
  readonly ms: number;
}

export interface Survey {
  readonly files: readonly string[];
  readonly leftOut: readonly { readonly testFile: string; readonly why: string }[];
  /** The runs that reach a mutant. */
  readonly testsOf: (id: number) => TestRun[];
}

interface Surveyed {
  readonly testFile: string;
  readonly outcome: Outcome;
  /** Whether its tests also pass last first, so that some of them may be run without the others. */
  readonly isIndependent: boolean;
}

/** It throws chance at every function: every mutant is reached by it, for seconds each, and in a trial over 311 mutants it was never the one to notice. */
const fileLeftOut = "hostile-arguments.test.ts";
const cleanLimit = 300_000;

/** Runs every test file of `folders` that imports a file of the room once, and notes which tests reach which mutant. */
export async function surveyTests(root: string, folders: readonly string[], texts: SourceTexts, sample: readonly Mutant[]): Promise<Survey> {
  const ids = sample.map((mutant, id) => [id, mutant] as const);
  const overlay = Object.fromEntries([...texts].map(([file, text]) => [file, markReached(file, text, ids.filter(([, mutant]) => mutant.file === file))]));
  const files = await importersOf(root, folders, texts);
  const surveyed = await shareOut(files, (testFile, worker) => surveyFile(testFile, overlay, worker));
  const passing = surveyed.filter(({ outcome }) => outcome.failure === undefined);
  return {
    files: passing.map(({ testFile }) => testFile),
    leftOut: surveyed.flatMap(({ testFile, outcome: { failure } }) => (failure === undefined ? [] : [{ testFile, why: failure.split("\n")[0]! }])),
    testsOf: (id) => passing.flatMap((file) => runOf(file, id)),
  };
}

async function surveyFile(testFile: string, overlay: Readonly<Record<string, string>>, worker: WorkerProcess): Promise<Surveyed> {
  const backwards = await worker.run({ testFile, overlay, backwards: true }, cleanLimit);
  if (backwards?.failure === undefined && backwards) return { testFile, outcome: backwards, isIndependent: true };
  const forwards = await worker.run({ testFile, overlay }, cleanLimit);
  return { testFile, outcome: forwards ?? { failure: "it took too long", tests: {}, reachedByAll: [], ms: 0 }, isIndependent: false };
}

function runOf({ testFile, outcome: { tests, reachedByAll, ms }, isIndependent }: Surveyed, id: number): TestRun[] {
  if (reachedByAll.includes(id)) return [{ testFile, ms }];
  const reaching = Object.entries(tests).filter(([, { reached }]) => reached.includes(id));
  if (reaching.length === 0) return [];
  // What a file works out once is reached by the first test that asks for it, and told by others: in the end the whole file is run.
  const reachingAlone = { testFile, only: reaching.map(([place]) => Number(place)), ms: reaching.reduce((sum, [, test]) => sum + test.ms, 0) };
  return isIndependent && reaching.length < Object.keys(tests).length ? [reachingAlone, { testFile, ms }] : [{ testFile, ms }];
}

/** Finds the test files in `folders` that import a file of the room, directly or not. */
async function importersOf(root: string, folders: readonly string[], texts: SourceTexts): Promise<string[]> {
  const testFiles = folders.flatMap((folder) => testFilesIn(join(root, "tests", folder)));
  const bundle = { bundle: true, packages: "external", platform: "node", treeShaking: false, write: false, outdir: root, absWorkingDir: root } as const;
  const { metafile } = await build({ ...bundle, entryPoints: testFiles, metafile: true, logLevel: "error" });
  const importers = Object.values(metafile.outputs).filter(({ inputs }) => Object.keys(inputs).some((file) => texts.has(resolve(root, file))));
  return [...new Set(importers.map(({ entryPoint }) => resolve(root, entryPoint!)))].sort();
}

/** The test files of a folder, or a test file itself. */
function testFilesIn(folder: string): string[] {
  if (folder.endsWith(".test.ts")) return [folder];
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" });
  return names.filter((name) => name.endsWith(".test.ts") && basename(name) !== fileLeftOut).map((name) => join(folder, name));
}
