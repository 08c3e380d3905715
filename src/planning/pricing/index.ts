export { currenciesByDecimals, decimalsOf, isCurrencyCode, smallestAmount } from "./currency";
export { energyCost } from "./energy-cost";
export { lineNet, realMargin, sumOf, totalsOf, type OfferTotals, type TaxedAmount } from "./offer-amounts";
export { pricePerUnit } from "./price-per-unit";
export { roundToStep } from "./round-to-step";
export { profitKinds, sellPrice, type ProfitKind } from "./sell-price";
