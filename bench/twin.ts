// The formulas of a tab against their twin: random records on the engine, right, wrong and nearly right, with errors, snags and whatever no program may read its own way.
import { forgedCells } from "../src/planning/commissioning/tab";
import { twinCells } from "../src/planning/commissioning/tab/twin-cells";
import { fillAtRandom, openRandomTab, readRandomTab } from "../tests/support/random-records";
import { printBench, sink } from "./support";

const leastRecords = 10_000;
const recordsOfTab = 480;

export default async function benchTwin(): Promise<void> {
  const start = process.cpuUsage();
  const differences: string[] = [];
  let records = 0;
  let cells = 0;
  for (let seed = 1; records < leastRecords; seed += 1) {
    const workbook = await openRandomTab(recordsOfTab);
    await fillAtRandom(workbook, seed);
    const { sheet, tab } = await readRandomTab(workbook);
    differences.push(...forgedCells(sheet, tab).map(({ sentence }) => `seed ${seed}: ${sentence}`));
    records += recordsOfTab;
    cells += twinCells(sheet, tab).length;
    workbook.dispose();
  }
  sink(differences);
  const { user, system } = process.cpuUsage(start);
  printBench("The formulas of a tab against their twin", [
    { what: "records", measured: `${records}, ${cells} cells in ${((user + system) / 1e6).toFixed(0)} s of processor time` },
    { what: "cells that say something else than their twin", measured: String(differences.length), target: "0", holds: differences.length === 0 },
  ]);
  for (const one of differences.slice(0, 20)) console.log(`  ${one}`);
}
