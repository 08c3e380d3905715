import { usualContinuousShare } from "../../planning/facility";
import { watts, type Watts } from "../../planning/quantity";
import { invalid, quote } from "../../planning/text";
import type { Feed, PoweredDevice } from "../../planning/resilience";
import { readRows } from "./cells";
import { readChoice } from "./choice";
import { readName } from "./names";
import { readNumber } from "./numbers";
import { readShare } from "./quantities";

/** Reads electrical power in watts, above 0. */
export function readWatts(received: unknown, argument: string): Watts {
  return watts(readNumber(received, argument, { above: 0, max: 1e9, example: 900 }));
}

/** Reads a voltage above 0. */
export function readVolts(received: unknown, argument: string): number {
  return readNumber(received, argument, { above: 0, max: 1e6, example: 230 });
}

/** Reads the rating of a breaker in amperes. */
export function readRating(received: unknown, argument: string): number {
  return readNumber(received, argument, { above: 0, max: 1e5, example: 16 });
}

/** Reads a power factor, above 0 and at most 1; a blank means 1. */
export function readPowerFactor(received: unknown, argument: string): number {
  return readNumber(received, argument, { above: 0, max: 1, default: 1, example: 0.95 });
}

/** Reads the share of a breaker that may be loaded all the time; a blank means 0.8. */
export function readContinuousShare(received: unknown, argument: string): number {
  return readShare(received, argument, { aboveZero: true, default: usualContinuousShare });
}

/** Reads 1 or 3 phases; a blank means 1. */
export function readPhases(received: unknown, argument: string): 1 | 3 {
  return readChoice(received, argument, [1, 3]);
}

/** Reads devices: name, watts and one feed or more, a row each. A device that stands twice is refused. */
export function readDevices(received: unknown, argument: string): PoweredDevice[] {
  const rows = readRows(received, argument, ["device", "devices", "name", "array", "arrays", "switch"]);
  if (rows.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range of device, watts and its feeds.`);
  const rowOf = new Map<string, number>();
  return rows.map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    const name = readName(cells[0], `${at} device`);
    const earlier = rowOf.get(name.toLowerCase());
    if (earlier !== undefined) throw invalid(argument, name, `${at}: device ${quote(name)} stands in row ${earlier} too. Give the whole device one row.`);
    rowOf.set(name.toLowerCase(), row);
    const feeds = cells.slice(2).filter((cell) => cell !== null).map(String);
    if (feeds.length === 0) throw invalid(argument, name, `${at}: device ${quote(name)} has no feed. Write the feed of each of its supplies beside its watts.`);
    return { name, watts: readWatts(cells[1], `${at} watts`), feeds, at };
  });
}

/** Reads feeds: name, volts, breaker amperes, phases, continuous share and power factor, a row each. */
export function readFeeds(received: unknown, argument: string): Feed[] {
  const rows = readRows(received, argument, ["feed", "feeds", "name"]);
  if (rows.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range of feed, volts and breaker amperes.`);
  return rows.map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    return {
      name: readName(cells[0], `${at} feed`),
      volts: readVolts(cells[1], `${at} volts`),
      breakerAmps: readRating(cells[2], `${at} breaker amps`),
      phases: readPhases(cells[3], `${at} phases`),
      continuousShare: readContinuousShare(cells[4], `${at} continuous share`),
      powerFactor: readPowerFactor(cells[5], `${at} power factor`),
      at,
    };
  });
}
