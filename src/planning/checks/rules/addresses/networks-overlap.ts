import { findClashes, formatPrefix, rangesOfPrefixes, type Family } from "../../../addressing";
import { remarkAt, type Remark, type Rule } from "../../finding";
import type { NetworkFacts, PlanIndex } from "../../../plan/model";

/** More pairs than anybody mends by hand: those past it turn up once the first are mended. */
const mostPairs = 10_000;

export const networksOverlap: Rule = {
  name: "networks-overlap",
  family: "addresses",
  weight: "stop",
  meaning: "Networks of one routing table are apart.",
  check: (index) => {
    const routings = new Set(index.networks.map(({ routing }) => routing));
    return [...routings].flatMap((routing) => ([4, 6] as const).flatMap((family) => overlapsIn(index, routing, family)));
  },
};

function overlapsIn(index: PlanIndex, routing: string, family: Family): Remark[] {
  const networks = index.networks.filter((one) => one.routing === routing && one.prefix?.family === family);
  const { pairs } = findClashes(rangesOfPrefixes(family, networks.map(({ prefix }) => prefix!)), mostPairs);
  const told = new Set<number>();
  return pairs.flatMap(({ first, second }): Remark[] => {
    if (told.has(second)) return [];
    told.add(second);
    const [earlier, later] = [networks[first]!, networks[second]!] as [NetworkFacts, NetworkFacts];
    return [remarkAt(index, "networks", later.row, "prefix", `${formatPrefix(later.prefix!)} of ${later.row.network} overlaps ${formatPrefix(earlier.prefix!)} of ${earlier.row.network}. Give networks that are apart.`)];
  });
}
