import { unitsOf, type PlanIndex, type RackContents, type RackItem } from "../../planning/plan/model";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

/** Something mounted in a rack, and what is wrong with where it is. */
export interface MountedItem extends RackItem {
  readonly fault: "overlaps" | "outside" | null;
}

/** What stands where in a rack, from the bottom up. */
export interface RackLayout extends RackContents {
  /** Units it has; as many as usual where the plan does not say. */
  readonly units: number;
  readonly items: readonly MountedItem[];
  /** Things planned for this rack whose place is not known. */
  readonly unplaced: readonly string[];
}

/** Units of a full-height rack: common practice, no source. */
const usualUnits = 42;

/** Marks what overlaps or reaches outside in a rack, and names what has no place in it yet. */
export function layoutRack(index: PlanIndex, { rack, items }: RackContents): RackLayout {
  const units = rack.units ?? usualUnits;
  const planned = [
    ...index.rowsWith("arrays", "rack", rack.rack).map((row) => ({ row, name: row.array })),
    ...index.rowsWith("switches", "rack", rack.rack).map((row) => ({ row, name: row.switch })),
  ];
  return {
    rack,
    units,
    items: items.map((item): MountedItem => {
      const isOutside = item.lowest < 1 || item.highest > units;
      const overlaps = items.some((other) => other !== item && other.lowest <= item.highest && item.lowest <= other.highest);
      return { ...item, fault: isOutside ? "outside" : overlaps ? "overlaps" : null };
    }),
    unplaced: planned.filter(({ row }) => !items.some((item) => item.row === row)).map(({ name }) => name),
  };
}

const unitHeight = 12;
const top = 8;
const left = 26;
const right = pictureWidth - 4;

/** Draws the front of a rack: every unit, what stands in it, how heavy it is, and what does not fit. */
export function drawRack(layout: RackLayout): Picture {
  const { rack, units, items } = layout;
  const fromTop = rack.numberedFrom === "top";
  /** Upper edge of a unit that is counted from the bottom. */
  const yOf = (unit: number) => top + (units - unit) * unitHeight;
  const inside = items.filter(({ fault }) => fault !== "outside");
  const outside = items.filter(({ fault }) => fault === "outside");
  const height = top + units * unitHeight + 8 + (outside.length + layout.unplaced.length) * 16;

  const shapes: Shape[] = [rect(left, top, right - left, units * unitHeight, "frame")];
  for (let unit = 1; unit <= units; unit += 1) {
    const y = yOf(unit);
    const number = fromTop ? units - unit + 1 : unit;
    shapes.push(line(left, y + unitHeight, right, y + unitHeight, "hairline"));
    if (number === 1 || number % 5 === 0 || number === units) shapes.push(label(left - 5, y + unitHeight - 2.5, String(number), { anchor: "end", look: "label soft" }));
  }
  for (const { item, lane, lanes } of layInLanes(inside)) {
    const y = yOf(item.highest);
    const width = (right - left - 4) / lanes;
    const x = left + 2 + lane * width;
    const size = (item.highest - item.lowest + 1) * unitHeight;
    shapes.push(rect(x, y + 0.5, width, size - 1, item.fault === null ? `item ${item.table}` : "item alarm"));
    if (item.fault !== null) shapes.push(rect(x + 3, y + size / 2 - 6.5, width - 6, 13, "plate"));
    const weight = item.kg === null || lanes > 1 ? "" : `${item.kg} kg`;
    shapes.push(label(x + 7, y + size / 2 + 4, `${item.fault === null ? "" : "⚠ "}${item.name}${lanes > 1 ? "" : `, ${unitsOf(item, rack)}`}`, { room: width - 14 - weight.length * 6 }));
    if (weight !== "") shapes.push(label(right - 9, y + size / 2 + 4, weight, { anchor: "end" }));
  }
  const below = [...outside.map((item) => `⚠ ${item.name}, ${unitsOf(item, rack)}: outside the rack`), ...layout.unplaced.map((name) => `? ${name} has no place yet`)];
  below.forEach((text, index) => shapes.push(label(left, top + units * unitHeight + 16 + index * 16, text, { room: right - left })));

  return { title: `Rack ${rack.rack}`, summary: describeRack(layout), width: pictureWidth, height, shapes };
}

/** Puts things that fill the same unit side by side, each in the first lane that is free there. */
function layInLanes(items: readonly MountedItem[]): readonly { readonly item: MountedItem; readonly lane: number; readonly lanes: number }[] {
  const tops: number[] = [];
  const placed = items.map((item) => {
    let lane = tops.findIndex((highest) => highest < item.lowest);
    if (lane < 0) lane = tops.length;
    tops[lane] = item.highest;
    return { item, lane };
  });
  return placed.map(({ item, lane }) => ({ item, lane: item.fault === null ? 0 : lane, lanes: item.fault === null ? 1 : tops.length }));
}

/** Says in words what stands in a rack. */
export function describeRack({ rack, units, items, unplaced }: RackLayout): string {
  const kg = items.reduce((sum, item) => sum + (item.kg ?? 0), 0);
  const list = items.map((item) => `${item.name} in ${unitsOf(item, rack)}${item.fault === null ? "" : item.fault === "overlaps" ? " (overlaps)" : " (outside)"}`);
  const filled = Array.from({ length: units }, (_, at) => at + 1).filter((unit) => items.some(({ lowest, highest }) => lowest <= unit && unit <= highest)).length;
  return [
    `${rack.rack}: ${units} units, numbered from the ${rack.numberedFrom === "top" ? "top" : "bottom"}, ${filled} filled.`,
    `Arrays weigh ${kg} kg${rack.limitKg === null ? "" : ` of ${rack.limitKg} kg`}.`,
    items.length === 0 ? "Nothing stands in it." : `${list.join(", ")}.`,
    ...(unplaced.length === 0 ? [] : [`No place yet: ${unplaced.join(", ")}.`]),
  ].join(" ");
}
