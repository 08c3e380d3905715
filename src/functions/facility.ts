// Facility: whether it fits, cools and can be lifted. Planning figures; local codes and licensed people decide.
import * as plan from "../planning/facility";
import { answer } from "./support/answer";
import { readChoice } from "./support/choice";
import { readNumber } from "./support/numbers";
import { readContinuousShare, readPhases, readPowerFactor, readRating, readVolts, readWatts } from "./support/power";
import { readRackItems, readTakenUnits, readUnits } from "./support/rack";

/**
 * Converts electrical power to the heat it gives off. Planning figure: whoever plans the cooling decides.
 * @customfunction HEAT
 * @param watts Power drawn, in watts, such as 1000.
 * @param [unit] Unit of the answer: "BTU/h" or "tons" of refrigeration. Left out: "BTU/h".
 * @returns Heat flow in the unit asked for.
 */
export function heat(watts: unknown, unit?: unknown): number {
  return answer("HEAT", () => plan.heat(readWatts(watts, "watts"), readChoice(unit, "unit", ["btu/h", "tons"])));
}

/**
 * Computes the current that a load draws. Planning figure: licensed people and the local code decide.
 * @customfunction CURRENT
 * @param watts Power drawn, in watts, such as 1840.
 * @param volts Voltage, such as 230; between lines where there are three phases, such as 400.
 * @param [powerFactor] Power factor, above 0 and at most 1, such as 0.95. Left out: 1.
 * @param [phases] 1, or 3 that are loaded alike. Left out: 1.
 * @returns Amperes.
 */
export function current(watts: unknown, volts: unknown, powerFactor?: unknown, phases?: unknown): number {
  return answer("CURRENT", () =>
    plan.current(readWatts(watts, "watts"), readVolts(volts, "volts"), readPowerFactor(powerFactor, "powerFactor"), readPhases(phases, "phases")),
  );
}

/**
 * Computes a load as a share of what its circuit may carry all the time. Planning figure: licensed people and local code decide.
 * @customfunction CIRCUITUSE
 * @param watts Power drawn, in watts, such as 1840.
 * @param volts Voltage, such as 230; between lines where there are three phases, such as 400.
 * @param rating Rating of the breaker in amperes, such as 16.
 * @param [continuousShare] Share of the rating that may be loaded all the time, such as 80%. Left out: 0.8, a planning rule.
 * @param [powerFactor] Power factor, above 0 and at most 1, such as 0.95. Left out: 1.
 * @param [phases] 1, or 3 that are loaded alike. Left out: 1.
 * @returns Share; above 1 is too much.
 */
export function circuitUse(
  watts: unknown,
  volts: unknown,
  rating: unknown,
  continuousShare?: unknown,
  powerFactor?: unknown,
  phases?: unknown,
): number {
  return answer("CIRCUITUSE", () =>
    plan.circuitUse(
      readWatts(watts, "watts"),
      readVolts(volts, "volts"),
      readRating(rating, "rating"),
      readContinuousShare(continuousShare, "continuousShare"),
      readPowerFactor(powerFactor, "powerFactor"),
      readPhases(phases, "phases"),
    ),
  );
}

/**
 * Finds a place in a rack for every item, the heaviest lowest. Planning figure: rack, rails and floor have limits of their own.
 * @customfunction RACKFIT
 * @param units Rack units of the rack, such as 42.
 * @param items Range of name, rack units, kg and, where it must stay, the bottom unit (1 is the lowest), an item a row.
 * @param [taken] Range of bottom unit and rack units that are taken already, such as {40,3}.
 * @returns Table of Item, Bottom unit and Top unit.
 */
export function rackFit(units: unknown, items: unknown[][], taken?: unknown[][]): unknown[][] {
  return answer("RACKFIT", () => {
    const fit = plan.fitRack(readUnits(units, "units"), readRackItems(items, "items"), readTakenUnits(taken, "taken"));
    return [["Item", "Bottom unit", "Top unit"], ...fit.items.map(({ name, bottomUnit, topUnit }) => [name, bottomUnit, topUnit])];
  });
}

/**
 * Computes the weight in kg that one person may lift with two hands, not a team (revised NIOSH equation). Planning figure.
 * @customfunction LIFTLIMIT
 * @param horizontal Hands from between the ankles, in cm, such as 40; over 63 is out of reach.
 * @param from Hands above the floor where the lift begins, in cm, such as 30.
 * @param to Hands above the floor where the lift ends, in cm, such as 120; over 175 is out of reach.
 * @param [angle] Turn of the body to the side, in degrees, such as 45. Left out: 0.
 * @param [liftsPerMinute] Lifts a minute, such as 1. Left out: 0.2, one in five minutes or fewer.
 * @param [hours] Hours of lifting a day, at most 8, such as 2. Left out: 1.
 * @param [grip] How well it can be gripped: "good", "fair" or "poor". Left out: "fair".
 * @returns Kilograms, the lower of both ends; 0 where nobody should lift.
 */
export function liftLimit(
  horizontal: unknown,
  from: unknown,
  to: unknown,
  angle?: unknown,
  liftsPerMinute?: unknown,
  hours?: unknown,
  grip?: unknown,
): number {
  return answer("LIFTLIMIT", () => {
    const lift = {
      horizontal: readNumber(horizontal, "horizontal", { above: 0, max: 300, example: 40 }),
      from: readNumber(from, "from", { min: 0, max: 300, example: 30 }),
      to: readNumber(to, "to", { min: 0, max: 300, example: 120 }),
      angle: readNumber(angle, "angle", { min: 0, max: 180, default: 0, example: 45 }),
      liftsPerMinute: readNumber(liftsPerMinute, "liftsPerMinute", { above: 0, max: 100, default: 0.2, example: 1 }),
      hours: readNumber(hours, "hours", { above: 0, max: 8, default: 1, example: 2 }),
      grip: readChoice(grip, "grip", ["fair", "good", "poor"]),
    };
    return plan.liftLimit(lift).limit;
  });
}
