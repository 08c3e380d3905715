import { kilograms } from "../../planning/quantity";
import { name } from "./names";
import { count, number, orNone } from "./numbers";
import { mapped } from "./reader";
import { column, table } from "./table";

/** Reads a number of rack units, at most 100. */
export const rackUnits = count({ min: 1, max: 100, example: 42 });

/** Reads what goes into a rack: name, units, kilograms and, where it is given, the bottom unit, a row each. */
export const rackItems = table(
  {
    name: column("name", name),
    units: column("units", rackUnits),
    kilograms: column("kg", mapped(number({ above: 0, max: 1e5, example: 30 }), kilograms)),
    bottomUnit: column("bottom unit", orNone(rackUnits)),
  },
  { headers: ["item", "items", "name", "device", "array"], give: "Give a range of name, rack units and kg." },
);

/** Reads the rack units that are taken: bottom unit and units, a row each; none where it is left out. */
export const takenUnits = table({ bottomUnit: column("bottom unit", rackUnits), units: column("units", rackUnits) }, { headers: ["bottom unit", "bottom", "unit"] });
