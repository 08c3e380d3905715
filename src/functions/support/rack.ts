import type { RackItem, TakenUnits } from "../../planning/facility";
import { kilograms } from "../../planning/quantity";
import { invalid } from "../../planning/text";
import { readRows } from "./cells";
import { readName } from "./names";
import { readCount, readNumber } from "./numbers";

/** Most rack units of a rack. */
const mostUnits = 100;

/** Reads a number of rack units. */
export function readUnits(received: unknown, argument: string): number {
  return readCount(received, argument, { min: 1, max: mostUnits, example: 42 });
}

/** Reads what goes into a rack: name, units, kilograms and, where it is given, the bottom unit, a row each. */
export function readRackItems(received: unknown, argument: string): RackItem[] {
  const rows = readRows(received, argument, ["item", "items", "name", "device", "array"]);
  if (rows.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range of name, rack units and kg.`);
  return rows.map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    return {
      name: readName(cells[0], `${at} name`),
      units: readUnits(cells[1], `${at} units`),
      kilograms: kilograms(readNumber(cells[2], `${at} kg`, { above: 0, max: 1e5, example: 30 })),
      bottomUnit: (cells[3] ?? null) === null ? null : readUnits(cells[3], `${at} bottom unit`),
      at,
    };
  });
}

/** Reads the rack units that are taken: bottom unit and units, a row each; none where it is left out. */
export function readTakenUnits(received: unknown, argument: string): TakenUnits[] {
  return readRows(received, argument, ["bottom unit", "bottom", "unit"]).map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    return { bottomUnit: readUnits(cells[0], `${at} bottom unit`), units: readUnits(cells[1], `${at} units`), at };
  });
}
