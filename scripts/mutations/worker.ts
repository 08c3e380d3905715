// Runs test files in a process of its own, one after the other, each over source files loaded afresh, some of them with other text than on disk.
import { readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { compileFunction } from "node:vm";
import { transformSync } from "esbuild";
import { expect } from "expect";
import fc from "fast-check";
import { addEventHandler, afterAll, afterEach, beforeAll, beforeEach, describe, it, resetState, run, test, getState } from "jest-circus";

export interface Task {
  readonly testFile: string;
  /** Texts that stand in for those on disk, by file. */
  readonly overlay: Readonly<Record<string, string>>;
  /** The tests to run, by their place in the file; left out: all. */
  readonly only?: readonly number[];
  /** Last test first. */
  readonly backwards?: boolean;
}

export interface Outcome {
  /** Message of the first test that failed; the tests after it are not run. */
  readonly failure?: string;
  /** The tests that ran, by their place in the file. */
  readonly tests: Readonly<Record<number, { readonly ms: number; readonly reached: readonly number[] }>>;
  /** What the loading of the file and its hooks reach: that concerns every test. */
  readonly reachedByAll: readonly number[];
  readonly ms: number;
}

type Loader = (exports: unknown, require: unknown, module: { exports: unknown }, file: string, folder: string, reached: (id: number) => void) => void;

const root = join(__dirname, "..", "..");
const setUp = join(root, "tests", "support", "custom-functions.ts");
const compiled = new Map<string, Loader>();
let only: ReadonlySet<number> | undefined;
let backwards = false;
let failure: string | undefined;
let places = new Map<unknown, number>();
let tests: Record<number, { ms: number; reached: number[] }> = {};
let reachedByAll = new Set<number>();
let reachedNow = reachedByAll;
let begun = 0;

// A counterexample is enough: nobody reads the smallest one.
fc.configureGlobal({ endOnFailure: true });
Object.assign(globalThis, { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, test });
const globalNames = new Set(Object.keys(globalThis));
addEventHandler((event, state) => {
  if (event.name === "run_start") {
    const inOrder = (block: typeof state.rootDescribeBlock): void => {
      for (const child of block.children) {
        if (child.type === "test") places.set(child, places.size);
        else inOrder(child);
      }
      if (backwards) block.children.reverse();
    };
    inOrder(state.rootDescribeBlock);
  }
  if (event.name === "test_start") {
    if (failure !== undefined || (only && !only.has(places.get(event.test)!))) event.test.mode = "skip";
    reachedNow = new Set();
    begun = performance.now();
  }
  if (event.name === "test_done") {
    tests[places.get(event.test)!] = { ms: performance.now() - begun, reached: [...reachedNow] };
    failure ??= event.test.errors.map(String)[0];
    reachedNow = reachedByAll;
  }
});

process.on("message", (task: Task) => {
  void runTestFile(task).then((outcome) => process.send?.(outcome));
});

async function runTestFile(task: Task): Promise<Outcome> {
  const start = performance.now();
  [failure, places, tests, reachedByAll] = [undefined, new Map<unknown, number>(), {}, new Set<number>()];
  [only, backwards, reachedNow] = [task.only && new Set(task.only), task.backwards ?? false, reachedByAll];
  for (const name of Object.keys(globalThis).filter((key) => !globalNames.has(key))) Reflect.deleteProperty(globalThis, name);
  resetState();
  getState().testTimeout = 60_000;
  try {
    const load = loaderOf(task.overlay);
    load(setUp);
    load(task.testFile);
    const { unhandledErrors } = await run();
    failure ??= unhandledErrors.map(String)[0];
  } catch (error) {
    failure = String(error);
  }
  return { failure, tests, reachedByAll: [...reachedByAll], ms: performance.now() - start };
}

/** Loads our own files anew for every run, packages once. */
function loaderOf(overlay: Readonly<Record<string, string>>): (file: string) => unknown {
  const loaded = new Map<string, { exports: unknown }>();
  const load = (file: string): unknown => {
    const known = loaded.get(file);
    if (known) return known.exports;
    const module = { exports: {} as unknown };
    loaded.set(file, module);
    if (file.endsWith(".json")) module.exports = JSON.parse(readFileSync(file, "utf8"));
    else loaderFor(file, overlay[file])(module.exports, requireFrom(file), module, file, dirname(file), (id) => reachedNow.add(id));
    return module.exports;
  };
  const requireFrom = (file: string) => {
    const native = createRequire(file);
    return (name: string) => (name.startsWith(".") ? load(fileOf(join(dirname(file), name))) : native(name) as unknown);
  };
  return load;
}

/** Finds the file that an import without an extension means. */
function fileOf(path: string): string {
  return [path, `${path}.ts`, join(path, "index.ts")].find((file) => statSync(file, { throwIfNoEntry: false })?.isFile()) ?? path;
}

function loaderFor(file: string, text: string | undefined): Loader {
  const known = text === undefined ? compiled.get(file) : undefined;
  if (known) return known;
  const { code } = transformSync(text ?? readFileSync(file, "utf8"), { loader: "ts", format: "cjs", platform: "node", target: "node20", sourcefile: file });
  const loader = compileFunction(code, ["exports", "require", "module", "__filename", "__dirname", "$reached"], { filename: file }) as Loader;
  if (text === undefined) compiled.set(file, loader);
  return loader;
}
