// `npm run bench -- capacity` runs one bench; with no name, every bench in this folder runs.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { lastSunk } from "./support";

const folder = join(process.cwd(), "bench");
const known = readdirSync(folder)
  .filter((file) => file.endsWith(".ts") && !["main.ts", "support.ts"].includes(file))
  .map((file) => file.slice(0, -3))
  .sort();

async function main(asked: readonly string[]): Promise<void> {
  const unknown = asked.filter((name) => !known.includes(name));
  if (unknown.length > 0) throw new Error(`No bench named ${unknown.join(", ")}. There are: ${known.join(", ")}.`);
  for (const name of asked.length > 0 ? asked : known) {
    const module = (await import(pathToFileURL(join(folder, `${name}.ts`)).href)) as { default: Bench | { default: Bench } };
    const bench = typeof module.default === "function" ? module.default : module.default.default;
    await bench();
  }
  if (lastSunk() === undefined) console.log("Nothing was measured.");
}

/** What every bench file exports by default: it measures and prints. */
type Bench = () => void | Promise<void>;

main(process.argv.slice(2)).catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
