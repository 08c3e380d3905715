import { unitsOf, type RackContents, type RackDevice } from "../../planning/plan/model";
import { formatKilograms } from "../../planning/text";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

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

const unitHeight = 12;
const top = 8;
const left = 26;
const right = pictureWidth - 4;

/** Draws the front of a rack: every unit, what stands in it, how heavy it is, and what does not fit. */
export function drawRack(layout: RackLayout): Picture {
  const { rack, units, devices } = layout;
  const fromTop = rack.numberedFrom === "top";
  /** Upper edge of a unit that is counted from the bottom. */
  const yOf = (unit: number) => top + (units - unit) * unitHeight;
  const inside = devices.filter(({ fault }) => fault !== "outside");
  const outside = devices.filter(({ fault }) => fault === "outside");
  const height = top + units * unitHeight + 8 + (outside.length + layout.unplaced.length) * 16;

  const shapes: Shape[] = [rect(left, top, right - left, units * unitHeight, "frame")];
  for (let unit = 1; unit <= units; unit += 1) {
    const y = yOf(unit);
    const number = fromTop ? units - unit + 1 : unit;
    shapes.push(line(left, y + unitHeight, right, y + unitHeight, "hairline"));
    if (number === 1 || number % 5 === 0 || number === units) shapes.push(label(left - 5, y + unitHeight - 2.5, String(number), { anchor: "end", look: "label soft" }));
  }
  for (const { device, lane, lanes } of layInLanes(inside)) {
    const y = yOf(device.highest);
    const width = (right - left - 4) / lanes;
    const x = left + 2 + lane * width;
    const size = (device.highest - device.lowest + 1) * unitHeight;
    shapes.push(rect(x, y + 0.5, width, size - 1, device.fault === null ? `item ${device.table}` : "item alarm"));
    if (device.fault !== null) shapes.push(rect(x + 3, y + size / 2 - 6.5, width - 6, 13, "plate"));
    const weight = device.kg === null || lanes > 1 ? "" : formatKilograms(device.kg);
    shapes.push(label(x + 7, y + size / 2 + 4, `${device.fault === null ? "" : "⚠ "}${device.name}${lanes > 1 ? "" : `, ${unitsOf(device, rack)}`}`, { room: width - 14 - weight.length * 6 }));
    if (weight !== "") shapes.push(label(right - 9, y + size / 2 + 4, weight, { anchor: "end" }));
  }
  const below = [...outside.map((device) => `⚠ ${device.name}, ${unitsOf(device, rack)}: outside the rack`), ...layout.unplaced.map((name) => `? ${name} has no place yet`)];
  below.forEach((text, index) => shapes.push(label(left, top + units * unitHeight + 16 + index * 16, text, { room: right - left })));

  return { title: `Rack ${rack.rack}`, summary: describeRack(layout), width: pictureWidth, height, shapes };
}

/** Puts things that fill the same unit side by side, each in the first lane that is free there. */
function layInLanes(devices: readonly DrawnDevice[]): readonly { readonly device: DrawnDevice; readonly lane: number; readonly lanes: number }[] {
  const tops: number[] = [];
  const placed = devices.map((device) => {
    let lane = tops.findIndex((highest) => highest < device.lowest);
    if (lane < 0) lane = tops.length;
    tops[lane] = device.highest;
    return { device, lane };
  });
  return placed.map(({ device, lane }) => ({ device, lane: device.fault === null ? 0 : lane, lanes: device.fault === null ? 1 : tops.length }));
}

/** Says in words what stands in a rack. */
export function describeRack({ rack, units, devices, unplaced, kg, unweighed }: RackLayout): string {
  const list = devices.map((device) => `${device.name} in ${unitsOf(device, rack)}${device.fault === null ? "" : device.fault === "overlaps" ? " (overlaps)" : " (outside)"}`);
  const filled = Array.from({ length: units }, (_, at) => at + 1).filter((unit) => devices.some(({ lowest, highest }) => lowest <= unit && unit <= highest)).length;
  const notWeighed = unweighed.length === 0 ? "" : `, without ${unweighed.join(", ")}: not known`;
  return [
    `${rack.rack}: ${units} units, numbered from the ${rack.numberedFrom === "top" ? "top" : "bottom"}, ${filled} filled.`,
    `Arrays and shelves weigh ${formatKilograms(kg)}${rack.limitKg === null ? "" : ` of ${formatKilograms(rack.limitKg)}`}${notWeighed}.`,
    devices.length === 0 ? "Nothing stands in it." : `${list.join(", ")}.`,
    ...(unplaced.length === 0 ? [] : [`No place yet: ${unplaced.join(", ")}.`]),
  ].join(" ");
}
