import { hoursPerYear, type Decimal } from "../quantity";

const wattsPerKilowatt = 1000;

/**
 * Computes what drawing `watts` all the time costs at `tariff` a kWh, over `years` of 8760 hours, with the share `overhead` added for
 * cooling and distribution.
 */
export function energyCost(watts: Decimal, tariff: Decimal, years: Decimal, overhead: Decimal): Decimal {
  return watts.times(hoursPerYear).div(wattsPerKilowatt).times(years).times(tariff).times(overhead.plus(1));
}
