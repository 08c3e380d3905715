export { energyCost } from "./energy-cost";
export { pricePerUnit } from "./price-per-unit";
export { roundToStep } from "./round-to-step";
export { profitKinds, sellPrice, type ProfitKind } from "./sell-price";
