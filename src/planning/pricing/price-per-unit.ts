import type { Decimal } from "../quantity";

/** Divides a price by a capacity, giving the price of one unit of it. Exact to 40 digits; not rounded to coins. */
export function pricePerUnit(price: Decimal, capacity: Decimal): Decimal {
  return price.div(capacity);
}
