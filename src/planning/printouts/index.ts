export { block, cellText, type Amount, type PackBlock, type PackLine, type PackPicture, type Printout } from "./printout";
export { planPrintout } from "./printout-sheet";
