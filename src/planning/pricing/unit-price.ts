import type { Decimal } from "../quantity";

/** Divides a price by a capacity, giving the price of one unit of it. Exact to 60 digits; not rounded to coins. */
export function unitPrice(price: Decimal, capacity: Decimal): Decimal {
  return price.div(capacity);
}
