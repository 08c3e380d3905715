import { rowsOf, type Plan, type PlanRow } from "../../planning/workbook-model";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

/** Something mounted in a rack. Unit numbers as the rack counts them. */
export interface MountedItem {
  readonly name: string;
  readonly kind: "array" | "switch";
  readonly first: number;
  readonly last: number;
  readonly kg: number | null;
  readonly fault: "overlaps" | "outside" | null;
}

/** What stands where in a rack. */
export interface RackLayout {
  readonly rack: string;
  readonly site: string;
  readonly units: number;
  readonly fromTop: boolean;
  readonly limitKg: number | null;
  readonly items: readonly MountedItem[];
  /** Things planned for this rack that say no unit yet. */
  readonly unplaced: readonly string[];
}

/** Reads what stands in a rack, from the lowest unit number up, and marks what overlaps or reaches outside. */
export function layoutRack(plan: Plan, rack: PlanRow<"racks">): RackLayout {
  const units = rack.units ?? 42;
  const here = [
    ...rowsOf(plan, "arrays").map((row) => ({ row, name: row.array, kind: "array" as const, kg: row.weightKg })),
    ...rowsOf(plan, "switches").map((row) => ({ row, name: row.switch, kind: "switch" as const, kg: null })),
  ].filter(({ row }) => row.rack !== "" && row.rack.toLowerCase() === rack.rack.toLowerCase());
  const placed = here.flatMap(({ row: { bottomUnit, units: high }, name, kind, kg }) => (bottomUnit === null ? [] : [{ name, kind, kg, first: bottomUnit, last: bottomUnit + Math.max(1, high ?? 1) - 1 }]));
  placed.sort((a, b) => a.first - b.first || a.last - b.last);
  const items = placed.map((item) => {
    const isOutside = item.first < 1 || item.last > units;
    const overlaps = placed.some((other) => other !== item && other.first <= item.last && item.first <= other.last);
    return { ...item, fault: isOutside ? ("outside" as const) : overlaps ? ("overlaps" as const) : null };
  });
  return {
    rack: rack.rack,
    site: rack.site,
    units,
    fromTop: rack.numberedFrom === "top",
    limitKg: rack.limitKg,
    items,
    unplaced: here.filter(({ row }) => row.bottomUnit === null).map(({ name }) => name),
  };
}

const unitHeight = 12;
const top = 8;
const left = 26;
const right = pictureWidth - 4;

/** Draws the front of a rack: every unit, what stands in it, how heavy it is, and what does not fit. */
export function drawRack(layout: RackLayout): Picture {
  const { units, items, fromTop } = layout;
  const yOf = (unit: number) => top + (fromTop ? unit - 1 : units - unit) * unitHeight;
  const inside = items.filter(({ fault }) => fault !== "outside");
  const outside = items.filter(({ fault }) => fault === "outside");
  const height = top + units * unitHeight + 8 + (outside.length + layout.unplaced.length) * 16;

  const shapes: Shape[] = [rect(left, top, right - left, units * unitHeight, "frame")];
  for (let unit = 1; unit <= units; unit += 1) {
    const y = yOf(unit);
    shapes.push(line(left, y + unitHeight, right, y + unitHeight, "hairline"));
    if (unit === 1 || unit % 5 === 0 || unit === units) shapes.push(label(left - 5, y + unitHeight - 2.5, String(unit), { anchor: "end", look: "label soft" }));
  }
  const depth = new Map<MountedItem, number>();
  inside.forEach((item, index) => depth.set(item, inside.slice(0, index).filter((other) => item.first <= other.last && other.first <= item.last).length));
  for (const item of inside) {
    const y = Math.min(yOf(item.first), yOf(item.last));
    const indent = (depth.get(item) ?? 0) * 14;
    const size = (item.last - item.first + 1) * unitHeight;
    shapes.push(rect(left + 2 + indent, y + 0.5, right - left - 4 - indent, size - 1, item.fault === "overlaps" ? "item alarm" : `item ${item.kind}`));
    if (item.fault === "overlaps") shapes.push(rect(left + 6 + indent, y + size / 2 - 6.5, right - left - 12 - indent, 13, "plate"));
    const words = [item.fault === "overlaps" ? "⚠" : "", item.name, unitsOf(item)].filter((word) => word !== "").join("  ");
    shapes.push(label(left + 9 + indent, y + size / 2 + 4, words, { room: right - left - 70 - indent }));
    if (item.kg !== null) shapes.push(label(right - 9, y + size / 2 + 4, `${item.kg} kg`, { anchor: "end" }));
  }
  const below = [...outside.map((item) => `⚠ ${item.name} (${unitsOf(item)}) reaches outside the rack`), ...layout.unplaced.map((name) => `? ${name} has no unit yet`)];
  below.forEach((text, index) => shapes.push(label(left, top + units * unitHeight + 16 + index * 16, text, { room: right - left })));

  return { title: `Rack ${layout.rack}`, summary: describeRack(layout), width: pictureWidth, height, shapes };
}

/** Says in words what stands in a rack. */
export function describeRack({ rack, units, fromTop, items, limitKg, unplaced }: RackLayout): string {
  const kg = items.reduce((sum, item) => sum + (item.kg ?? 0), 0);
  const list = items.map((item) => `${item.name} in ${unitsOf(item)}${item.fault === null ? "" : item.fault === "overlaps" ? " (overlaps)" : " (reaches outside)"}`);
  const used = new Set(items.flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, index) => first + index).filter((unit) => unit >= 1 && unit <= units))).size;
  return [
    `${rack}: ${units} units, numbered from the ${fromTop ? "top" : "bottom"}, ${used} filled.`,
    `Arrays weigh ${kg} kg${limitKg === null ? "" : ` of ${limitKg} kg`}.`,
    items.length === 0 ? "Nothing stands in it." : `${list.join(", ")}.`,
    unplaced.length === 0 ? "" : `No unit yet: ${unplaced.join(", ")}.`,
  ]
    .filter((part) => part !== "")
    .join(" ");
}

function unitsOf({ first, last }: MountedItem): string {
  return first === last ? `U${first}` : `U${first}–${last}`;
}
