import { usualContinuousShare, type Phases } from "../../planning/facility";
import { watts as asWatts, type Watts } from "../../planning/quantity";
import { foldName, invalid, quote } from "../../planning/text";
import type { PoweredDevice } from "../../planning/resilience";
import { choice } from "./choice";
import { name } from "./names";
import { number } from "./numbers";
import { share } from "./quantities";
import { mapped, type Reader } from "./reader";
import { column, columnsToTheEnd, table } from "./table";

/** Reads electrical power in watts, above 0. */
export const watts = (example: number): Reader<Watts> => mapped(number({ above: 0, max: 1e9, example }), asWatts);

/** Reads a voltage above 0. */
export const volts: Reader<number> = number({ above: 0, max: 1e6, example: 230 });

/** Reads the rating of a breaker in amperes. */
export const rating: Reader<number> = number({ above: 0, max: 1e5, example: 16 });

/** Reads a power factor, above 0 and at most 1; a blank means 1. */
export const powerFactor: Reader<number> = number({ above: 0, max: 1, default: 1, example: 0.95 });

/** Reads the share of a breaker that may be loaded all the time; a blank means 0.8. */
export const continuousShare: Reader<number> = share({ aboveZero: true, default: usualContinuousShare, example: "80%" });

/** Reads 1 or 3 phases; a blank means 1. */
export const phases: Reader<Phases> = choice(1, 3);

/** Reads devices: name, watts and one feed or more, a row each. A device that stands twice is refused. */
export const poweredDevices: Reader<readonly PoweredDevice[]> = mapped(
  table(
    { name: column("device", name), watts: column("watts", watts(900)), feeds: columnsToTheEnd("feed", name) },
    { headers: ["device", "devices", "name", "array", "arrays", "switch"], give: "Give a range of device, watts and its feeds." },
  ),
  (devices, argument) => {
    const rowOf = new Map<string, number>();
    for (const { name: called, feeds: fed, row, at } of devices) {
      const earlier = rowOf.get(foldName(called));
      if (earlier !== undefined) throw invalid(argument, called, `${at}: device ${quote(called)} stands in row ${earlier} too. Give the whole device one row.`);
      rowOf.set(foldName(called), row);
      if (fed.length === 0) throw invalid(argument, called, `${at}: device ${quote(called)} has no feed. Write the feed of each of its supplies beside its watts.`);
    }
    return devices;
  },
);

/** Reads feeds: name, volts, breaker amperes, phases, continuous share and power factor, a row each. */
export const feeds = table(
  {
    name: column("feed", name),
    volts: column("volts", volts),
    breakerAmps: column("breaker amps", rating),
    phases: column("phases", phases),
    continuousShare: column("continuous share", continuousShare),
    powerFactor: column("power factor", powerFactor),
  },
  { headers: ["feed", "feeds", "name"], give: "Give a range of feed, volts and breaker amperes." },
);
