export { listParts } from "./list-parts";
export { neededParts, type NeededPart } from "./needed-parts";
export { partsMark, planPartsSheet } from "./parts-sheet";
export { serialsNotTaken, takeSerials } from "./take-serials";
