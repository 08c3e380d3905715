// Price and release: what a terabyte costs, what a device costs to run, and which release computed a cell.
import manifest from "../../package.json";
import { energyCost, pricePerUnit, profitKinds, sellPrice } from "../planning/pricing";
import { exactDecimal } from "../planning/quantity";
import { number, text } from "./support/answers";
import { choice } from "./support/choice";
import { capacityToPrice, exact, profit } from "./support/money";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { share, unit } from "./support/quantities";
import type { Reader } from "./support/reader";
import { worksheetFunction } from "./support/worksheet-function";

export const unitprice = worksheetFunction({
  id: "UNITPRICE",
  description: "Computes the price of one TB, or of one of another unit.",
  parameters: [
    parameter("price", "Price of the whole, such as {example}.", exact({ above: 0, example: 18000 })),
    parameter("capacity", 'Capacity it buys: a number in the unit, such as 40, or text such as "40 TB".', capacityToPrice),
    optional("unit", "Unit to price, such as {example}; a bare capacity is in this unit too. Left out: {default}.", unit),
  ],
  answers: number("Price of one unit, not rounded."),
  examples: ['=BAY.UNITPRICE(12000,"40 TB")', '=BAY.UNITPRICE(12000,40,"TiB")'],
  mistakes: ["=BAY.UNITPRICE(12000,0)"],
  compute: (price, capacity, priced) => pricePerUnit(price, capacity(priced)).toNumber(),
});

export const sellprice = worksheetFunction({
  id: "SELLPRICE",
  description: "Computes a selling price from a cost and a margin or a mark-up.",
  parameters: [
    parameter("cost", "What it costs, such as {example}.", exact({ min: 0, example: 75 })),
    parameter("share", "Margin of the price or mark-up on the cost, such as {example}.", profit),
    optional("kind", '"margin", a share of the price, or "markup", a share of the cost. Left out: {default}.', choice(...profitKinds)),
    optional("step", "Rounds to multiples of this, halves away from zero, such as {example}. Left out: not rounded.", exact({ min: 0, default: 0, example: 0.05 })),
  ],
  answers: number("Selling price."),
  examples: ['=BAY.SELLPRICE(8000,"25%")', '=BAY.SELLPRICE(8000,"25%","markup",50)'],
  mistakes: ['=BAY.SELLPRICE(8000,"100%")'],
  compute: (cost, profitOf, kind, step) => sellPrice(cost, profitOf(kind), kind, step).toNumber(),
});

export const energycost = worksheetFunction({
  id: "ENERGYCOST",
  description: "Computes what electrical power costs that is drawn all the time.",
  parameters: [
    parameter("watts", "Power drawn in watts, such as {example}.", exact({ above: 0, max: 1e9, example: 450 })),
    parameter("tariff", "Price of one kWh, such as {example}.", exact({ above: 0, max: 1e9, example: 0.25 })),
    given.years("Years of 8760 hours", 100),
    optional("overhead", "Share added for cooling, such as {example} for a site that uses 1.5 W a watt. Left out: {default}.", share({ default: 0, example: "0.5" })),
  ],
  answers: number("Cost, not rounded."),
  examples: ["=BAY.ENERGYCOST(900,0.28,5,0.5)"],
  mistakes: ["=BAY.ENERGYCOST(-900,0.28)"],
  compute: (watts, tariff, years, overhead) => energyCost(watts, tariff, exactDecimal(years), exactDecimal(overhead)).toNumber(),
});

/** Reads nothing: a cell that is only watched may hold anything, an error too. */
const watched: Reader<null> = { read: () => null };

export const version = worksheetFunction({
  id: "VERSION",
  description: "Tells which release of Baywright computed this cell.",
  parameters: [optional("cell", "A cell to watch: the answer is computed again whenever it changes.", watched)],
  answers: text("The release, such as 1.0.0."),
  examples: ["=BAY.VERSION()"],
  compute: () => manifest.version,
});
