import { quote } from "../../../text";
import { tables, type TableKey } from "../../../plan/schema";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { nameColumn, textIn, type PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";

const named = ["settings", "sites", "racks", "feeds", "networks", "switches", "hosts", "clusters", "pools", "arrays", "jobs"] as const;

export const repeatedName: Rule = {
  name: "repeated-name",
  family: "references",
  weight: "stop",
  meaning: "A name stands once in its table, an id once, a section once in its procedure; hosts, switches and arrays have names apart.",
  check: (index) => [
    ...named.flatMap((key) => repeatsIn(index, key, nameColumn(key))),
    ...repeatsIn(index, "arrays", "id"),
    ...repeatsIn(index, "jobs", "id"),
    ...repeatedSections(index),
    ...sharedEnds(index),
  ],
};

function repeatsIn(index: PlanIndex, key: TableKey, column: string): Remark[] {
  return [...index.groupBy(key, column).values()].flatMap((rows): Remark[] =>
    rows.slice(1).map((row) => {
      const name = textIn(row, column);
      return remarkAt(index, key, row, column as never, `${quote(name)} stands in row ${rows[0]!.row + 1} of ${tables[key].name} already. Give each its own.`);
    }),
  );
}

function repeatedSections(index: PlanIndex): Remark[] {
  const seen = new Map<string, number>();
  return index.rows("procedures").flatMap((row): Remark[] => {
    const id = `${foldName(row.procedure)}\n${foldName(row.section)}`;
    const earlier = seen.get(id);
    if (earlier === undefined) seen.set(id, row.row);
    if (earlier === undefined || row.section === "") return [];
    return [remarkAt(index, "procedures", row, "section", `Section ${quote(row.section)} of ${quote(row.procedure)} stands in row ${earlier + 1} already, so its steps would run twice.`)];
  });
}

/** In cabling a host, a switch and an array are told apart by their names alone. */
function sharedEnds(index: PlanIndex): Remark[] {
  const hosts = index.rows("hosts").flatMap((row): Remark[] => {
    if (index.find("switches", row.host) === null) return [];
    return [remarkAt(index, "hosts", row, "host", `${quote(row.host)} is the name of a switch too, so its links cannot be told apart. Rename one.`)];
  });
  const arrays = index.rows("arrays").flatMap((row): Remark[] => {
    const other = index.find("switches", row.array) !== null ? "switch" : index.find("hosts", row.array) !== null ? "host" : null;
    if (other === null) return [];
    return [remarkAt(index, "arrays", row, "array", `${quote(row.array)} is the name of a ${other} too, so its links cannot be told apart. Rename one.`)];
  });
  return [...hosts, ...arrays];
}
