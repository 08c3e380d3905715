import { noAnswer } from "../text";
import { Decimal, exactDecimal, memoise, sizeIn, terabyte, type Bytes, type Share } from "../quantity";

/** What is used, how it grows each year (0.2 is 20 %), and what there is to fill. */
export interface Growth {
  readonly used: Bytes;
  readonly yearlyGrowth: number;
}

/** Computes what will be used after `years` of compound growth, in TB: used · (1 + growth)^years. Years need not be whole. */
export function demandTerabytes({ used, yearlyGrowth }: Growth, years: number): Decimal {
  const whole = Math.floor(years);
  const part = exactDecimal(years).minus(whole);
  const grown = sizeIn(used, terabyte).times(exactDecimal(yearlyGrowth).plus(1).pow(whole));
  return part.isZero() ? grown : grown.times(Decimal.exp(part.times(logarithmOfGrowth(yearlyGrowth))));
}

/** Gives ln(1 + growth); the years of one forecast share it. */
const logarithmOfGrowth = memoise((yearlyGrowth: number): Decimal => Decimal.ln(exactDecimal(yearlyGrowth).plus(1)));

/**
 * Computes the years until compound growth reaches `capacity` times `fill`: ln(capacity · fill / used) / ln(1 + growth).
 *
 * 0 where it is that full already. No answer where it never fills: nothing used, or no growth; one under 10^-40 is none.
 */
export function yearsUntilFull({ used, yearlyGrowth }: Growth, capacity: Bytes, fill: Share): number {
  const room = sizeIn(capacity, terabyte).times(exactDecimal(fill));
  const now = sizeIn(used, terabyte);
  if (now.gte(room)) return 0;
  if (used === 0n) throw noAnswer("used", 0, "used is 0, and growth of nothing never fills the capacity. Write what is used today, such as 10.");
  const growth = logarithmOfGrowth(yearlyGrowth);
  if (!growth.gt(0)) {
    throw noAnswer("yearlyGrowth", yearlyGrowth, `yearlyGrowth is ${yearlyGrowth}, so the capacity never fills. Write a growth above 0, such as 20%.`);
  }
  return Decimal.ln(room.div(now)).div(growth).toNumber();
}

/** One year of an expansion plan; capacity and fill are those after what was bought that year. */
export interface ExpansionYear {
  readonly year: number;
  readonly demandTerabytes: number;
  readonly capacityTerabytes: number;
  readonly stepsBought: number;
  /** Demand as a share of capacity. */
  readonly fill: number;
}

/**
 * Plans what to buy in each of `years` years, in steps of one size, so that demand at the end of the year stays within `fill`.
 *
 * Each year buys the fewest steps that suffice; nothing is given back when demand falls.
 */
export function planExpansion(growth: Growth, capacity: Bytes, step: Bytes, years: number, fill: Share): ExpansionYear[] {
  const limit = exactDecimal(fill);
  const stepSize = sizeIn(step, terabyte);
  let owned = sizeIn(capacity, terabyte);
  return Array.from({ length: years }, (_, index) => {
    const demand = demandTerabytes(growth, index + 1);
    const missing = demand.minus(owned.times(limit));
    const steps = Decimal.max(missing, 0).div(stepSize.times(limit)).ceil();
    owned = owned.plus(steps.times(stepSize));
    return {
      year: index + 1,
      demandTerabytes: demand.toNumber(),
      capacityTerabytes: owned.toNumber(),
      stepsBought: steps.toNumber(),
      fill: demand.div(owned).toNumber(),
    };
  });
}
