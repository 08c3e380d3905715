import { type Family, findClashes, formatPrefix, rangesOfPrefixes } from "../../../addressing";
import { gather, type PlanModel } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

/** More pairs than anybody mends by hand: those past it turn up once the first are mended. */
const mostPairs = 10_000;

export const networksOverlap: Rule = {
  name: "networks-overlap",
  family: "addresses",
  weight: "stop",
  meaning: "Networks of one routing table are apart.",
  check: (model) => {
    const routings = new Set(model.networks.all().map(({ routing }) => routing));
    return [...routings].flatMap((routing) => ([4, 6] as const).flatMap((family) => overlapsIn(model, routing, family)));
  },
};

function overlapsIn(model: PlanModel, routing: string, family: Family): Remark[] {
  const networks = gather(model.networks.all(), ({ row, prefix, routing: own }) => (own === routing && prefix?.family === family ? [{ row, prefix }] : []));
  const { pairs } = findClashes(rangesOfPrefixes(family, networks.map(({ prefix }) => prefix)), mostPairs);
  const told = new Set<number>();
  return pairs.flatMap(({ first, second }): Remark[] => {
    if (told.has(second)) return [];
    told.add(second);
    const [earlier, later] = [networks[first]!, networks[second]!];
    const sentence = `${formatPrefix(later.prefix)} of ${later.row.network} overlaps ${formatPrefix(earlier.prefix)} of ${earlier.row.network}. Give networks that are apart.`;
    return [remarkAt(model, "networks", later.row, "prefix", sentence)];
  });
}
