import { groupBy, type PlanModel } from "../plan/model";
import { foldName } from "../text";
import { cablingBoxes, type DeviceBox, type PortLine } from "./cabling-boxes";
import { titleOfPart } from "./flow";
import { body, cells, faint, firm, line, medium, rect, small, text, type LineMark, type Mark, type PageContent, type Stroke } from "./page";
import { strokesOf } from "./strokes";

/** A device, or as much of it as a column has room for. */
interface BoxPart extends DeviceBox {
  readonly isContinued: boolean;
  readonly isCut: boolean;
}

interface PlacedPart {
  readonly part: BoxPart;
  readonly top: number;
  /** Which column of its page it stands in. */
  readonly column: number;
}

/** A page as it is laid out, before anything is drawn. */
interface PageLayout {
  readonly title: string;
  readonly pitch: number;
  readonly columns: readonly ColumnLook[];
  readonly placed: readonly PlacedPart[];
  readonly hasLines: boolean;
}

/** Where a column of devices is, and how wide the words of a line may be there. */
interface ColumnLook {
  readonly x: number;
  readonly width: number;
  /** Widths of port, side, network, address, other end and its page. */
  readonly rooms: readonly [port: number, side: number, network: number, address: number, far: number, page: number];
}

const legendTop = body.bottom - 16;
const bottom = legendTop - 3;
const wide = body.right - body.left;
/** Least and most distance of one line from the next. */
const [leastPitch, mostPitch] = [3.7, 6.2];
/** Lines of text that the head of a device takes, and the gap below a device. */
const [headLines, gapLines] = [1.6, 0.9];

function column(x: number, width: number, shares: readonly [number, number, number, number, number, number]): ColumnLook {
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return { x, width, rooms: shares.map((share) => (share / whole) * (width - 3)) as unknown as ColumnLook["rooms"] };
}

/** The one page of a site that is small: arrays, switches and hosts side by side, with room for lines between. */
const sideBySide = [
  column(body.left, 124, [12, 19, 24, 33, 37, 0]),
  column(body.left + 124 + 27, 94, [15, 19, 22, 0, 38, 0]),
  column(body.right - 120, 120, [12, 19, 24, 31, 35, 0]),
] as const;
const thirds = [0, 1, 2].map((at) => column(body.left + at * (wide / 3 + 2), wide / 3 - 4, [11, 19, 21, 31, 38, 8]));
/** Columns for devices with addresses: two wide ones where all of them fit on a page, so that no name is shortened, else three. */
const wideHalves = [0, 1].map((at) => column(body.left + at * (wide / 2 + 2), wide / 2 - 4, [13, 19, 44, 40, 66, 9]));
const halves = [0, 1].map((at) => column(body.left + at * (wide / 2 + 2), wide / 2 - 4, [20, 18, 50, 0, 78, 12]));

/**
 * Draws the cabling of a site with every port labelled.
 *
 * Where arrays, switches and hosts stand beside each other on one page, each cable is a line; where they do not, there is a page for each rack with arrays, for each two
 * switches and for hosts. Either way a cable is named at both of its ends.
 */
export function cablingPages(model: PlanModel, site: string, pagesBefore: number): readonly PageContent[] {
  const boxes = cablingBoxes(model, site);
  if (boxes.every(({ lines }) => lines.length === 0)) return [];
  const layouts = onOnePage(boxes, site) ?? onPages(boxes);
  const strokes = strokesOf(boxes.flatMap(({ lines }) => lines.map(({ kind }) => kind)));
  const pageOf = new Map<string, number>();
  layouts.forEach(({ placed }, at) => {
    for (const { part } of placed) if (!pageOf.has(foldName(part.name))) pageOf.set(foldName(part.name), pagesBefore + at + 1);
  });
  return layouts.map((layout): PageContent => ({
    kind: "cabling",
    title: layout.title,
    summary: describePage(layout),
    marks: [
      ...(layout.hasLines ? cableLines(layout, strokes) : []),
      ...layout.placed.flatMap((placed) => boxMarks(placed, layout, strokes, layout.hasLines ? null : pageOf)),
      ...legend(layout, strokes),
    ],
  }));
}

function linesOf({ lines }: Pick<DeviceBox, "lines">): number {
  return headLines + Math.max(1, lines.length) + gapLines;
}

/** Lays a site out on one page, in three columns, where it has room for all of it. */
function onOnePage(boxes: readonly DeviceBox[], site: string): readonly PageLayout[] | null {
  const kinds = ["arrays", "switches", "hosts"] as const;
  const most = Math.max(...kinds.map((kind) => boxes.filter((box) => box.column === kind).reduce((sum, box) => sum + linesOf(box), 0)));
  const pitch = Math.min(mostPitch, (bottom - body.top) / most);
  if (pitch < leastPitch) return null;
  const placed = kinds.flatMap((kind, at) => {
    const own = boxes.filter((box) => box.column === kind);
    const needed = own.reduce((sum, box) => sum + linesOf(box), 0) * pitch;
    // A short column is spread over the height of the longest one: the lines between them run straighter.
    const spare = own.length === 0 ? 0 : (Math.min(most * pitch, bottom - body.top) - needed) / own.length;
    let y: number = body.top + spare / 2;
    return own.map((box) => {
      const top = y;
      y += linesOf(box) * pitch + spare;
      return { part: { ...box, isContinued: false, isCut: false }, top, column: at };
    });
  });
  return [{ title: `Cabling of ${site}`, pitch, columns: sideBySide, placed, hasLines: true }];
}

/** Lays a site out rack by rack, then two switches a page, then its hosts. */
function onPages(boxes: readonly DeviceBox[]): readonly PageLayout[] {
  const arrays = boxes.filter(({ column: kind }) => kind === "arrays");
  const switches = boxes.filter(({ column: kind }) => kind === "switches");
  const hosts = boxes.filter(({ column: kind }) => kind === "hosts");
  const pairs = Array.from({ length: Math.ceil(switches.length / 2) }, (_, at) => switches.slice(2 * at, 2 * at + 2));
  return [
    ...[...groupBy(arrays, ({ rack }) => foldName(rack)).values()].flatMap((own) => fillWidest(own, titleOfRack(own[0]!))),
    ...pairs.flatMap((own) => fillColumns(own, halves, `Cabling, ${own.length === 1 ? "switch" : "switches"} ${own.map(({ name }) => name).join(" and ")}`, true)),
    ...fillWidest(hosts, "Cabling, hosts"),
  ];
}

/** Puts devices with addresses into two columns of one page where these have room for all, else into three. */
function fillWidest(boxes: readonly DeviceBox[], title: string): readonly PageLayout[] {
  const inTwo = fillAtPitch(boxes, wideHalves, title, false, mostPitch);
  return inTwo.length <= 1 ? inTwo : fillColumns(boxes, thirds, title, false);
}

function titleOfRack({ rack }: DeviceBox): string {
  return rack === "" ? "Cabling of arrays without a rack" : `Cabling, rack ${rack}`;
}

/**
 * Puts devices into the columns of one page, as large as it has room for them, else of as many pages as they need.
 *
 * One that does not fit into what is left of a column begins the next; one that fits into none is cut.
 */
function fillColumns(boxes: readonly DeviceBox[], columns: readonly ColumnLook[], title: string, eachOwnColumn: boolean): readonly PageLayout[] {
  const pitches = [mostPitch, 5.2, 4.6, 4.1, leastPitch];
  const layouts = pitches.map((pitch) => fillAtPitch(boxes, columns, title, eachOwnColumn, pitch));
  return layouts.find(({ length }) => length <= 1) ?? layouts.at(-1)!;
}

function fillAtPitch(boxes: readonly DeviceBox[], columns: readonly ColumnLook[], title: string, eachOwnColumn: boolean, pitch: number): readonly PageLayout[] {
  const room = Math.floor((bottom - body.top) / pitch);
  const slots: { part: BoxPart; top: number; slot: number }[] = [];
  let [slot, used] = [-1, Infinity];
  for (const box of boxes) {
    const whole = linesOf(box);
    if (used + Math.min(whole, room) > room || eachOwnColumn) [slot, used] = [slot + 1, 0];
    let rest = box.lines;
    for (let isContinued = false; ; isContinued = true) {
      const fits = Math.floor(room - used - headLines - gapLines);
      const lines = rest.slice(0, fits);
      rest = rest.slice(fits);
      const part = { ...box, lines, isContinued, isCut: rest.length > 0 };
      slots.push({ part, top: body.top + used * pitch, slot });
      used += linesOf(part);
      if (rest.length === 0) break;
      [slot, used] = [slot + 1, 0];
    }
  }
  return [...groupBy(slots, (one) => Math.floor(one.slot / columns.length)).values()].map((own, at) => ({
    title: titleOfPart(title, at),
    pitch,
    columns,
    placed: own.map(({ part, top, slot: place }) => ({ part, top, column: place % columns.length })),
    hasLines: false,
  }));
}

function baselineOf(top: number, at: number, pitch: number): number {
  return top + (headLines + at + 0.5) * pitch + 0.9;
}

/** Draws a device: a head with its name, then a line a port, each with a piece of its cable in the stroke of its kind. */
function boxMarks(
  { part, top, column: at }: PlacedPart, { pitch, columns }: PageLayout, strokes: ReadonlyMap<string, Stroke>, pageOf: ReadonlyMap<string, number> | null,
): readonly Mark[] {
  const { x, width, rooms } = columns[at]!;
  const size = Math.min(2.8, Math.max(small, pitch * 0.58));
  const headHeight = headLines * pitch;
  const height = headHeight + Math.max(1, part.lines.length) * pitch;
  const name = `${part.name}${part.isContinued ? ", continued" : ""}`;
  const nameRoom = part.note === "" ? width - 4 : width * 0.5 - 4;
  const note = `${part.note}${part.isCut ? "; goes on in the next column" : ""}`;
  const marks: Mark[] = [
    rect(x, top, width, height, "paper", firm),
    rect(x, top, width, headHeight, part.column === "switches" ? "grey" : "light", firm),
    ...text(x + 2, top + headHeight / 2 + 1.1, nameRoom, name, { size: medium, isBold: true }),
    ...text(x + width * 0.5, top + headHeight / 2 + 0.9, width * 0.5 - 2, note, { size, align: "right" }),
  ];
  const stub = Math.min(7, rooms[4] * 0.16);
  part.lines.forEach((own, row) => {
    const y = baselineOf(top, row, pitch);
    const [portRoom, sideRoom, networkRoom, addressRoom, farRoom, pageRoom] = rooms;
    const left = x + 2;
    const farLeft = left + portRoom + sideRoom + networkRoom + addressRoom;
    if (row > 0 && own.port !== "") marks.push(line([[x, top + headHeight + row * pitch], [x + width, top + headHeight + row * pitch]], faint));
    marks.push(...cells(left, y, [[own.port, portRoom]], { size, isBold: true }));
    marks.push(...cells(left + portRoom, y, [[own.side, sideRoom], [own.network, networkRoom], [own.address, addressRoom]].filter(([, room]) => Number(room) > 0) as [string, number][], { size }));
    const page = pageOf?.get(foldName(own.farDevice));
    // What is in no network needs no room for one before its other end.
    const begin = own.side + own.network + own.address === "" && own.lack !== "cable" ? left + portRoom : farLeft;
    const stroke = own.cable === null ? undefined : strokes.get(own.kind);
    if (stroke !== undefined) marks.push(line([[begin, y - size * 0.3], [begin + stub, y - size * 0.3]], stroke));
    const from = own.cable === null ? begin : begin + stub + 1;
    marks.push(...text(from, y, farLeft + farRoom - from - 1.5, own.far, { size, isBold: own.lack === "cable" }));
    if (page !== undefined && pageRoom > 0) marks.push(...text(farLeft + farRoom, y, pageRoom, `p. ${page}`, { size: small }));
  });
  if (part.lines.length === 0) marks.push(...text(x + 2, baselineOf(top, 0, pitch), width - 4, "No port of it stands in the plan.", { size }));
  return marks;
}

/** Draws the cables whose two ends stand in columns beside each other as lines between them. */
function cableLines({ placed, pitch, columns }: PageLayout, strokes: ReadonlyMap<string, Stroke>): readonly LineMark[] {
  const ends = placed.flatMap(({ part, top, column: at }) => part.lines.flatMap((own, row) => (own.cable === null ? [] : [{ own, at, y: baselineOf(top, row, pitch) - 0.9 }])));
  return [...groupBy(ends, ({ own }) => own.cable).values()].flatMap((pair): LineMark[] => {
    const [one, other] = [...pair].sort((a, b) => a.at - b.at);
    if (one === undefined || other === undefined || other.at - one.at !== 1) return [];
    const [from, to] = [columns[one.at]!, columns[other.at]!];
    const [x1, x2] = [from.x + from.width, to.x];
    const stroke = strokes.get(one.own.kind) ?? strokes.get(other.own.kind);
    return stroke === undefined ? [] : [line([[x1, one.y], [x1 + 3, one.y], [x2 - 3, other.y], [x2, other.y]], stroke)];
  });
}

/** Most kinds of cables that the legend of a page has room for. */
const legendPlaces = 12;

/** Says what each stroke means, and what is not known of the ports of a page. */
function legend({ placed }: PageLayout, strokes: ReadonlyMap<string, Stroke>): readonly Mark[] {
  const here = new Set(placed.flatMap(({ part }) => part.lines.filter(({ cable }) => cable !== null).map(({ kind }) => kind)));
  const told = [...strokes].filter(([kind]) => here.has(kind));
  const shown = told.length > legendPlaces ? told.slice(0, legendPlaces - 1) : told;
  const room = wide / 6;
  const rest = told.length - shown.length;
  const placeOf = (at: number): readonly [x: number, y: number] => [body.left + (at % 6) * room, legendTop + 3 + Math.floor(at / 6) * 4.5];
  const entries = shown.flatMap(([kind, stroke], at): Mark[] => {
    const [x, y] = placeOf(at);
    return [line([[x, y - 0.9], [x + 14, y - 0.9]], stroke), ...text(x + 16, y, room - 18, kind)];
  });
  const more = rest === 0 ? [] : text(...placeOf(legendPlaces - 1), room - 2, `and ${rest} further networks`);
  return [line([[body.left, legendTop - 1], [body.right, legendTop - 1]], faint), ...entries, ...more, ...text(body.left, body.bottom - 1, wide, lacksOf(placed), { isBold: true })];
}

/** Says of how many ports of a page something is not known. */
function lacksOf(placed: PageLayout["placed"]): string {
  const all = placed.flatMap(({ part }) => part.lines);
  const count = (lack: PortLine["lack"]): number => all.filter((own) => own.lack === lack).length;
  const [uncabled, unknown, unsaid, unaddressed] = [count("cable"), count("switch"), count("switch port"), count("address")];
  const ports = (some: number): string => (some === 1 ? "1 port" : `${some} ports`);
  const told = [
    uncabled === 0 ? "" : `${ports(uncabled)} without a cable`,
    unknown === 0 ? "" : `${unknown === 1 ? "1 cable" : `${unknown} cables`} to a switch that is not in Switches`,
    unsaid === 0 ? "" : `${unsaid === 1 ? "1 end of a cable" : `${unsaid} ends of cables`} of which the plan names no port`,
    unaddressed === 0 ? "" : `${ports(unaddressed)} without an address`,
  ].filter((part) => part !== "");
  return told.length === 0 ? "Every port of this page is known from end to end." : `Not known: ${told.join("; ")}.`;
}

function describePage({ title, placed }: PageLayout): string {
  const each = placed.map(({ part }) => `${part.name}: ${part.lines.filter(({ far }) => far !== "").map(({ port, far }) => `${port === "" ? "" : `port ${port} `}${far}`).join(", ")}`);
  return `${title}. ${lacksOf(placed)} ${each.join(". ")}.`;
}
