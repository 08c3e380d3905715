// `npm run bench -- capacity` runs one bench; with no name, every bench of this folder runs.
import { lastSunk } from "./support";

/** What every bench file exports by default: it measures and prints. */
type Bench = () => void | Promise<void>;

const benches: Readonly<Record<string, () => Promise<{ default: Bench }>>> = {
  addresses: () => import("./addresses"),
  capacity: () => import("./capacity"),
  checks: () => import("./checks"),
  durability: () => import("./durability"),
  hostile: () => import("./hostile"),
  keeping: () => import("./keeping"),
  office: () => import("./office"),
  resilience: () => import("./resilience"),
  tabs: () => import("./tabs"),
  twin: () => import("./twin"),
  workbook: () => import("./workbook"),
};

async function main(asked: readonly string[]): Promise<void> {
  const unknown = asked.filter((name) => benches[name] === undefined);
  if (unknown.length > 0) throw new Error(`No bench named ${unknown.join(", ")}. There are: ${Object.keys(benches).join(", ")}.`);
  for (const name of asked.length > 0 ? asked : Object.keys(benches)) await (await benches[name]!()).default();
  if (lastSunk() === undefined) console.log("Nothing was measured.");
}

main(process.argv.slice(2)).catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
