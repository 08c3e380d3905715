export { availability, type Availability } from "./availability";
export type { Chance } from "./chance";
export { disjointPaths, minimumCut, type Disjointness } from "./disjoint-paths";
export { feedLoads, type Feed, type FeedLoad, type PoweredDevice } from "./feed-loads";
export { buildGraph, type FallibleNode, type Graph, type Link, type Point } from "./graph";
export { outage, type DomainOutage, type Loss, type Outage, type PairOutage } from "./outage";
export { parseDomainCell, type Domain, type Placement } from "./placement";
export { placeMembers, type Room } from "./place-members";
export { searchFrom, singlePoints, singlePointsTo, type Search } from "./single-points";
