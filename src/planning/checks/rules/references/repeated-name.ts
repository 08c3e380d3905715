import { gather, portLabel, sectionOf, type PlanModel } from "../../../plan/model";
import { textOf } from "../../../plan/read";
import { nameColumn, tables, type TableKey } from "../../../plan/schema";
import { foldName, quote } from "../../../text";
import { remarkAt, remarkOn, type Remark, type Rule } from "../../finding";

const named = ["settings", "sites", "racks", "feeds", "networks", "switches", "hosts", "clusters", "pools", "models", "arrays", "cables", "volumes", "jobs"] as const;
const idKeys = ["arrays", "jobs"] as const;

export const repeatedName: Rule = {
  name: "repeated-name",
  family: "references",
  weight: "stop",
  meaning:
    "A name stands once in its table, an id once, a section once in its procedure, a shelf and a drive set once at its array, a port once at its model; " +
    "hosts, switches and arrays have names apart, and so have hosts and their groups.",
  check: (model) => [
    ...named.flatMap((key) => repeatsIn(model, key, nameColumn(key), model.namesakes(key))),
    ...idKeys.flatMap((key) => repeatsIn(model, key, "id", model.groupBy(key, "id"))),
    ...repeatedSections(model),
    ...repeatedShelves(model),
    ...repeatedSets(model),
    ...repeatedPorts(model),
    ...sharedEnds(model),
    ...sharedGroups(model),
  ],
};

type Namesakes = ReadonlyMap<string, readonly { readonly row: number }[]>;

function repeatsIn(model: PlanModel, table: TableKey, column: string, namesakes: Namesakes): Remark[] {
  return [...namesakes.values()].flatMap(([first, ...others]): Remark[] =>
    others.map((row) => {
      const name = quote(textOf(row, column));
      return remarkOn(model, { table, row: row.row, column }, `${name} stands in row ${first!.row + 1} of ${tables[table].name} already. Give each its own.`);
    }),
  );
}

function repeatedSections(model: PlanModel): Remark[] {
  const seen = new Map<string, number>();
  return gather(model.rows("procedures"), (row): Remark[] => {
    const id = sectionOf(row);
    const earlier = seen.get(id);
    if (earlier === undefined) seen.set(id, row.row);
    if (earlier === undefined || row.section === "") return [];
    const sentence = `Section ${quote(row.section)} of ${quote(row.procedure)} stands in row ${earlier + 1} already, so its steps would run twice.`;
    return [remarkAt(model, "procedures", row, "section", sentence)];
  });
}

function repeatedShelves(model: PlanModel): Remark[] {
  return gather(model.rows("shelves"), (row): Remark[] => {
    const first = model.drives.shelfNamed(row.array, row.shelf);
    if (row.shelf === "" || first === null || first === row) return [];
    return [remarkAt(model, "shelves", row, "shelf", `Shelf ${quote(row.shelf)} of ${quote(row.array)} stands in row ${first.row + 1} already. Give each its own name.`)];
  });
}

function repeatedSets(model: PlanModel): Remark[] {
  return gather(model.rows("driveSets"), (row): Remark[] => {
    const first = model.rowsWith("driveSets", "array", row.array).find((one) => foldName(one.set) === foldName(row.set));
    if (row.set === "" || first === undefined || first === row) return [];
    return [remarkAt(model, "driveSets", row, "set", `Set ${quote(row.set)} of ${quote(row.array)} stands in row ${first.row + 1} already. Give each its own name.`)];
  });
}

function repeatedPorts(model: PlanModel): Remark[] {
  const seen = new Map<string, number>();
  return gather(model.rows("modelPorts"), (row): Remark[] => {
    const name = [row.model, row.controller, row.port].map(foldName).join("\n");
    const earlier = seen.get(name);
    if (earlier === undefined) seen.set(name, row.row);
    if (earlier === undefined || row.port === "") return [];
    return [remarkAt(model, "modelPorts", row, "port", `Port ${portLabel(row)} of ${quote(row.model)} stands in row ${earlier + 1} already, which is what counts. Keep one.`)];
  });
}

/** In cabling a host, a switch and an array are told apart by their names alone. */
function sharedEnds(model: PlanModel): Remark[] {
  const hosts = gather(model.rows("hosts"), (row): Remark[] => {
    if (model.find("switches", row.host) === null) return [];
    return [remarkAt(model, "hosts", row, "host", `${quote(row.host)} is the name of a switch too, so its links cannot be told apart. Rename one.`)];
  });
  const arrays = gather(model.rows("arrays"), (row): Remark[] => {
    const other = model.find("switches", row.array) !== null ? "switch" : model.find("hosts", row.array) !== null ? "host" : null;
    if (other === null) return [];
    return [remarkAt(model, "arrays", row, "array", `${quote(row.array)} is the name of a ${other} too, so its links cannot be told apart. Rename one.`)];
  });
  return [...hosts, ...arrays];
}

/** In Access a host and a group are told apart by their names alone: the host is taken. */
function sharedGroups(model: PlanModel): Remark[] {
  return [...model.volumes.groups()].flatMap(([group, [first]]): Remark[] => {
    const host = model.find("hosts", group);
    if (host === null || first === undefined) return [];
    return [remarkAt(model, "hosts", first, "groups", `Group ${quote(group)} is the name of a host too, which alone would open the volumes of the group. Rename one.`)];
  });
}
