import { quote } from "../../../text";
import { tableKeys, tables, type Column, type Table, type TableKey } from "../../../plan/schema";
import { mendAt, remarkAt, type Remark, type Rule } from "../../finding";
import { nameColumn, splitFeed, splitNames, textIn, type PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

export const unknownName: Rule = {
  name: "unknown-name",
  family: "references",
  weight: "stop",
  meaning: "What a cell names (site, rack, feed, switch, network, cluster, pool, array, procedure, section, end of a link) has a row of its own.",
  mends: "Writes the one known name that differs in nothing but spaces, dashes and other marks.",
  check: (index) => [
    ...tableKeys.flatMap((key) =>
      Object.entries((tables[key] as Table).columns).flatMap(([column, schema]) => (schema.from === undefined ? [] : referencesOf(index, key, column, schema))),
    ),
    ...endsOf(index),
    ...offersOf(index),
    ...sectionsOf(index),
  ],
};

function referencesOf(index: PlanIndex, key: TableKey, column: string, schema: Column): Remark[] {
  const target = tableKeys.find((one) => tables[one].name === schema.from)!;
  if (index.table(target) === null) return [];
  const strangers = index.rows(key).filter((row) => textIn(row, column) !== "" && index.find(target, textIn(row, column)) === null);
  return strangers.flatMap((row): Remark[] => {
    const text = textIn(row, column);
    const names = schema.several === true ? splitNames(text) : [target === "feeds" ? splitFeed(text).feed : text];
    return names.flatMap((name): Remark[] => {
      if (index.find(target, name) !== null) return [];
      const alike = alikeIn(index, target).get(squeeze(name));
      const sentence = `${schema.header} ${quote(name)} is not in the table ${schema.from}. ${alike === undefined ? "Add it there, or mend the name." : `Write ${alike}.`}`;
      const mend = alike === undefined ? null : mendAt(index, key, row, column as never, text.replace(name, alike));
      return [remarkAt(index, key, row, column as never, sentence, mend)];
    });
  });
}

function endsOf(index: PlanIndex): Remark[] {
  if (index.table("switches") === null && index.table("hosts") === null) return [];
  const isKnown = (name: string): boolean => name === "" || index.find("switches", name) !== null || index.find("hosts", name) !== null;
  return index.rows("links").flatMap((row) =>
    (["from", "to"] as const)
      .filter((column) => !isKnown(row[column]))
      .map((column) => remarkAt(index, "links", row, column, `${quote(row[column])} is neither a switch nor a host. Add it to one of those tables, or mend the name.`)),
  );
}

function offersOf(index: PlanIndex): Remark[] {
  if (index.table("arrays") === null || index.table("sites") === null) return [];
  return index
    .rows("quote")
    .filter((row) => row.for !== "" && index.find("arrays", row.for) === null && index.find("sites", row.for) === null)
    .map((row) => remarkAt(index, "quote", row, "for", `${quote(row.for)} is neither an array nor a site, so it has no usable capacity. Mend the name.`));
}

function sectionsOf(index: PlanIndex): Remark[] {
  if (index.table("procedures") === null) return [];
  const known = new Set(index.rows("procedures").map(({ procedure, section }) => `${foldName(procedure)}\n${foldName(section)}`));
  return index
    .rows("steps")
    .filter((row) => row.section !== "" && index.find("procedures", row.procedure) !== null && !known.has(`${foldName(row.procedure)}\n${foldName(row.section)}`))
    .map((row) => remarkAt(index, "steps", row, "section", `Section ${quote(row.section)} is none of ${quote(row.procedure)}, so the step never appears. Add it to Procedures.`));
}

const alikes = new WeakMap<PlanIndex, Map<TableKey, ReadonlyMap<string, string>>>();

/** Names of a table by their letters and digits alone; names that cannot be told apart that way are left out. */
function alikeIn(index: PlanIndex, key: TableKey): ReadonlyMap<string, string> {
  const tablesSeen = alikes.get(index) ?? new Map<TableKey, ReadonlyMap<string, string>>();
  alikes.set(index, tablesSeen);
  let map = tablesSeen.get(key);
  if (map === undefined) {
    const made = new Map<string, string>();
    const column = nameColumn(key);
    const twice = new Set<string>();
    for (const row of index.rows(key)) {
      const name = textIn(row, column);
      const squeezed = squeeze(name);
      const earlier = made.get(squeezed);
      if (earlier !== undefined && foldName(earlier) !== foldName(name)) twice.add(squeezed);
      made.set(squeezed, name);
    }
    for (const squeezed of [...twice, ""]) made.delete(squeezed);
    map = made;
    tablesSeen.set(key, map);
  }
  return map;
}

function squeeze(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
}
