// Values worked out elsewhere, each with where it comes from. Digits are kept as text: a number would round them.
import type { Fabric } from "./topologies";

interface FabricValue {
  readonly fabric: Fabric;
  readonly up: string;
  readonly down: string;
  readonly source: string;
}

const counted = "counted over the spines with 40 digits by an independent program; brute force agrees with that at 2×4, a third program at 4×8, 6×12 and 4×40";

/** Chance that the host reaches the array. */
export const fabrics: readonly FabricValue[] = [
  {
    fabric: { leaves: 40, spines: [{ count: 8, unavailability: 0.0005, links: 0.001 }], edge: 0.001, leaf: 0.0005 },
    up: "0.99999550300455575337",
    down: "4.4969954442466257501e-6",
    source: counted,
  },
  {
    fabric: { leaves: 40, spines: [{ count: 8, unavailability: 0.1, links: 0.2 }], edge: 0.1, leaf: 0.1 },
    up: "0.92908066703490857679",
    down: "0.07091933296509142321",
    source: counted,
  },
  {
    fabric: { leaves: 64, spines: [{ count: 16, unavailability: 0.0005, links: 0.001 }], edge: 0.001, leaf: 0.0005 },
    up: "0.99999550300455575337",
    down: "4.4969954442466257499e-6",
    source: counted,
  },
];

/** Two planes: host on L1 and L2, array on L3 and L4, S1 and S2 on L1 and L3, S3 and S4 on L2 and L4; links 1/10, spines 1/20, leaves never. */
export const twoPlanes = { up: "0.94569445457457246", source: "closed form: two planes in parallel" };

/** Corner to corner of a 12×12 grid, each link down one time in ten, to eleven digits. */
export const gridOfTwelve = {
  up: "0.97566163027",
  source: "an earlier diagram of our own with its limit lifted; at 11×11 that agreed with an independent program to 14 digits",
};

/** Two nodes of a complete graph, by Gilbert's recurrence of 1959 (from memory) with 60 digits. */
export const completeGraphs = [
  { nodes: 10, link: 0.5, up: "0.99596245255088434" },
  { nodes: 30, link: 0.9, up: "0.88746814412423109" },
];
