// `npm run -s bad-input -- COUNT [SEED] [FILE …]`: damages workbooks in so many ways, opens each as check-plan and recalc do, all in one process, and
// counts what came of it. A file gets a whole result or a sentence; one in which bits flipped or that was cut short never shows another figure.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { computeFile } from "../src/headless/compute-file";
import { openWorkbookFile } from "../src/headless/open-file";
import { checkPlan, rules } from "../src/planning/checks";
import { readPlan } from "../src/planning/plan/read";
import { Problem } from "../src/planning/text";
import { needsComputing } from "../src/workbook/document/formula-kind";
import { cellAt, type WorkbookDocument } from "../src/workbook/document/workbook-document";
import { readFile } from "../src/workbook/xlsx/read-workbook";
import { pack, readArchive, unpack, writeArchive } from "../src/workbook/xlsx/zip-archive";
import { seededRandom } from "../tests/support/seeded-random";

/** What a hostile file may cost at most. */
const budget = { seconds: 10, megabytes: 500 };

const [count = "", seed = "1", ...named] = process.argv.slice(2);
if (!(Number(count) > 0)) {
  console.error("Usage: npm run -s bad-input -- COUNT [SEED] [FILE …]");
  process.exit(2);
}
const files = named.length > 0 ? named : ["thornmere", "thornmere-broken"].map((name) => join(__dirname, "..", "examples", `${name}.xlsx`));
const originals = files.map((name) => new Uint8Array(readFileSync(name)));
const random = seededRandom(Number(seed));
const below = (most: number): number => Math.floor(random() * most);
const pick = <T>(list: readonly T[]): T => list[below(list.length)]!;

const tokens = [
  ..."0 -1 1 2147483648 1e999 NaN A0 XFE1 XFD1048576 A1:XFD1048576 __proto__ constructor toString &#x110000; &#xD800; _xD800_ &lol; %ZZ ../../..".split(" "),
  ..."<c/> ]]> <![CDATA[x ' ''' s str shared array =BAY.USABLE( http://example.com/\u202e".split(" "),
  "", "\0", "\ud800", "\ufeff", "x".repeat(32_767), "(".repeat(9_000),
];
const names = [
  ..."../../outside.xml /etc/passwd C:\\outside.xml __proto__ constructor xl\\workbook.xml XL/WORKBOOK.XML xl/_rels/workbook.xml.rels [Content_Types].xml xl/".split(" "),
  "", "\0",
];

/** Edits the text of one part whose name fits. */
function withEdit(bytes: Uint8Array, fits: RegExp, edit: (text: string) => string): Uint8Array {
  const parts = readArchive(bytes);
  const part = pick(parts.filter(({ name }) => fits.test(name)));
  const edited = pack(part.name, new TextEncoder().encode(edit(new TextDecoder().decode(unpack(part)))));
  return writeArchive(parts.map((one) => (one === part ? edited : one)));
}

function editToken(text: string): string {
  const pieces = text.split(/(?<=["<>=/ ])|(?=["<>=/ ])/);
  pieces.splice(below(pieces.length), pick([0, 1, 1, 2]), pick(tokens));
  return pieces.join("");
}

/** Writes a token in the place of what an attribute or an element says. */
function editValue(text: string): string {
  const values = [...text.matchAll(/(?<==")[^"]*(?=")|(?<=>)[^<]+(?=<)/g)];
  if (values.length === 0) return text;
  const { 0: value, index } = pick(values);
  return text.slice(0, index) + pick(tokens) + text.slice(index + value.length);
}

const kinds: Readonly<Record<string, (bytes: Uint8Array) => Uint8Array>> = {
  "a bit flipped": (bytes) => {
    const changed = Uint8Array.from(bytes);
    changed[below(changed.length)]! ^= 1 << below(8);
    return changed;
  },
  // The ends of an archive, where its directory stands, are a small part of it.
  "a bit of the directory flipped": (bytes) => {
    const changed = Uint8Array.from(bytes);
    changed[changed.length - 1 - below(Math.min(changed.length, 2_000))]! ^= 1 << below(8);
    return changed;
  },
  "cut short": (bytes) => bytes.slice(0, below(bytes.length)),
  "a token edited": (bytes) => withEdit(bytes, /\.xml$/, editToken),
  "a value edited": (bytes) => withEdit(bytes, /\.xml$/, editValue),
  "a relation edited": (bytes) => withEdit(bytes, /\.rels$|^\[Content/, pick([editToken, editValue])),
  "a part renamed": (bytes) => {
    const parts = readArchive(bytes);
    const part = pick(parts);
    return writeArchive(parts.map((one) => (one === part ? { ...one, name: pick(names) } : one)));
  },
  "a part taken out": (bytes) => {
    const parts = readArchive(bytes);
    const part = pick(parts);
    return writeArchive(parts.filter((one) => one !== part));
  },
};
/** Where the sums of the archive tell of every change. */
const isHeld = (kind: string) => /flipped|cut/.test(kind);

const folder = mkdtempSync(join(tmpdir(), "baywright-"));

async function findings(bytes: Uint8Array): Promise<unknown> {
  const file = join(folder, "plan.xlsx");
  writeFileSync(file, bytes);
  const workbook = await (await openWorkbookFile(file)).port.read();
  readPlan(workbook);
  return checkPlan(workbook, rules, "2026-06-01");
}

async function recalculated(bytes: Uint8Array): Promise<WorkbookDocument> {
  const before = readFile(bytes).document;
  if (!needsComputing(before)) return before;
  const after = readFile((await computeFile(readFile(bytes))).bytes).document;
  for (const { id, cells } of before.sheets) {
    const saved = after.sheets.find((sheet) => sheet.id === id)?.cells;
    for (const [row, line] of cells) {
      for (const [column, { value, formula, array }] of line) {
        if (formula !== undefined || array !== undefined) continue;
        const now = saved === undefined ? undefined : cellAt(saved, row, column);
        if (!isDeepStrictEqual(now?.value ?? null, value)) throw new Error(`${id} ${row} ${column} was ${JSON.stringify(value)} and is ${JSON.stringify(now)}`);
      }
    }
  }
  return after;
}

const verbs = { "check-plan": findings, recalc: recalculated };

async function main(): Promise<void> {
  const known = new Map<string, unknown>();
  const counts: Record<string, number> = {};
  const add = (what: string) => (counts[what] = (counts[what] ?? 0) + 1);
  let slowest = 0;
  for (let run = 0; run < Number(count); run += 1) {
    const kind = Object.keys(kinds)[run % Object.keys(kinds).length]!;
    const verb = below(4) === 0 ? "recalc" : "check-plan";
    const place = below(originals.length);
    const bytes = kinds[kind]!(originals[place]!);
    const tell = (what: string) => {
      add(what);
      writeFileSync(join(tmpdir(), `bad-input-${seed}-${run}.xlsx`), bytes);
      console.log(`${run} ${kind}, ${files[place]}, ${verb}: ${what}`);
    };
    const key = `${verb} ${place}`;
    if (isHeld(kind) && !known.has(key)) known.set(key, await verbs[verb](originals[place]!));
    const { user, system } = process.cpuUsage();
    try {
      const result = await verbs[verb](bytes);
      add("whole");
      if (isHeld(kind) && !isDeepStrictEqual(result, known.get(key))) tell("changed in silence");
    } catch (thrown) {
      if (thrown instanceof Problem && thrown.sentence.length <= 160 && !thrown.sentence.includes("\n")) add("refused");
      else tell(`no sentence: ${String(thrown instanceof Error ? thrown.stack : thrown).slice(0, 600)}`);
    }
    const spent = process.cpuUsage({ user, system });
    const seconds = (spent.user + spent.system) / 1e6;
    slowest = Math.max(slowest, seconds);
    if (seconds > budget.seconds) tell("over 10 s");
  }
  const megabytes = process.resourceUsage().maxRSS / 1024;
  if (megabytes > budget.megabytes) add("over 500 MB");
  console.log(`${JSON.stringify(counts)}; at most ${slowest.toFixed(1)} s and ${megabytes.toFixed(0)} MB`);
}

main().finally(() => {
  rmSync(folder, { recursive: true });
}).then(() => process.exit(0), (thrown: unknown) => {
  console.error(thrown);
  process.exit(1);
});
