export { checkPlan } from "./check-plan";
export type { Finding, Mend, Rule, RuleFamily, Weight } from "./finding";
export { mendsOf } from "./mends";
export { rules } from "./rules";
export { PlanIndex, splitFeed } from "./plan-index";
export { plannedFeedLoads, type PlannedFeedLoad } from "./powered-devices";
export { rackContents, unitsOf, type RackContents, type RackItem } from "./rack-contents";
