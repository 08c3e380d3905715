import type { TakenUnits } from "../../planning/facility";
import { kilograms } from "../../planning/quantity";
import { invalid } from "../../planning/text";
import { atMost } from "./at-most";
import { name } from "./names";
import { count, number, orNone } from "./numbers";
import { mapped, type Reader } from "./reader";
import { column, table } from "./table";

/** Reads a number of rack units, at most 100. */
export const rackUnits = count({ min: 1, max: 100, example: 42 });

const bottomHeadings = ["Bottom unit", "Bottom"];

const itemRows = table(
  {
    name: column("name", ["Item", "Items", "Name", "Device", "Array", "Switch"], name),
    units: column("units", ["Units", "Rack units"], rackUnits),
    kilograms: column("kg", ["kg", "Weight kg", "Weight", "Kilograms"], mapped(number({ above: 0, max: 1e5, example: 30 }), kilograms)),
    bottomUnit: column("bottom unit", bottomHeadings, orNone(rackUnits), { optional: true }),
  },
  { give: "Give a range of name, rack units and kg.", passes: ["Top unit", "Rack", "Site", "Model", "Serial"] },
);

/** Reads what goes into a rack: name, units, kilograms and, where it is given, the bottom unit, a row each. */
export const rackItems = atMost(10_000, itemRows);

/** Reads the rack units that are taken: bottom unit and units, a row each, or what RACKFIT answered; none where it is left out. */
export const takenUnits: Reader<readonly TakenUnits[]> = mapped(
  table(
    {
      bottomUnit: column("bottom unit", bottomHeadings, rackUnits),
      units: column("units", ["Units", "Rack units"], orNone(rackUnits), { optional: true }),
      topUnit: column("top unit", ["Top unit", "Top"], orNone(rackUnits), { named: true }),
    },
    { passes: ["Item", "Items", "Name", "Device", "Array", "Switch", "kg"] },
  ),
  (rows) =>
    rows.map(({ bottomUnit, units, topUnit, at }) => {
      if (units !== null) return { bottomUnit, units, at };
      if (topUnit === null) throw invalid(`${at} units`, units, `${at} units is blank. Write how many rack units are taken, such as 3.`);
      if (topUnit < bottomUnit) throw invalid(`${at} top unit`, topUnit, `${at} top unit is ${topUnit}, below its bottom unit ${bottomUnit}. Write the higher one as the top.`);
      return { bottomUnit, units: topUnit - bottomUnit + 1, at };
    }),
);
