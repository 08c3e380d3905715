import { gather, sectionOf, type PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import { textOf } from "../../../plan/read";
import { columnsOf, tableKeys, tables, type Column, type TableKey } from "../../../plan/schema";
import { cutSentence, quote, splitNames } from "../../../text";
import { mendOn, remarkAt, remarkOn, type Remark, type Rule } from "../../finding";

export const unknownName: Rule = {
  name: "unknown-name",
  family: "references",
  weight: "stop",
  meaning: "What a cell names (site, rack, feed, switch, network, cluster, pool, array, shelf, procedure, section, end of a link) has a row of its own.",
  mends: "Writes the one known name that differs in nothing but spaces, dashes and other marks.",
  check: (model) => [
    ...tableKeys.flatMap((key) =>
      columnsOf(key).flatMap(([name, column]) => (column.from === undefined ? [] : referencesOf(model, key, name, column, column.from))),
    ),
    ...endsOf(model),
    ...offersOf(model),
    ...sectionsOf(model),
    ...shelvesOf(model),
  ],
};

function referencesOf(model: PlanModel, table: TableKey, column: string, { header, several }: Column, target: TableKey): Remark[] {
  if (model.table(target) === null) return [];
  const strangers = model.rows(table).filter((row) => {
    const text = textOf(row, column);
    return text !== "" && model.find(target, text) === null;
  });
  return strangers.flatMap((row): Remark[] => {
    const text = textOf(row, column);
    const names = several === true ? splitNames(text) : [target === "feeds" ? splitFeedPhase(text).feed : text];
    return names.flatMap((name): Remark[] => {
      if (model.find(target, name) !== null) return [];
      const cell = { table, row: row.row, column };
      const alike = model.spellings.alike(target, name);
      const advice = alike === null ? "Add it there, or mend the name." : `Write ${alike}.`;
      const mend = alike === null ? null : mendOn(model, cell, text.replace(name, alike));
      return [remarkOn(model, cell, `${header} ${quote(name)} is not in the table ${tables[target].name}. ${advice}`, mend)];
    });
  });
}

function endsOf(model: PlanModel): Remark[] {
  if (model.table("switches") === null && model.table("hosts") === null) return [];
  const isKnown = (name: string): boolean => name === "" || model.find("switches", name) !== null || model.find("hosts", name) !== null;
  return gather(model.rows("links"), (row) =>
    (["from", "to"] as const)
      .filter((column) => !isKnown(row[column]))
      .map((column) => remarkAt(model, "links", row, column, `${quote(row[column])} is neither a switch nor a host. Add it to one of those tables, or mend the name.`)),
  );
}

function offersOf(model: PlanModel): Remark[] {
  if (model.table("arrays") === null || model.table("sites") === null) return [];
  return gather(model.rows("quote"), (row) =>
    model.quote
      .namesIn(row)
      .filter((name) => model.find("arrays", name) === null && model.find("sites", name) === null)
      .map((name) => remarkAt(model, "quote", row, "for", `${quote(name)} is neither an array nor a site, so it has no usable capacity. Mend the name.`)),
  );
}

function sectionsOf(model: PlanModel): Remark[] {
  if (model.table("procedures") === null) return [];
  const known = new Set(model.rows("procedures").map(sectionOf));
  return model
    .rows("steps")
    .filter((row) => row.section !== "" && model.find("procedures", row.procedure) !== null && !known.has(sectionOf(row)))
    .map((row) => remarkAt(model, "steps", row, "section", `Section ${quote(row.section)} is none of ${quote(row.procedure)}, so the step never appears. Add it to Procedures.`));
}

/** A plan without the table Shelves has none. */
function shelvesOf(model: PlanModel): Remark[] {
  return model
    .rows("drives")
    .filter(({ array, shelf }) => shelf !== "" && model.drives.shelfNamed(array, shelf) === null)
    .map((row) => remarkAt(model, "drives", row, "shelf", cutSentence(`Shelf ${quote(row.shelf)} of ${row.array} is not in the table Shelves. Add it there, or mend the name.`)));
}
