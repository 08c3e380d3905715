export { layoutOf, poolContents, usableOf, type PoolContents } from "./array-capacity";
export { checkPlan } from "./check-plan";
export type { Finding, Mend, Rule, RuleFamily, Weight } from "./finding";
export { hostPaths, type HostPath } from "./host-paths";
export { mendsOf } from "./mends";
export { controllersOf, foldName, PlanIndex, splitFeed, type NetworkFacts, type PortFacts } from "./plan-index";
export { plannedFeedLoads, type PlannedFeedLoad } from "./powered-devices";
export { rackContents, unitsOf, type RackContents, type RackItem } from "./rack-contents";
export { rules } from "./rules";
