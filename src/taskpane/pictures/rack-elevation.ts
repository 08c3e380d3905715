import { describeRack, layInLanes, type RackLayout } from "../../planning/drawings";
import { unitsOf } from "../../planning/plan/model";
import { formatKilograms } from "../../planning/text";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

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
    shapes.push(label(x + 7, y + size / 2 + 4, `${device.fault === null ? "" : "! "}${device.name}${lanes > 1 ? "" : `, ${unitsOf(device, rack)}`}`, { room: width - 14 - weight.length * 6 }));
    if (weight !== "") shapes.push(label(right - 9, y + size / 2 + 4, weight, { anchor: "end" }));
  }
  const below = [...outside.map((device) => `! ${device.name}, ${unitsOf(device, rack)}: outside the rack`), ...layout.unplaced.map((name) => `? ${name} has no place yet`)];
  below.forEach((text, index) => shapes.push(label(left, top + units * unitHeight + 16 + index * 16, text, { room: right - left })));

  return { title: `Rack ${rack.rack}`, summary: describeRack(layout), width: pictureWidth, height, shapes };
}
