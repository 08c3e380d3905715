// Writes src/functions/functions.json, the description of every worksheet function, out of the JSDoc of the adapters.
// `--check` writes nothing and fails when the file is stale. Fails on a duplicate id, a missing description or a limit broken.
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import metadata from "custom-functions-metadata";

const folder = join(import.meta.dirname, "..", "src", "functions");
const target = join(folder, "functions.json");
const sources = readdirSync(folder)
  .filter((name) => name.endsWith(".ts") && !["catalogue.ts", "examples.ts", "main.ts"].includes(name))
  .sort()
  .map((name) => join(folder, name));

const parsed = await metadata.generateCustomFunctionsMetadata(sources);
const faults = [...parsed.errors];
const functions = faults.length > 0 ? [] : JSON.parse(parsed.metadataJson).functions;
const seen = new Set();
for (const one of functions) {
  // Ranges and values may hold error cells: the function sees them and says which one to mend.
  one.options = { ...one.options };
  const parameters = one.parameters ?? [];
  if (parameters.some((parameter) => parameter.type === "any")) one.allowErrorForDataTypeAny = true;
  if (Object.keys(one.options).length === 0) delete one.options;
  if (seen.has(one.id)) faults.push(`${one.id}: the id stands twice`);
  seen.add(one.id);
  const within = (text, most) => typeof text === "string" && text.length >= 1 && text.length <= most;
  if (!/^[A-Z][A-Z0-9.]{2,63}$/.test(one.id)) faults.push(`${one.id}: an id is 3 to 64 capital letters and digits`);
  if (one.name !== one.id) faults.push(`${one.id}: name is "${one.name}"; put the description above @customfunction`);
  if (!within(one.description, 128)) faults.push(`${one.id}: the description must have 1 to 128 characters`);
  for (const parameter of parameters) {
    if (!within(parameter.description, 128)) faults.push(`${one.id} ${parameter.name}: the description must have 1 to 128 characters`);
  }
}
if (faults.length > 0) {
  console.error(faults.join("\n"));
  process.exit(1);
}

functions.sort((a, b) => (a.id < b.id ? -1 : 1));
const text = `${JSON.stringify({ allowCustomDataForDataTypeAny: false, functions }, null, 2)}\n`;
if (process.argv.includes("--check")) {
  if (text !== readFileSync(target, "utf8")) {
    console.error("src/functions/functions.json is stale. Run: npm run metadata");
    process.exit(1);
  }
} else {
  writeFileSync(target, text);
  console.log(`${functions.length} functions described in src/functions/functions.json`);
}
