export { availability, type Availability } from "./availability";
export type { Chance } from "./chance";
export { disjointPaths, minimumCut, type Disjointness } from "./disjoint-paths";
export { buildGraph, type FallibleNode, type Graph, type Link, type Point } from "./graph";
export { outage, type DomainOutage, type Loss, type Outage, type PairOutage } from "./outage";
export type { Domain, Placement } from "./placement";
export { placeMembers, type Room } from "./place-members";
export { searchFrom, singlePoints, singlePointsTo, type Search } from "./single-points";
