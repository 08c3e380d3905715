import type { CatalogueEntry } from "../src/functions/catalogue";
import type { Parameter } from "../src/functions/support/parameter";
import { kindOf } from "../tests/support/argument-kinds";
import { parseCall } from "../tests/support/formula-call";
import { wrongInputs, type Kind } from "../tests/support/wrong-inputs";
import { tables } from "./hostile-tables";

/** Chance with a seed, the same in every run (mulberry32). */
export class Chance {
  constructor(private state: number) {}

  /** A number from 0 to below 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  pick<Value>(values: readonly Value[]): Value {
    return values[this.below(values.length)]!;
  }
}

const boundaries: readonly unknown[] = [
  null, undefined, "", " ", 0, -0, 1, 2, 3, 4, 6, 8, 10, 12, 16, 24, 31, 32, 64, 100, 127, 128, 129, 255, 256, 1000, 1500, 9000, 65_535, 65_536, 99_999, 100_000, 100_001, 1_048_576,
  0.001, 0.1, 0.3, 0.5, 0.999, 0.999999999999999, 1.000000000000001, 1.5, 20, 99.5, 1e-15, 1e-12, 1e-6, 1e6, 1e9, 1e12, 1e15, 2 ** 31, 2 ** 32, 2 ** 53, true, false,
  "10.20.0.0/24", "10.0.0.0/8", "0.0.0.0/0", "255.255.255.255/32", "10.20.0.0/31", "10.20.0.9", "2001:db8::/64", "::/0", "2001:db8::/127", "::1", "255.255.255.0", "10.20.0.9-10.20.0.20",
  "RAID 0", "RAID 1", "RAID 10", "RAID 5", "RAID 6", "RAID 60 8+2", "RAID 50 4+1", "triple parity", "triple parity 8+3", "mirror", "2 copies", "3 copies", "100 copies", "8+3", "16+4", "100+100",
  "999+99", "none", "R6", "raid1+0", "20%", "100%", "0%", "3:1", "960 GB", "1 B", "1 KiB", "1 EiB", "12 TiB", "TiB", "TB", "best", "always", "degraded", "rebuilding", "shared", "own", "link",
  "node", "by domain", "markup", "flash", "array", "tons", "poor", "good", "2024-05", "example.com", "A/B", "0-3", "0-4000", "A/L1-L2", "none", "host", "array", "A1", "Rack 1",
];

const absurd: readonly unknown[] = [
  NaN, Infinity, -Infinity, -1, -1e308, 1e308, 5e-324, 1e-308, 1e-300, -1e-300, 1e22, "1e308", "1e-308", "NaN", "Infinity", "9".repeat(400), "x".repeat(5000), "constructor", "__proto__", "toString",
  "=1+1", "#N/A", "#NAME?", "٤", "\u0000", "\ud800", "🗄️", "1,2,3", "3,84 TB", "4 Tb", "9999+9999", "raid 5 999+1", "0+0", "10.20.0.0/33", "999.0.0.1", "::1::", "-100%", "1e9%", "1:0", "0:1",
  { basicValue: 4 }, { basicValue: "RAID 6" }, { basicType: "Error" }, {}, [], [[]], [[null]], [[4]], [[1, 2], [3]], [1, 2], 4n, Symbol.iterator, () => 4, new Date(0),
];

/** Draws the arguments of one call: a typical call with some of its arguments changed, and now and then nothing typical at all. */
export function drawArguments(entry: CatalogueEntry, chance: Chance): unknown[] {
  const typical = parseCall(chance.pick(entry.examples)).args;
  const changed = chance.pick([0, 0.2, 0.5, 1]);
  const given = chance.next() < 0.7 ? Math.max(typical.length, chance.below(entry.parameters.length + 1)) : chance.below(entry.parameters.length + 2);
  return Array.from({ length: given }, (_, place) => {
    const parameter = entry.parameters[place];
    if (place < typical.length && chance.next() >= changed) return typical[place];
    if (parameter === undefined) return drawScalar(undefined, chance);
    return parameter.range && chance.next() < 0.8 ? drawRange(entry.id, parameter, chance) : drawScalar(firstKind(entry.id, parameter), chance);
  });
}

function firstKind(id: string, { name }: Parameter): Kind | undefined {
  const kind = kindOf(id, name);
  return typeof kind === "string" ? kind : kind?.[0];
}

function drawScalar(kind: Kind | undefined, chance: Chance): unknown {
  const share = chance.next();
  if (share < 0.35 && kind !== undefined && wrongInputs[kind].length > 0) {
    const { typed, means } = chance.pick(wrongInputs[kind]);
    return means.length > 0 && chance.next() < 0.5 ? chance.pick(means) : typed;
  }
  if (share < 0.8) return chance.pick(boundaries);
  if (share < 0.9) return chance.pick(absurd);
  return chance.pick([1, -1]) * 10 ** (chance.next() * 30 - 15);
}

/** Draws a range: a table as its function takes it, with a few things done to it; or cells of anything. */
function drawRange(id: string, parameter: Parameter, chance: Chance): unknown {
  const known = tables[`${id}.${parameter.name}`];
  const kinds = kindOf(id, parameter.name);
  if (known === undefined || chance.next() < 0.1) {
    const width = 1 + chance.below(4);
    return Array.from({ length: 1 + chance.below(6) }, () => Array.from({ length: width }, (_, column) => drawScalar(Array.isArray(kinds) ? kinds[column] as Kind | undefined : undefined, chance)));
  }
  const width = known.columns.length;
  let rows: unknown[][] = known.rows.map((row) => Array.from({ length: width }, (_, column) => row[column] ?? null));
  if (chance.next() < 0.4) rows.unshift(known.columns.map(({ heading }) => heading));
  for (let change = chance.below(4); change > 0; change -= 1) {
    const row = chance.below(rows.length);
    const column = chance.below(rows[row]!.length);
    const kind = Array.isArray(kinds) ? (kinds[Math.min(column, kinds.length - 1)] as Kind) : undefined;
    switch (chance.below(8)) {
      case 0: rows.splice(row, 0, []); break;
      case 1: rows.splice(row, 0, rows[chance.below(rows.length)]!); break;
      case 2: rows = rows.map((line) => line.filter((_, place) => place !== column)); break;
      case 3: rows = rows.map((line) => [line[column], ...line]); break;
      case 4: rows.reverse(); break;
      case 5: rows.splice(row, 1); if (rows.length === 0) rows.push([null]); break;
      default: rows[row]![column] = drawScalar(kind, chance);
    }
    if (rows.some((line) => line.length === 0)) rows = rows.map((line) => (line.length === 0 ? Array.from({ length: width }, () => null) : line));
  }
  return rows;
}
