import { kilograms, millimetres, type Kilograms } from "../quantity";
import { invalid, noAnswer, quote } from "../text";

/** Something that goes into a rack. */
export interface RackItem {
  readonly name: string;
  /** Rack units it fills. */
  readonly units: number;
  readonly kilograms: Kilograms;
  /** Lowest rack unit, counted from 1 at the bottom, where it must stand; null where it may go anywhere. */
  readonly bottomUnit: number | null;
  /** Where it stands in a table, for a sentence about it, such as `items row 3`. */
  readonly at?: string;
}

/** Rack units that are taken by what stands there already. */
export interface TakenUnits {
  readonly bottomUnit: number;
  readonly units: number;
  /** Where it stands in a table, for a sentence about it, such as `taken row 1`. */
  readonly at?: string;
}

/** Where an item goes. */
export interface PlacedItem {
  readonly name: string;
  readonly bottomUnit: number;
  readonly topUnit: number;
}

/** A rack as it is to be filled. */
export interface RackFit {
  /** The items in the order given. */
  readonly items: readonly PlacedItem[];
  readonly kilograms: Kilograms;
}

/** Height of one rack unit (EIA/ECA-310, IEC 60297-3-100). */
export const rackUnitMillimetres = millimetres(44.45);

/** Most places tried before a rack is refused. */
const mostTries = 200_000;

/**
 * Finds a place in a rack of `units` for every item: the heaviest as low as it can be with room left for the rest, then the next.
 *
 * Given positions are kept. Refuses items that stand outside the rack or in each other's units, and says when there is no room.
 */
export function fitRack(units: number, items: readonly RackItem[], taken: readonly TakenUnits[]): RackFit {
  const occupant = occupy(units, items, taken);
  const gaps = freeGaps(occupant);
  const free = items.filter((item) => item.bottomUnit === null).sort((a, b) => b.kilograms - a.kilograms || b.units - a.units);
  const bottoms = new Map(pack(free, gaps).map((bottom, index) => [free[index]!, bottom]));
  return {
    items: items.map((item) => {
      const bottomUnit = item.bottomUnit ?? bottoms.get(item)!;
      return { name: item.name, bottomUnit, topUnit: bottomUnit + item.units - 1 };
    }),
    kilograms: kilograms(items.reduce((sum, item) => sum + item.kilograms, 0)),
  };
}

/** Writes who stands in each unit, counted from 1; null: nobody. */
function occupy(units: number, items: readonly RackItem[], taken: readonly TakenUnits[]): (string | null)[] {
  const occupant: (string | null)[] = new Array<string | null>(units + 1).fill(null);
  for (const { bottomUnit, units: height, at = "taken" } of taken) {
    refuseOutside(units, bottomUnit, height, "taken", at);
    occupant.fill("what is taken", bottomUnit, bottomUnit + height);
  }
  for (const { name, bottomUnit, units: height, at = `items ${quote(name)}` } of items) {
    if (bottomUnit === null) continue;
    refuseOutside(units, bottomUnit, height, "items", at);
    const clash = occupant.slice(bottomUnit, bottomUnit + height).findIndex((other) => other !== null);
    if (clash >= 0) {
      const other = occupant[bottomUnit + clash]!;
      throw invalid("items", bottomUnit, `${at} at unit ${bottomUnit} meets ${other} in unit ${bottomUnit + clash}. Write another bottom unit.`);
    }
    occupant.fill(quote(name), bottomUnit, bottomUnit + height);
  }
  return occupant;
}

function refuseOutside(units: number, bottom: number, height: number, argument: string, what: string): void {
  if (bottom + height - 1 > units) {
    throw invalid(argument, bottom, `${what}: units ${bottom} to ${bottom + height - 1} are outside a rack of ${units}. Write a lower bottom unit.`);
  }
}

interface Gap {
  readonly bottom: number;
  readonly units: number;
}

function freeGaps(occupant: readonly (string | null)[]): Gap[] {
  const gaps: Gap[] = [];
  for (let unit = 1; unit < occupant.length; unit += 1) {
    if (occupant[unit] !== null) continue;
    const bottom = unit;
    while (unit < occupant.length && occupant[unit] === null) unit += 1;
    gaps.push({ bottom, units: unit - bottom });
  }
  return gaps;
}

/**
 * Packs items into gaps, each as low as it goes, and answers their bottom units.
 *
 * The lowest gap is tried first for each item in turn; where the rest then finds no room, the next gap is. What was found not to fit (so many
 * items left, gaps with so much room) is not tried again.
 */
function pack(items: readonly RackItem[], gaps: readonly Gap[]): number[] {
  const room = gaps.map((gap) => gap.units);
  const needed = items.reduce((sum, { units }) => sum + units, 0);
  const left = room.reduce((sum, units) => sum + units, 0);
  if (needed > left) throw noAnswer("items", needed, `items need ${needed} rack units and ${left} are free. Take a larger rack or fewer items.`);
  const bottoms: number[] = [];
  const hopeless = new Set<string>();
  let tries = 0;
  const placeFrom = (index: number): boolean => {
    const item = items[index];
    if (item === undefined) return true;
    const key = `${index}:${[...room].sort((a, b) => a - b).join()}`;
    if (hopeless.has(key)) return false;
    for (let gap = 0; gap < gaps.length; gap += 1) {
      if (room[gap]! < item.units) continue;
      tries += 1;
      if (tries > mostTries) throw noAnswer("items", items.length, "items could be stacked in too many ways to try. Give some of them a bottom unit.");
      bottoms[index] = gaps[gap]!.bottom + gaps[gap]!.units - room[gap]!;
      room[gap]! -= item.units;
      if (placeFrom(index + 1)) return true;
      room[gap]! += item.units;
    }
    hopeless.add(key);
    return false;
  };
  if (placeFrom(0)) return bottoms;
  throw noAnswer("items", needed, `items: ${left} rack units are free, but not in one piece where they are needed. Move what is in the way.`);
}
