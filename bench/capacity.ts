// Capacity: the cost of one call, against the same arithmetic in bare decimal.js and in the engine's native formulas.
import Decimal from "decimal.js";
import { usable } from "../src/functions/capacity";
import { installCustomFunctions } from "../src/functions/support/custom-functions";
import { openHeadless, type HeadlessWorkbook } from "../src/headless/open-headless";
import type { Cell } from "../src/sheet";
import { medians, printBench, type BenchLine } from "./support";

const calls = 100_000;
const cells = 10_000;

// Sizes of many digits and few, so that neither side has an easy input.
const driveSizes = [4, 3.84, 7.68, 15.36, 20, 1.92, 0.96, 30.72];
const inputs = Array.from({ length: calls }, (_, index) => ({ drives: 12 + (index % 500), driveSize: driveSizes[index % driveSizes.length]! }));

export default async function benchCapacity(): Promise<void> {
  installCustomFunctions();
  const lines = [usableAgainstDecimal("RAID 6, no reserve", 0), usableAgainstDecimal("RAID 6, a tenth in reserve", 0.1), await usableAgainstNativeFormulas()];
  printBench("Capacity", lines);
}

function usableAgainstDecimal(what: string, reserve: number): BenchLine {
  const [ours, bare] = medians([
    () => inputs.reduce((sum, { drives, driveSize }) => sum + usable("RAID 6", drives, driveSize, 1, reserve), 0),
    () => inputs.reduce((sum, { drives, driveSize }) => sum + inBareDecimal(drives, driveSize, 1, reserve), 0),
  ]) as [number, number];
  return ratioLine(`${calls} USABLE calls (${what}) against bare decimal.js`, ours, bare, 3);
}

/** The arithmetic of USABLE and nothing else: no reading, no scheme, no refusals. */
function inBareDecimal(drives: number, driveSize: number, spares: number, reserve: number): number {
  return new Decimal(drives).minus(spares).minus(2).times(driveSize).times(1e12).times(new Decimal(1).minus(reserve)).floor().div(1e12).toNumber();
}

/**
 * Three workbooks hold the same 10,000 rows of drives and size; into each goes one column more: USABLE, the same arithmetic in native
 * formulas, or plain numbers. What the plain numbers take is writing and waiting, and is taken off both others.
 */
async function usableAgainstNativeFormulas(): Promise<BenchLine> {
  const columns: ((row: number) => Cell)[] = [
    (row) => ({ formula: `=BAY.USABLE("RAID 6",A${row},B${row})` }),
    (row) => ({ formula: `=INT((A${row}-2)*B${row}*1000000000000)/1000000000000` }),
    (row) => ({ value: expectedAt(row) }),
  ];
  const times: number[][] = [[], [], []];
  for (let run = 0; run < 5; run++) {
    for (const [index, column] of columns.entries()) times[index]!.push(await timeColumn(column));
  }
  const [ours, native, plain] = times.map(middle) as [number, number, number];
  return ratioLine(`${cells} USABLE cells against native formulas in the browser workbook's engine`, ours - plain, native - plain, 2);
}

async function timeColumn(cellAt: (row: number) => Cell): Promise<number> {
  const workbook = await openHeadless();
  const rows = inputs.slice(0, cells).map(({ drives, driveSize }) => [{ value: drives }, { value: driveSize }]);
  await workbook.port.apply([{ kind: "add-sheet", plan: { name: "Bench", styles: {}, columnWidths: [], rows } }]);
  await workbook.settle();
  const column = rows.map((_, index) => [cellAt(index + 1)]);
  const start = performance.now();
  await workbook.port.apply([{ kind: "write", sheet: "Bench", row: 0, column: 2, cells: column }]);
  await workbook.settle();
  const elapsed = performance.now() - start;
  await refuseWrongCells(workbook);
  workbook.dispose();
  return elapsed;
}

function expectedAt(row: number): number {
  const { drives, driveSize } = inputs[row - 1]!;
  return (drives - 2) * driveSize;
}

/** A calculation that did not take place would be fast. */
async function refuseWrongCells({ port }: HeadlessWorkbook): Promise<void> {
  const sheet = (await port.read(["Bench"])).sheets.find(({ name }) => name === "Bench");
  for (let row = 1; row <= cells; row++) {
    const shown = sheet?.values[row - 1]?.[2];
    if (typeof shown !== "number" || Math.abs(shown / expectedAt(row) - 1) > 1e-9) throw new Error(`Row ${row} shows ${JSON.stringify(shown)}, not ${expectedAt(row)}.`);
  }
}

function ratioLine(what: string, ours: number, peer: number, bound: number): BenchLine {
  const ratio = ours / peer;
  return { what, measured: `${ours.toFixed(0)} ms to ${peer.toFixed(0)} ms, ratio ${ratio.toFixed(2)}`, target: `under ${bound}`, holds: ratio < bound };
}

function middle(times: number[]): number {
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}
