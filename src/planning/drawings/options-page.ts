import { isoDateOf, sheetDayOf } from "../../sheet";
import { capacityOfDesign, dataAfter, limitTerabytes, type DesignCapacity, type Design, type Needs, type Options } from "../options";
import { formatPercent, formatTerabytes, roundTo } from "../text";
import { body, cells, faint, firm, ink, line, medium, paragraph, rect, text, type DrawingPage, type Mark, type Stroke } from "./page";
import { finishPages, type Made } from "./title-block";

/** A design with what it holds. */
interface Held extends DesignCapacity {
  readonly name: string;
  readonly limit: number;
}

const plot = { left: body.left + 22, top: body.top + 14, right: body.right - 58, bottom: body.top + 160 } as const;
const tableTop = plot.bottom + 22;
const rowHeight = 6;

/** Strokes by which designs are told apart in black and white. */
const strokes: readonly Stroke[] = [[], [5, 1.5], [1.2, 1.2], [7, 1.5, 1.2, 1.5]].map((dashes) => ({ width: 0.5, colour: "#1d4f91", dashes }));
const demandStroke: Stroke = { width: 0.9, colour: "#8c1c13", dashes: [] };

/** Days of a year in the calendar, leap years spread over it. */
const daysPerYear = 365.25;

/** How many points the curve of the data has. */
const curvePoints = 60;

/** Draws what hosts need over the years against what each design may be filled with, and a table of the designs below. */
export function optionsPage({ needs, designs }: Options, made: Made | null = null): DrawingPage {
  const held = designs.map((design) => heldOf(needs, design));
  const most = Math.max(dataAfter(needs, needs.years), ...held.map(({ limit }) => limit)) * 1.08;
  const x = (years: number): number => plot.left + (years / needs.years) * (plot.right - plot.left);
  const y = (terabytes: number): number => plot.bottom - (terabytes / most) * (plot.bottom - plot.top);
  const summary = `${describeNeeds(needs)} ${held.map((one) => describeDesign(needs, one)).join(" ")}`;
  const marks: Mark[] = [
    ...text(body.left, body.top + 5, 300, "Usable to hosts up to the fill limit, against the data, in TB", { size: medium, isBold: true }),
    ...axes(needs, most, x, y),
    ...namesBeside(held, y).flatMap(({ at, top }) => text(plot.right + 3, top, body.right - plot.right - 3, held[at]!.name)),
    ...held.map(({ limit }, at) => line([[plot.left, y(limit)], [plot.right, y(limit)]], strokes[at % strokes.length])),
    line(Array.from({ length: curvePoints + 1 }, (_, at) => (at / curvePoints) * needs.years).map((years) => [x(years), y(dataAfter(needs, years))] as const), demandStroke),
    ...held.flatMap(({ fullAfterYears, limit }) => (fullAfterYears === null || fullAfterYears > needs.years ? [] : [rect(x(fullAfterYears) - 1.2, y(limit) - 1.2, 2.4, 2.4, "alarm")])),
    ...legend(),
    ...table(needs, held),
    ...paragraph(body.left, tableTop + (held.length + 2) * rowHeight, body.right - body.left, describeNeeds(needs)).marks,
  ];
  return finishPages([{ kind: "options", title: "Options: usable against the data", summary, marks }], "Options", "", made)[0]!;
}

function heldOf(needs: Needs, design: Design): Held {
  const capacity = capacityOfDesign(needs, design);
  return { ...capacity, name: design.design, limit: limitTerabytes(needs, capacity.toHosts) };
}

function describeNeeds({ dataNow, growth, years, begins, fillLimit }: Needs): string {
  return `From ${begins}: ${formatTerabytes(dataNow)} of data, growing by ${formatPercent(growth)} a year for ${years} years; filled to ${formatPercent(fillLimit)} at most.`;
}

function describeDesign(needs: Needs, one: Held): string {
  return `${one.name}: ${one.arrays} ${one.arrays === 1 ? "array" : "arrays"}, ${formatTerabytes(one.toHosts)} to hosts, ${fullText(needs, one)}.`;
}

function fullText({ begins }: Needs, { fullAfterYears }: Held): string {
  if (fullAfterYears === null) return "never full";
  const day = isoDateOf((sheetDayOf(begins) ?? 0) + daysPerYear * fullAfterYears);
  return `full after ${roundTo(1, fullAfterYears)} years${day === null ? "" : `, in ${day.slice(0, 4)}`}`;
}

function axes({ years }: Needs, most: number, x: (years: number) => number, y: (terabytes: number) => number): Mark[] {
  const step = stepFor(most, 8);
  const ticks = Array.from({ length: Math.floor(most / step) + 1 }, (_, at) => at * step);
  const every = Math.max(1, Math.ceil(years / 20));
  const marked = Array.from({ length: Math.floor(years / every) + 1 }, (_, at) => at * every);
  return [
    ...ticks.map((tick) => line([[plot.left, y(tick)], [plot.right, y(tick)]], faint)),
    ...ticks.flatMap((tick) => text(body.left, y(tick) + 0.9, plot.left - body.left - 2, String(roundTo(6, tick)), { align: "right" })),
    ...marked.flatMap((year) => [line([[x(year), plot.bottom], [x(year), plot.bottom + 1.5]], firm), ...text(x(year) - 10, plot.bottom + 5, 20, String(year), { align: "middle" })]),
    ...text(plot.left, plot.bottom + 9.5, plot.right - plot.left, "years", { align: "middle" }),
    line([[plot.left, plot.top], [plot.left, plot.bottom], [plot.right, plot.bottom]], firm),
  ];
}

/** Finds a step of 1, 2 or 5 times a power of ten that makes at most so many ticks. */
function stepFor(most: number, ticks: number): number {
  const power = 10 ** Math.floor(Math.log10(most / ticks));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => most / step <= ticks)!;
}

/** Finds the height of each name beside its line, so that none covers another. */
function namesBeside(held: readonly Held[], y: (terabytes: number) => number): { readonly at: number; readonly top: number }[] {
  let last = Infinity;
  return held
    .map(({ limit }, at) => ({ at, top: y(limit) + 0.9 }))
    .sort((a, b) => b.top - a.top)
    .map(({ at, top }) => {
      last = Math.min(top, last - 3.6);
      return { at, top: last };
    });
}

function legend(): Mark[] {
  const top = plot.bottom + 15;
  return [
    line([[body.left, top - 1], [body.left + 12, top - 1]], demandStroke), ...text(body.left + 14, top, 60, "data of the hosts"),
    line([[body.left + 90, top - 1], [body.left + 102, top - 1]], strokes[1]), ...text(body.left + 104, top, 120, "a design, named at its right end: usable to hosts times the fill limit"),
    rect(body.left + 230, top - 2.4, 2.4, 2.4, "alarm"), ...text(body.left + 235, top, 80, "full"),
  ];
}

const columns = [120, 30, 60, 60, 100] as const;

function table(needs: Needs, held: readonly Held[]): Mark[] {
  const row = (words: readonly string[], at: number, isBold = false) => cells(body.left, tableTop + at * rowHeight, words.map((word, index) => [word, columns[index]!]), { size: medium, isBold });
  return [
    ...row(["Design", "Arrays", "Usable to hosts", "Up to the fill limit", "Full"], 0, true),
    line([[body.left, tableTop + 1.6], [body.right, tableTop + 1.6]], { ...faint, colour: ink }),
    ...held.flatMap((one, at) => row([one.name, String(one.arrays), formatTerabytes(one.toHosts), `${roundTo(2, one.limit)} TB`, fullText(needs, one)], at + 1)),
  ];
}
