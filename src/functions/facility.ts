// Facility: whether it fits, cools and can be lifted. Planning figures; local codes and licensed people decide.
import * as facility from "../planning/facility";
import { number, table } from "./support/answers";
import { choice } from "./support/choice";
import { number as anyNumber, orNone } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import { continuousShare as readContinuousShare, phases as readPhases, powerFactor as readPowerFactor, rating as readRating, volts as readVolts, watts as readWatts } from "./support/power";
import { rackItems, rackUnits, takenUnits } from "./support/rack";
import { worksheetFunction } from "./support/worksheet-function";

const watts = (example: number) => parameter("watts", "Power drawn, in watts, such as {example}.", readWatts(example));
const volts = parameter("volts", "Voltage, such as {example}; between lines where there are three phases, such as 400.", readVolts);
const powerFactor = optional("powerFactor", "Power factor, above 0 and at most 1, such as {example}. Left out: {default}.", readPowerFactor);
const phases = optional("phases", "1, or 3 that are loaded alike. Left out: {default}.", readPhases);

export const heat = worksheetFunction({
  id: "HEAT",
  description: "Converts electrical power to the heat it gives off. Planning figure: whoever plans the cooling decides.",
  parameters: [watts(1000), optional("unit", 'Unit of the answer: "BTU/h" or "tons" of refrigeration. Left out: "BTU/h".', choice("btu/h", "tons"))],
  answers: number("Heat flow in the unit asked for."),
  examples: ["=BAY.HEAT(1000)", '=BAY.HEAT(10000,"tons")'],
  mistakes: ['=BAY.HEAT(1000,"horses")'],
  compute: facility.heat,
});

export const current = worksheetFunction({
  id: "CURRENT",
  description: "Computes the current that a load draws. Planning figure: licensed people and the local code decide.",
  parameters: [watts(1840), volts, powerFactor, phases],
  answers: number("Amperes."),
  examples: ["=BAY.CURRENT(1840,230)", "=BAY.CURRENT(10000,400,0.95,3)"],
  mistakes: ["=BAY.CURRENT(1840,230,1.2)"],
  compute: facility.current,
});

export const circuitUse = worksheetFunction({
  id: "CIRCUITUSE",
  description: "Computes a load as a share of what its circuit may carry all the time. Planning figure: licensed people and local code decide.",
  parameters: [
    watts(1840),
    volts,
    parameter("rating", "Rating of the breaker in amperes, such as {example}.", readRating),
    optional("continuousShare", "Share of the rating that may be loaded all the time, such as {example}. Left out: {default}, a planning rule.", readContinuousShare),
    powerFactor,
    phases,
  ],
  answers: number("Share; above 1 is too much."),
  examples: ["=BAY.CIRCUITUSE(1840,230,16)"],
  mistakes: ["=BAY.CIRCUITUSE(1840,230,16,80)"],
  compute: facility.circuitUse,
});

export const rackFit = worksheetFunction({
  id: "RACKFIT",
  description: "Finds a place in a rack for every item, the heaviest lowest. Planning figure: rack, rails and floor have limits of their own.",
  parameters: [
    parameter("units", "Rack units of the rack, such as {example}.", rackUnits),
    parameter("items", "Range of name, rack units, kg and, where it must stay, the bottom unit (1 is the lowest), an item a row.", rackItems),
    optional("taken", "Range of bottom unit and rack units that are taken already, such as {40,3}.", takenUnits),
  ],
  answers: table(["Item", "Bottom unit", "Top unit"], "Table of Item, Bottom unit and Top unit."),
  examples: ['=BAY.RACKFIT(42,{"Array 1",4,60;"Array 2",2,30;"Switch",1,5,40})'],
  mistakes: ['=BAY.RACKFIT(4,{"Array 1",4,60;"Array 2",2,30})'],
  compute: (units, items, taken) => facility.fitRack(units, items, taken).items.map(({ name, bottomUnit, topUnit }) => [name, bottomUnit, topUnit]),
});

const reach = (example: number) => anyNumber({ above: 0, max: 300, example });
const turn = { min: 0, max: 180, example: 45 };

export const liftLimit = worksheetFunction({
  id: "LIFTLIMIT",
  description: "Computes the weight in kg that one person may lift with two hands, not a team (revised NIOSH equation). Planning figure.",
  parameters: [
    parameter("horizontal", "Hands from between the ankles, in cm, where the lift begins, such as {example}; over 63 is out of reach.", reach(40)),
    parameter("from", "Hands above the floor where the lift begins, in cm, such as {example}.", anyNumber({ min: 0, max: 300, example: 30 })),
    parameter("to", "Hands above the floor where the lift ends, in cm, such as {example}; over 175 is out of reach.", anyNumber({ min: 0, max: 300, example: 120 })),
    optional("angle", "Turn of the body to the side, in degrees, such as {example}. Left out: {default}.", anyNumber({ ...turn, default: 0 })),
    optional("liftsPerMinute", "Lifts a minute, such as {example}. Left out: {default}, one in five minutes or fewer.", anyNumber({ above: 0, max: 100, default: 0.2, example: 1 })),
    optional("hours", "Hours of lifting a day, at most 8, such as {example}. Left out: {default}.", anyNumber({ above: 0, max: 8, default: 1, example: 2 })),
    optional("grip", 'How well it can be gripped: "good", "fair" or "poor". Left out: {default}.', choice("fair", "good", "poor")),
    optional("reachAtEnd", "Hands from between the ankles where the lift ends, in cm, such as {example}. Left out: as where it begins.", orNone(reach(60))),
    optional("angleAtEnd", "Turn of the body where the lift ends, in degrees, such as {example}. Left out: as where it begins.", orNone(anyNumber(turn))),
  ],
  answers: number("Kilograms, the lower of both ends; 0 where nobody should lift."),
  examples: ["=BAY.LIFTLIMIT(40,30,120)", '=BAY.LIFTLIMIT(40,30,120,0,0.2,1,"fair",60,45)'],
  mistakes: ['=BAY.LIFTLIMIT(40,30,120,0,0.2,1,"firm")'],
  compute: (horizontal, from, to, angle, liftsPerMinute, hours, grip, reachAtEnd, angleAtEnd) =>
    facility.liftLimit({ horizontal, horizontalAtEnd: reachAtEnd ?? undefined, from, to, angle, angleAtEnd: angleAtEnd ?? undefined, liftsPerMinute, hours, grip }).limit,
});
