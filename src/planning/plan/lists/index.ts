export { readList, type List, type ListRow } from "./list";
export { openColumns, proposeMatches, type Match } from "./match-columns";
export { planImport, waysToFind, type Import, type ImportPlan } from "./plan-list";
export { planPriceList, type PriceChange, type PriceList, type PriceListPlan } from "./price-list";
export { questionOf, type Question } from "./read-as";
