// What anybody may type: hundreds of thousands of calls, none of which may fault, hang, answer NaN, or say the wrong thing at length.
import { catalogue, type CatalogueEntry } from "../src/functions/catalogue";
import { CellFault, installCustomFunctions } from "../src/functions/support/custom-functions";
import { parseCall } from "../tests/support/formula-call";
import { Chance, drawArguments } from "./hostile-arguments";
import { largeCalls } from "./hostile-ranges";
import { tables } from "./hostile-tables";
import { collectGarbage, printBench, sink, type BenchLine } from "./support";

const callsOfEach = 2700;
const mostSeconds = 2;
const mostLetters = 160;

/** What must not be: each occurrence as it is to be read. */
const kindsOfFault = [
  "faults nobody caught", "NaN or Infinity", '"failed inside"', `over ${mostSeconds} s of processor time`, `sentences over ${mostLetters} characters`, "sentences about the wrong cell",
];
const faults = Object.fromEntries(kindsOfFault.map((kind): [string, string[]] => [kind, []]));
const [uncaught, notFinite, inside, slow, long, misplaced] = Object.values(faults) as [string[], string[], string[], string[], string[], string[]];

export default function benchHostile(): void {
  installCustomFunctions();
  const chance = new Chance(14);
  const drawn = timed(() => catalogue.reduce((calls, entry) => calls + times(callsOfEach, () => ask(entry, drawArguments(entry, chance))), 0));
  const large = timed(() => [...largeCalls()].reduce((calls, { id, args, what }) => calls + times(1, () => ask(entryOf(id), args, what)), 0));
  const planted = timed(() => Object.keys(tables).reduce((cells, key) => cells + plantIn(key), 0));
  sink(faults);
  printBench(`Hostile input over ${catalogue.length} functions`, [
    { what: "calls drawn", ...drawn },
    { what: "calls with whole columns and at the limits", ...large },
    { what: "wrong cells planted in valid tables", ...planted },
    ...Object.entries(faults).map(([what, found]): BenchLine => ({ what, measured: String(found.length), target: "0", holds: found.length === 0 })),
  ]);
  for (const [what, found] of Object.entries(faults)) for (const one of found.slice(0, 20)) console.log(`  ${what}: ${one}`);
}

function timed(work: () => number): { measured: string } {
  const start = process.cpuUsage();
  const count = work();
  const { user, system } = process.cpuUsage(start);
  return { measured: `${count.toLocaleString("en")}, ${Math.round((user + system) / 1e6)} s` };
}

function times(count: number, work: () => void): number {
  for (let done = 0; done < count; done++) work();
  return count;
}

function entryOf(id: string): CatalogueEntry {
  return catalogue.find((entry) => entry.id === id)!;
}

/** Calls a function as a host would, notes what must not be, and passes on the sentence where the answer is one. */
function ask({ id, call }: CatalogueEntry, args: readonly unknown[], what?: string): string | null {
  const asked = (): string => `${id} ${what ?? JSON.stringify(args, shown).slice(0, 400)}`;
  let answer = timedCall(call, args);
  // A long call may have paid for the garbage of those before it: it is asked again, without.
  if (answer.seconds > mostSeconds) {
    collectGarbage();
    answer = timedCall(call, args);
    if (answer.seconds > mostSeconds) slow.push(`${answer.seconds.toFixed(1)} s, ${asked()}`);
  }
  const { cells, thrown } = answer;
  if (thrown === undefined) {
    if (!isShowable(cells)) notFinite.push(asked());
    return null;
  }
  if (!(thrown instanceof CellFault)) {
    uncaught.push(`${asked()}: ${thrown instanceof Error ? thrown.message : typeof thrown}`);
    return null;
  }
  if (thrown.message.includes("inside the add-in")) inside.push(asked());
  if (thrown.message.length > mostLetters) long.push(`${asked()}: ${thrown.message}`);
  return thrown.message;
}

/** Calls a function and measures the processor time, as the clock lies on a busy machine. */
function timedCall(call: CatalogueEntry["call"], args: readonly unknown[]): { readonly seconds: number; readonly cells?: unknown; readonly thrown?: unknown } {
  const start = process.cpuUsage();
  const seconds = (): number => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  };
  try {
    const cells = call(...args);
    return { seconds: seconds(), cells };
  } catch (thrown) {
    return { seconds: seconds(), thrown };
  }
}

function shown(_: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) return String(value);
  if (value === undefined || typeof value === "bigint" || typeof value === "symbol" || typeof value === "function") return String(value);
  return typeof value === "string" && value.length > 40 ? `${value.slice(0, 40)}…` : value;
}

/** Tells whether a host can show an answer: text, truth and numbers that are ones, and nothing else. */
function isShowable(answer: unknown): boolean {
  if (Array.isArray(answer)) return answer.length > 0 && answer.every(isShowable);
  return typeof answer === "string" || typeof answer === "boolean" || Number.isFinite(answer);
}

/** Puts one wrong cell into a valid table, at each place in turn, with and without a header, and reads whether the sentence names that row and column. */
function plantIn(key: string): number {
  const [id, argument] = key.split(".") as [string, string];
  const entry = entryOf(id);
  const { columns, rows } = tables[key]!;
  const place = entry.parameters.findIndex(({ name }) => name === argument);
  let planted = 0;
  for (const { isHeaded, layout } of layouts(columns.length)) {
    rows.forEach((_, row) => columns.forEach(({ title: headed, untitled, takesText }, column) => {
      const title = isHeaded ? headed : untitled;
      for (const wrong of takesText ? ["#N/A"] : ["#N/A", "neither this nor that"]) {
        const table = rows.map((line, other) => columns.map((__, at) => (other === row && at === column ? wrong : line[at] ?? null)));
        const args = [...parseCall(entry.examples.find((example) => Array.isArray(parseCall(example).args[place])) ?? entry.examples[0]!).args];
        args[place] = layout(table, columns.map(({ heading }) => heading));
        const line = (args[place] as unknown[][]).findIndex((cells) => cells.includes(wrong)) + 1;
        const sentence = ask(entry, args) ?? "an answer";
        const named = `${argument} row ${line}${title === "" ? "" : ` ${title}`}`.toLowerCase();
        planted += 1;
        if (!sentence.toLowerCase().startsWith(`${named} `) && !sentence.toLowerCase().startsWith(`${named}:`)) misplaced.push(`${id}, wanted ${named}: ${sentence}`);
      }
    }));
  }
  return planted;
}

/** A way to hand a table over. */
interface Layout {
  readonly isHeaded: boolean;
  readonly layout: (rows: readonly (readonly unknown[])[], headings: readonly string[]) => unknown[][];
}

/** Ways to hand over a table: as it is, with blank rows, under a header, under a header with the columns the other way round. */
function layouts(width: number): Layout[] {
  const blank = Array.from({ length: width }, () => null);
  const plain: Layout[] = [
    { isHeaded: false, layout: (rows) => rows.map((line) => [...line]) },
    { isHeaded: false, layout: (rows) => [blank, ...rows.flatMap((line) => [[...line], blank])] },
  ];
  const headed: Layout[] = [
    { isHeaded: true, layout: (rows, headings) => [[...headings], ...rows.map((line) => [...line])] },
    { isHeaded: true, layout: (rows, headings) => [[...headings].reverse(), ...rows.map((line) => [...line].reverse())] },
  ];
  return width === 1 ? plain : [...plain, ...headed];
}
