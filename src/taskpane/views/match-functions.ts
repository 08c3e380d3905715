import type { CatalogueEntry } from "../../functions/catalogue";
import { slipsBetween } from "../../planning/text";

type Described = Pick<CatalogueEntry, "id" | "family" | "description"> & { readonly parameters: readonly { readonly name: string; readonly description?: string }[] };

/** What people call things, by the words under which the help speaks of them. */
const called = {
  redundancy: "raid mirror mirroring mirrored parity erasure copies replica replication zfs stripe striping",
  drive: "disk hdd platter spindle",
  "solid-state": "ssd nvme flash dwpd tbw wear wearout",
  address: "ip ipv4 ipv6",
  subnet: "vlan",
  prefix: "cidr vlsm",
  overlap: "conflict collision clash overlapping",
  "more than once": "duplicate double twice",
  "first address": "gateway router",
  "reverse dns": "ptr arpa dns",
  iscsi: "iqn initiator target",
  mtu: "jumbo frame",
  price: "cost",
  margin: "profit",
  "mark-up": "markup",
  "electrical power": "electricity energy kwh",
  watt: "power",
  load: "power",
  heat: "cooling btu aircon",
  current: "amp ampere amperage",
  circuit: "breaker fuse",
  lift: "weight heavy kg carry",
  "a place in a rack": "space elevation rack",
  "mb/s": "speed bandwidth sequential",
  payload: "bandwidth gigabit",
  operations: "speed performance",
  milliseconds: "latency delay",
  moving: "copy copying migrate migration transfer backup",
  rebuild: "resilver reconstruct reconstruction",
  usable: "net",
  efficiency: "overhead",
  size: "gigabyte terabyte petabyte tebibyte gibibyte gib pib unit",
  reduction: "dedupe dedup deduplication compression compress",
  growth: "grow growing forecast",
  "until a growing demand fills": "full",
  expansion: "upgrade purchase",
  "losing data": "risk reliability",
  loss: "failure outage fail",
  "mean time": "mtbf lifetime lifespan",
  unreadable: "ure uber bit",
  availability: "uptime downtime nines sla",
  singlepoints: "spof",
  "console line": "baud serial rs232",
  release: "version",
} as const;

/** The words of the help for each thing that people call otherwise. */
const synonyms = new Map<string, string[]>();
for (const [word, names] of Object.entries(called)) for (const name of names.split(" ")) synonyms.set(name, [...(synonyms.get(name) ?? []), word]);

/** Words of a question that say nothing of what is asked for. */
const small = new Set([
  ..."a an and any are at by calculate can do does find for from get give have how i if in is it its long many me much my need of on or our".split(" "),
  ..."per should show so some tell than that the there this to was what when where which will with".split(" "),
]);

/**
 * Finds the functions that speak of every word of `query`, in name, description, family or arguments; small words of a question and numbers do not count.
 *
 * A word of which nothing speaks is taken for the one that it is a slip of the keyboard away from. Where no function speaks of all, those do that speak of
 * most. Those whose name begins with the query come first, then those whose name holds it, then those whose description speaks of it; else the order of the
 * catalogue stays.
 */
export function matchFunctions<One extends Described>(functions: readonly One[], query: string): readonly One[] {
  const typed = query.toLowerCase().replace(/^[=\s]*(bay\.)?/, "").replace(/\braid(?=\d)/g, "raid ").split(/[\s?,!"'()]+/).filter((word) => word !== "");
  const telling = typed.filter((word) => !small.has(word) && !/^\d+$/.test(word));
  if (typed.length === 0) return functions;
  const texts = functions.map((one) => ({ one, short: `${one.id} ${one.family} ${one.description}`.toLowerCase(), long: helpOf(one) }));
  const words = (telling.length > 0 ? telling : typed).map((word) => meant(word, texts.map(({ long }) => long)));
  const spokenOf = (text: string) => words.filter((names) => names.some((name) => text.includes(name))).length;
  const most = Math.max(0, ...texts.map(({ long }) => spokenOf(long)));
  if (most === 0) return [];
  const rank = ({ id }: One, short: string) => {
    const at = id.toLowerCase().indexOf(words[0]![0]!);
    return at === 0 ? 0 : at > 0 ? 1 : spokenOf(short) === most ? 2 : 3;
  };
  return texts
    .filter(({ long }) => spokenOf(long) === most)
    .map(({ one, short }) => ({ one, place: rank(one, short) }))
    .sort((one, other) => one.place - other.place)
    .map(({ one }) => one);
}

function helpOf({ id, family, description, parameters }: Described): string {
  return [id, family, description, ...parameters.map((parameter) => `${parameter.name} ${parameter.description ?? ""}`)].join(" ").toLowerCase();
}

/** Lists what a word may be called in the help: as it is, without the ending of the plural, and by what else it is called. */
function namesOf(word: string): string[] {
  const singular = word.replace(/(?<=..)s$/, "");
  return [...new Set([word, singular, ...(synonyms.get(word) ?? []), ...(synonyms.get(singular) ?? [])])];
}

/** Lists the names of a word, or of the nearest one that the help knows, where it speaks of none of them. */
function meant(word: string, texts: readonly string[]): string[] {
  const names = namesOf(word);
  if (word.length < 4 || names.some((name) => texts.some((text) => text.includes(name)))) return names;
  const known = new Set([...texts.flatMap((text) => text.match(/[a-z]{4,}/g) ?? []), ...synonyms.keys()]);
  const near = [...known].map((one) => ({ one, slips: slipsBetween(word, one) })).sort((one, other) => one.slips - other.slips)[0];
  return near !== undefined && near.slips <= Math.max(1, Math.floor(word.length / 4)) ? namesOf(near.one) : names;
}
