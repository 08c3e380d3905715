// Writes src/functions/functions.json, the host's description of every worksheet function, out of the catalogue.
// `--check` writes nothing and fails when the file is stale. Fails on a duplicate id, a missing description or a limit of the host broken.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue, type CatalogueEntry } from "../src/functions/catalogue";
import type { Parameter } from "../src/functions/support/parameter";

const target = join(__dirname, "..", "src", "functions", "functions.json");

/** What a sheet offers for an argument while somebody types, as the host's schema calls it. */
interface CustomEnum {
  readonly id: string;
  readonly type: "string" | "number";
  readonly values: readonly { readonly name: string; readonly stringValue?: string; readonly numberValue?: number; readonly tooltip?: string }[];
}

/** Lists of choices, each once; arguments that offer the same share one. An id is the argument's name, behind that of the function where several lists have it. */
const enums = new Map<string, CustomEnum>();
const described = [...catalogue].sort((a, b) => (a.id < b.id ? -1 : 1));
for (const { id, parameters } of described) {
  for (const { name, offers } of parameters.filter((one) => one.offers.length > 0)) {
    const list = JSON.stringify(offers);
    const own = name.toUpperCase();
    const isTaken = [...enums.values()].some((one) => one.id === own);
    if (!enums.has(list)) enums.set(list, customEnum(isTaken ? `${id}_${own}` : own, offers));
  }
}

function customEnum(id: string, offers: Parameter["offers"]): CustomEnum {
  const type = typeof offers[0]!.value === "number" ? "number" : "string";
  const values = offers.map(({ value, meaning }) => ({
    name: String(value),
    ...(typeof value === "number" ? { numberValue: value } : { stringValue: value }),
    ...(meaning === undefined ? {} : { tooltip: meaning }),
  }));
  return { id, type, values };
}

/** Describes one function; members in the order in which the host's own tools write them. */
function describe({ id, description, parameters, answers }: CatalogueEntry): object {
  return {
    description,
    id,
    name: id,
    parameters: parameters.map(({ name, description: help, optional, range, offers }) => ({
      ...(offers.length > 0 ? { customEnumId: enums.get(JSON.stringify(offers))!.id } : {}),
      description: help,
      ...(range ? { dimensionality: "matrix" } : {}),
      name,
      ...(optional ? { optional } : {}),
      type: "any",
    })),
    result: { ...(answers.spills ? { dimensionality: "matrix" } : {}), ...(answers.type === undefined ? {} : { type: answers.type }) },
  };
}

/** Lists what the host would not take: the strictest limits of its documentation. */
function faults(): string[] {
  const within = (text: string): boolean => text.length >= 1 && text.length <= 128;
  return catalogue.flatMap(({ id, description, parameters }, index) => [
    ...(/^[A-Z][A-Z0-9.]{2,63}$/.test(id) ? [] : [`${id}: an id is 3 to 64 capital letters and digits`]),
    ...(catalogue.findIndex((other) => other.id === id) === index ? [] : [`${id}: the id stands twice`]),
    ...(within(description) ? [] : [`${id}: the description must have 1 to 128 characters`]),
    ...parameters.filter((parameter) => !within(parameter.description)).map(({ name }) => `${id} ${name}: the description must have 1 to 128 characters`),
  ]);
}

const found = faults();
const functions = described.map(describe);
// An argument with choices stays of any type: what else is typed, an empty cell and an error reach the function as they are.
// Arguments may hold error cells: a function sees them and says which one to mend. The host reads this beside the functions, not in each.
const text = `${JSON.stringify({ allowCustomDataForDataTypeAny: false, allowErrorForDataTypeAny: true, enums: [...enums.values()], functions }, null, 2)}\n`;
if (process.argv.includes("--check")) {
  if (text !== readFileSync(target, "utf8")) found.push("src/functions/functions.json is stale. Run: npm run metadata");
} else if (found.length === 0) {
  writeFileSync(target, text);
  console.log(`${functions.length} functions described in src/functions/functions.json`);
}
if (found.length > 0) {
  console.error(found.join("\n"));
  process.exitCode = 1;
}
