import { usualContinuousShare, type Phases } from "../../planning/facility";
import { watts as asWatts, type Watts } from "../../planning/quantity";
import { foldName, invalid, quote } from "../../planning/text";
import type { PoweredDevice } from "../../planning/resilience";
import { atMost } from "./at-most";
import { choice } from "./choice";
import { name } from "./names";
import { number } from "./numbers";
import { share } from "./quantities";
import { mapped, type Reader } from "./reader";
import { column, columns, table } from "./table";

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

/** Far more than a site has: beyond them the work would keep the sheet waiting. */
const [mostDevices, mostFeeds, mostSupplies] = [20_000, 5_000, 16];

const deviceRows = table(
  {
    name: column("device", ["Device", "Devices", "Name", "Array", "Arrays", "Switch", "Switches"], name),
    watts: column("watts", ["Watts", "W"], watts(900)),
    feeds: columns("feed", ["Feed", "Feeds", "Feed A", "Feed B", "Feed C", "Feed D", "Feed 1", "Feed 2", "Feed 3", "Feed 4", "Supply", "Supplies", "Supply 1", "Supply 2"], name),
  },
  { give: "Give a range of device, watts and its feeds." },
);

/** Reads devices: name, watts and one feed or more, a row each. A device that stands twice is refused. */
export const poweredDevices: Reader<readonly PoweredDevice[]> = mapped(
  atMost(mostDevices, deviceRows),
  (devices, argument) => {
    const rowOf = new Map<string, number>();
    for (const { name: called, feeds: fed, row, at } of devices) {
      const earlier = rowOf.get(foldName(called));
      if (earlier !== undefined) throw invalid(argument, called, `${at}: device ${quote(called)} stands in row ${earlier} too. Give the whole device one row.`);
      rowOf.set(foldName(called), row);
      if (fed.length === 0) throw invalid(argument, called, `${at}: device ${quote(called)} has no feed. Write the feed of each of its supplies beside its watts.`);
      if (fed.length > mostSupplies) throw invalid(argument, called, `${at}: device ${quote(called)} has ${fed.length} feeds. Give at most ${mostSupplies}, one a supply.`);
    }
    return devices;
  },
);

const feedRows = table(
  {
    name: column("feed", ["Feed", "Feeds", "Name"], name),
    volts: column("volts", ["Volts", "V"], volts),
    breakerAmps: column("breaker amps", ["Breaker A", "Breaker", "Breaker amps", "Amps", "A"], rating),
    phases: column("phases", ["Phases"], phases, { optional: true }),
    continuousShare: column("continuous share", ["Continuous share"], continuousShare, { optional: true }),
    powerFactor: column("power factor", ["Power factor"], powerFactor, { optional: true }),
  },
  { give: "Give a range of feed, volts and breaker amperes.", passes: ["Site", "Source"] },
);

/** Reads feeds: name, volts, breaker amperes, phases, continuous share and power factor, a row each. */
export const feeds = atMost(mostFeeds, feedRows);
