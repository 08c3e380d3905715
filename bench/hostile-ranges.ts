import { catalogue } from "../src/functions/catalogue";
import { parseCall } from "../tests/support/formula-call";
import { tables } from "./hostile-tables";

/** A call whose arguments are large. */
interface LargeCall {
  readonly id: string;
  readonly args: readonly unknown[];
  readonly what: string;
}

const sheetRows = 1_048_576;

function grid(rows: number, row: (index: number) => readonly unknown[]): unknown[][] {
  return Array.from({ length: rows }, (_, index) => [...row(index)]);
}

/** Calls with the whole column A in every argument that takes a range, and calls at the limits of what functions take. */
export function* largeCalls(): Generator<LargeCall> {
  for (const [what, cell] of [
    ["zeros", () => 0],
    ["blanks", () => null],
    ["names", (index: number) => `name ${index}`],
    ["numbers", (index: number) => index + 1],
    ["addresses", (index: number) => address(index)],
  ] as const) {
    const column = grid(sheetRows, (index) => [cell(index)]);
    yield* inEveryRange(column, `a column of ${what}`);
    if (what === "zeros") yield { id: "USABLE", args: [column, 12, 4], what: "a column of zeros" };
  }
  for (const rows of [10_000, 100_000]) yield* longTables(rows);
  yield* limits();
}

function* inEveryRange(range: unknown, what: string): Generator<LargeCall> {
  for (const { id, parameters, examples } of catalogue) {
    for (const [place, { range: takesRange, name }] of parameters.entries()) {
      if (!takesRange) continue;
      const args = [...parseCall(examples[0]!).args];
      args[place] = range;
      yield { id, args, what: `${name}: ${what}` };
    }
  }
}

/** Every table that is known, made long: its texts and addresses are others in each row. */
function* longTables(count: number): Generator<LargeCall> {
  for (const [key, { rows }] of Object.entries(tables)) {
    const [id, argument] = key.split(".") as [string, string];
    const { parameters, examples } = catalogue.find((entry) => entry.id === id)!;
    const place = parameters.findIndex(({ name }) => name === argument);
    const args = [...parseCall(examples.find((example) => Array.isArray(parseCall(example).args[place])) ?? examples[0]!).args];
    args[place] = grid(count, (index) => (index < rows.length ? rows[index]! : rows[index % rows.length]!.map((cell) => another(cell, index))));
    yield { id, args, what: `${argument}: ${count.toLocaleString("en")} rows` };
  }
}

function another(cell: unknown, index: number): unknown {
  if (typeof cell !== "string") return cell;
  const length = /\/(\d+)$/.exec(cell)?.[0];
  if (/^\d+\.\d+\./.test(cell)) return length === undefined ? address(index) : `${address(index * 256)}/24`;
  return /^[A-Za-z]+[ -]?\d*$/.test(cell) && !/raid|tb/i.test(cell) ? `${cell} ${index}` : cell;
}

function address(index: number): string {
  return `10.${(index >> 16) & 255}.${(index >> 8) & 255}.${index & 255}`;
}

/** A chain, a comb, a ladder and a star: what walks through a graph by recursion, or again for each part of it, is found out by one of them. */
const graphs: readonly (readonly [string, (rows: number) => unknown[][]])[] = [
  ["a chain", (rows) => grid(rows, (index) => [node(index, rows), node(index + 1, rows)])],
  ["a ladder", (rows) => grid(rows, (index) => {
    const rung = Math.floor(index / 3);
    return index % 3 === 2 ? [`a${rung}`, `b${rung}`] : [rail(index % 3, rung, rows), rail(index % 3, rung + 1, rows)];
  })],
  ["two chains", (rows) => grid(rows, (index) => (index % 2 === 0 ? [rail(0, index / 2, rows), rail(0, index / 2 + 1, rows)] : [rail(1, (index - 1) / 2, rows), rail(1, (index + 1) / 2, rows)]))],
  ["many switches", (rows) => grid(rows, (index) => (index % 2 === 0 ? ["host", `s${index >> 1}`] : [`s${index >> 1}`, "array"]))],
  ["a comb", (rows) => [["host", "sw"], ["sw", "array"], ...grid(rows - 2, (index) => [index % 2 === 0 ? "sw" : `t${index - 1}`, `t${index}`])]],
  ["anything", (rows) => [["host", "n0"], ["n1", "array"], ...grid(rows - 2, (index) => [`n${(index * 7919) % 5003}`, `n${(index * 104729) % 4999}`])]],
];

function node(index: number, last: number): string {
  return index === 0 ? "host" : index === last ? "array" : `n${index}`;
}

function rail(side: number, index: number, rows: number): string {
  const last = Math.floor((rows - 1) / 3);
  return index === 0 ? "host" : index >= last ? "array" : `${side === 0 ? "a" : "b"}${index}`;
}

function* limits(): Generator<LargeCall> {
  for (const [what, make] of graphs) {
    for (const id of ["PATHS", "CUTSET", "SINGLEPOINTS"]) yield { id, args: [make(200_000), "host", "array"], what: `${what} of 200,000 links` };
    yield { id: "PATHS", args: [make(200_000), "host", "array", "link"], what: `${what} of 200,000 links, by link` };
    for (const id of ["AVAILABILITY", "AVAILBOUNDS"]) yield { id, args: [make(20_000).map((row) => [...row, 0.001]), "host", "array"], what: `${what} of 20,000 links` };
  }
  const drives = 100_000;
  for (const scheme of ["RAID 10", "RAID 60 8+2", "8+3", "3 copies", "RAID 6"]) {
    for (const racks of [3, 300, drives]) {
      const args = [scheme, grid(drives, (index) => [`d${index}`, `R${index % racks}`, `F${index % 2}`])];
      yield { id: "OUTAGE", args, what: `${scheme}, ${drives} members over ${racks} racks` };
      if (scheme.startsWith("8")) yield { id: "OUTAGE", args: [...args, "by domain"], what: `${scheme}, ${drives} members over ${racks} racks, by domain` };
      yield { id: "PLACE", args: [grid(drives, (index) => [`d${index}`]), grid(racks, (index) => [`R${index}`]), scheme], what: `${scheme}, ${drives} members over ${racks} racks` };
    }
    for (const [members, racks] of [[1000, 1000], [10_000, 100], [5000, 2000]] as const) {
      const args = [grid(members, (index) => [`d${index}`]), grid(racks, (index) => [`R${index}`, 1 + ((index * 7) % 11) + Math.ceil(members / racks)]), scheme];
      yield { id: "PLACE", args, what: `${scheme}, ${members} members over ${racks} racks with rooms` };
    }
  }
  const grouped = [["Member", "Group"], ...grid(2000, (index) => [`d${index}`, `g${index % 100}`])];
  yield { id: "PLACE", args: [grouped, grid(200, (index) => [`R${index}`, 10 + (index % 3)])], what: "100 groups over 200 racks" };
  const powered = grid(20_000, (index) => [`d${index}`, 900, ...Array.from({ length: 16 }, (_, at) => `F${(index * 7 + at) % 5000}`)]);
  yield { id: "FEEDLOAD", args: [powered, grid(5000, (index) => [`F${index}`, 400, 32, 3])], what: "20,000 devices on 5,000 feeds" };
  yield { id: "RACKFIT", args: [100, grid(10_000, (index) => [`d${index}`, 1 + (index % 4), 30])], what: "10,000 items" };
  yield { id: "CLASHES", args: [grid(100_000, () => ["10.0.0.0/24"])], what: "100,000 prefixes that are one" };
  yield { id: "CLASHES", args: [grid(sheetRows, (index) => [`${address(index)}/32`])], what: "a million addresses" };
  yield { id: "MERGE", args: [grid(sheetRows, (index) => [`${address(index * 2)}/32`])], what: "a million addresses apart" };
  yield { id: "EXPANSION", args: [1, 5, 2, "1 GB", 1000], what: "a thousand years at 500%" };
  yield { id: "LAYOUT", args: ["RAID 50 2+1", drives], what: "100,000 drives" };
  yield { id: "SPLITPREFIX", args: ["10.0.0.0/8", 32], what: "a /8 into addresses" };
  yield { id: "NEXTFREE", args: ["10.0.0.0/8", null, sheetRows], what: "a million addresses" };
  yield { id: "CARVE", args: ["10.0.0.0/8", grid(50_000, (index) => [`n${index}`, 20])], what: "50,000 needs" };
  yield { id: "PORTPLAN", args: [grid(10_000, (index) => [`A${index}`, 2, 4]), [["n1", "10.0.0.0/8", "none"]]], what: "80,000 ports" };
  for (const id of ["LOSSRISK", "BYTESLOST"]) {
    for (const [scheme, count, afr, repair, years] of [
      ["100+100", 100_000, 0.999, 1e-6, 1000],
      ["100+100", 200, 0.5, 1e6, 1000],
      ["101 copies", 100_000, 0.999999, 1e6, 1000],
      ["2 copies", drives, 1e-12, 1e-6, 1000],
      ["RAID 60 100+2", drives, 0.99, 1e-6, 1000],
    ] as const) {
      yield { id, args: [scheme, count, 4, afr, repair, years, 1e-15, 0.1, 168, 0.5], what: `${scheme} over ${count} drives, AFR ${afr}, ${repair} h, ${years} years` };
    }
  }
}
