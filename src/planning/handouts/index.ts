export { cableLabels, labelsMark, planLabels } from "./labels";
export { namesOfPlan, type NamesOfPlan } from "./name-lines";
export { plannedNames } from "./planned-names";
export { namesMark, planNames, planSwitchList, switchListMark } from "./sheets";
export { portLinesOf, type SwitchPortLine } from "./switch-ports";
