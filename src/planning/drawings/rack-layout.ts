import { unitsOf, type RackContents, type RackDevice } from "../plan/model";
import { formatKilograms } from "../text";

/** A device in a rack, and what is wrong with where it is. */
export interface DrawnDevice extends RackDevice {
  readonly fault: "overlaps" | "outside" | null;
}

/** What stands where in a rack, from the bottom up. */
export interface RackLayout extends RackContents {
  /** Units it has; as many as usual where the plan does not say. */
  readonly units: number;
  readonly devices: readonly DrawnDevice[];
}

/** Units of a full-height rack: common practice, no source. */
const usualUnits = 42;

/** Marks what overlaps or reaches outside in a rack. */
export function layoutRack(contents: RackContents): RackLayout {
  const { devices } = contents;
  const units = contents.rack.units ?? usualUnits;
  return {
    ...contents,
    units,
    devices: devices.map((device): DrawnDevice => {
      const isOutside = device.lowest < 1 || device.highest > units;
      const overlaps = devices.some((other) => other !== device && other.lowest <= device.highest && device.lowest <= other.highest);
      return { ...device, fault: isOutside ? "outside" : overlaps ? "overlaps" : null };
    }),
  };
}

/** Puts things that fill the same unit side by side, each in the first lane that is free there. */
export function layInLanes(devices: readonly DrawnDevice[]): readonly { readonly device: DrawnDevice; readonly lane: number; readonly lanes: number }[] {
  const tops: number[] = [];
  const placed = devices.map((device) => {
    let lane = tops.findIndex((highest) => highest < device.lowest);
    if (lane < 0) lane = tops.length;
    tops[lane] = device.highest;
    return { device, lane };
  });
  return placed.map(({ device, lane }) => ({ device, lane: device.fault === null ? 0 : lane, lanes: device.fault === null ? 1 : tops.length }));
}

/** Counts the units of a rack that something fills, each once. */
export function filledUnits({ units, devices }: RackLayout): number {
  return Array.from({ length: units }, (_, at) => at + 1).filter((unit) => devices.some(({ lowest, highest }) => lowest <= unit && unit <= highest)).length;
}

/** Says in words what stands in a rack. */
export function describeRack(layout: RackLayout): string {
  const { rack, units, devices, unplaced, kg, unweighed } = layout;
  const list = devices.map((device) => `${device.name} in ${unitsOf(device, rack)}${device.fault === null ? "" : device.fault === "overlaps" ? " (overlaps)" : " (outside)"}`);
  const notWeighed = unweighed.length === 0 ? "" : `, without ${unweighed.join(", ")}: not known`;
  return [
    `${rack.rack}: ${units} units, numbered from the ${rack.numberedFrom === "top" ? "top" : "bottom"}, ${filledUnits(layout)} filled.`,
    `Arrays and shelves weigh ${formatKilograms(kg)}${rack.limitKg === null ? "" : ` of ${formatKilograms(rack.limitKg)}`}${notWeighed}.`,
    devices.length === 0 ? "Nothing stands in it." : `${list.join(", ")}.`,
    ...(unplaced.length === 0 ? [] : [`No place yet: ${unplaced.join(", ")}.`]),
  ].join(" ");
}
