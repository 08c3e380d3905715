import { portLabel, unitsOf, type PlanModel, type RackContents } from "../plan/model";
import { foldName, formatKilograms, formatWatts, splitNames } from "../text";
import { titleOfPart } from "./flow";
import { alarm, areaOfText, body, faint, firm, large, medium, paragraph, rect, small, text, thin, line, type Mark, type PageContent } from "./page";
import { describeRack, filledUnits, layInLanes, layoutRack, type DrawnDevice, type RackLayout } from "./rack-layout";

/** Most units that one page shows, and the most millimetres that one of them takes. */
const unitsOfPage = 60;
const largestUnit = 6;

const top = body.top + 10;
const numberWidth = 9;
const viewWidth = 140;
const views = [
  { name: "Front", left: body.left + numberWidth },
  { name: "Rear", left: body.left + numberWidth + viewWidth + numberWidth + 4 },
] as const;
const sideLeft = views[1].left + viewWidth + 6;
const sideWidth = body.right - sideLeft;

const caution = "Planning figures. Anchor the rack and fill it from the bottom; lift as the plan says, drives out. Floor load and local codes decide. " +
  "The plan does not say where on its rear a device has its supplies and ports: see the maker's guide.";

/** Draws each rack of a site from the front, with names, units and weights, and from the rear, with feeds and ports; beside them what the rack carries. */
export function rackPages(model: PlanModel, site: string): readonly PageContent[] {
  return model.racks.all().filter(({ rack }) => foldName(rack.site) === foldName(site)).flatMap((contents) => pagesOf(model, contents));
}

function pagesOf(model: PlanModel, contents: RackContents): readonly PageContent[] {
  const layout = layoutRack(contents);
  const parts = Math.max(1, Math.ceil(layout.units / unitsOfPage));
  return Array.from({ length: parts }, (_, part): PageContent => {
    const lowest = part * unitsOfPage + 1;
    const highest = Math.min(layout.units, lowest + unitsOfPage - 1);
    return {
      kind: "racks",
      title: titleOfPart(`Rack ${layout.rack.rack}, front and rear`, part),
      summary: describeRack(layout),
      marks: [...views.flatMap(({ name, left }) => elevation(model, layout, name, left, lowest, highest)), ...besides(layout)],
    };
  });
}

function elevation(model: PlanModel, { rack, units, devices }: RackLayout, view: "Front" | "Rear", left: number, lowest: number, highest: number): readonly Mark[] {
  const unit = Math.min(largestUnit, (body.bottom - top) / (highest - lowest + 1));
  const yOf = (count: number): number => top + (highest - count) * unit;
  const marks: Mark[] = [...text(left, body.top + 6, viewWidth, view, { size: large, isBold: true })];
  for (let count = lowest; count <= highest; count += 1) {
    const number = rack.numberedFrom === "top" ? units - count + 1 : count;
    const base = yOf(count) + unit / 2 + 0.9;
    marks.push(line([[left, yOf(count)], [left + viewWidth, yOf(count)]], faint), ...text(left - numberWidth, base, numberWidth - 1.5, String(number), { align: "right" }));
  }
  marks.push(rect(left, yOf(highest), viewWidth, (highest - lowest + 1) * unit, "none", firm));
  // Seen from the rear what stands side by side changes sides.
  for (const { device, lane, lanes } of layInLanes(devices.filter(({ fault }) => fault !== "outside"))) {
    if (device.highest < lowest || device.lowest > highest) continue;
    const y = yOf(Math.min(device.highest, highest));
    const height = yOf(Math.max(device.lowest, lowest)) + unit - y;
    const width = (viewWidth - 2) / lanes;
    const x = left + 1 + (view === "Front" ? lane : lanes - 1 - lane) * width;
    const words = view === "Front" ? frontWords(device, rack) : rearWords(model, device);
    marks.push(rect(x, y + 0.2, width, height - 0.4, device.table === "switches" ? "grey" : "light", device.fault === null ? thin : alarm), ...inside(device, words, x, y, width, height));
  }
  return marks;
}

/** Writes what stands on a device: its first words bold, further ones below where it is high enough. */
function inside(device: DrawnDevice, words: readonly string[], x: number, y: number, width: number, height: number): readonly Mark[] {
  const [first = "", ...more] = words;
  const pitch = 3.6;
  const rows = Math.max(1, Math.min(1 + more.length, Math.floor((height - 0.6) / pitch)));
  const base = y + (height - rows * pitch) / 2 + 2.7;
  const room = width - 4;
  const head = device.fault === null ? first : `! overlaps: ${first}`;
  if (rows === 1) {
    const name = text(x + 2, base, more.length === 0 ? room : room * 0.45, head, { isBold: true });
    const end = name.length === 0 ? x + 2 : areaOfText(name[0]!).right + 3;
    return [...name, ...text(end, base, x + 2 + room - end, more.join("; "))];
  }
  // A high device has room for a larger name.
  const isHigh = height - rows * pitch >= 1.5;
  const told = more.slice(0, rows - 2).concat(more.slice(rows - 2).join("; "));
  return [...text(x + 2, base - (isHigh ? 0.5 : 0), room, head, { isBold: true, size: isHigh ? medium : small }), ...told.flatMap((one, at) => text(x + 2, base + (at + 1) * pitch, room, one))];
}

function frontWords(device: DrawnDevice, rack: RackContents["rack"]): readonly string[] {
  const { row, kg } = device;
  const model = "model" in row ? row.model : "";
  const place = [unitsOf(device, rack), kg === null ? "" : formatKilograms(kg), model].filter((part) => part !== "").join(", ");
  return [device.name, place, ...("serial" in row && row.serial !== "" ? [`serial ${row.serial}`] : [])];
}

function rearWords(model: PlanModel, { row, name }: DrawnDevice): readonly string[] {
  const { feedA, feedB } = row;
  const feeds = [feedA === "" ? "" : `feed A ${feedA}`, feedB === "" ? "" : `feed B ${feedB}`].filter((part) => part !== "").join(", ");
  const ports = "controllers" in row ? (model.ports.socketsOf(row) ?? []).map(portLabel).join(" ") : "switch" in row ? splitNames(row.ports).join(", ") : "";
  const isCount = "switch" in row && /^\d+$/.test(ports);
  return [name, feeds === "" ? "no feed in the plan" : feeds, ...(ports === "" ? [] : [isCount ? `${ports} ports` : `ports ${ports}`])];
}

/** Writes what the rack carries, and what could not be drawn. */
function besides(layout: RackLayout): readonly Mark[] {
  const { rack, units, devices, unplaced, unmeasured, unweighed, kg, heat } = layout;
  const outside = devices.filter(({ fault }) => fault === "outside").map((device) => `${device.name} in ${unitsOf(device, rack)}`);
  const facts: readonly (readonly [title: string, words: string])[] = [
    ["Units", `${units}${rack.units === null ? ", as usual: the plan does not say" : ""}, numbered from the ${rack.numberedFrom === "top" ? "top" : "bottom"}; ${filledUnits(layout)} filled`],
    ["Weight of arrays and shelves", `${formatKilograms(kg)}${rack.limitKg === null ? "" : ` of ${formatKilograms(rack.limitKg)}`}`],
    ["Heat", `${formatWatts(heat)}${rack.coolingW === null ? "" : ` of ${formatWatts(rack.coolingW)} that can be taken away`}`],
    ["Outlets", rack.outlets],
    ["Outside the rack", outside.join("; ")],
    ["Without a place yet", unplaced.join(", ")],
    ["Weight not known", unweighed.join(", ")],
    ["Height not known, drawn as 1 unit", unmeasured.join(", ")],
    ["Mind", caution],
  ];
  const marks: Mark[] = [];
  let y: number = body.top + 3;
  for (const [title, words] of facts.filter(([, told]) => told !== "")) {
    if (y > body.bottom - 8) break;
    const block = paragraph(sideLeft, y + 4.6, sideWidth, words);
    marks.push(...text(sideLeft, y + 3, sideWidth, title, { size: medium, isBold: true }), ...block.marks.filter((mark) => mark.y < body.bottom));
    y = block.bottom + 2.5;
  }
  return marks;
}
