export { cableLabels, labelsMark, planLabels } from "./labels";
export { namesOfPlan, type NamesOfPlan } from "./name-lines";
export { outlookMark, planOutlook } from "./outlook-sheet";
export { plannedNames } from "./planned-names";
export { namesMark, planNames, planSwitchList, switchListMark } from "./sheets";
export { cablesOfSwitch, linksOf, linksOfSwitch, portLinesOf, type SwitchPortLine } from "./switch-ports";
