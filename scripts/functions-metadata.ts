// Writes src/functions/functions.json, the host's description of every worksheet function, out of the catalogue.
// `--check` writes nothing and fails when the file is stale. Fails on a duplicate id, a missing description or a limit of the host broken.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue, type CatalogueEntry } from "../src/functions/catalogue";

const target = join(__dirname, "..", "src", "functions", "functions.json");

/** Describes one function; members in the order in which the host's own tools write them. */
function describe({ id, description, parameters, answers }: CatalogueEntry): object {
  return {
    description,
    id,
    name: id,
    parameters: parameters.map(({ name, description: help, optional, range }) => ({
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
const functions = [...catalogue].sort((a, b) => (a.id < b.id ? -1 : 1)).map(describe);
// Arguments may hold error cells: a function sees them and says which one to mend. The host reads this beside the functions, not in each.
const text = `${JSON.stringify({ allowCustomDataForDataTypeAny: false, allowErrorForDataTypeAny: true, functions }, null, 2)}\n`;
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
