import { layoutDrives } from "../../../capacity";
import { gather, type PlanModel, type PoolContents, refusalOf } from "../../../plan/model";
import { exactFraction } from "../../../quantity";
import { formatTerabytes } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const poolRemoval: Rule = {
  name: "pool-removal",
  family: "capacity",
  weight: "warn",
  meaning: "Any one array of a pool of several could be taken out: the others have room for what it holds, and the scheme across them can still be laid out.",
  check: (model) =>
    gather(model.capacity.pools(), (contents): Remark[] => {
      const { arrays, members } = contents;
      if (arrays.length < 2 || members.length < arrays.length) return [];
      return [...roomRemarks(model, contents), ...layoutRemarks(model, contents)];
    }),
};

/**
 * Says of each array whether the others have room, up to the fill limit of each, for what it holds.
 *
 * The room of the others is the room of all less its own, so that a large pool is not summed up once for every array.
 */
function roomRemarks(model: PlanModel, { pool, members, fillLimit }: PoolContents): Remark[] {
  const limit = exactFraction(fillLimit);
  const rooms = members.map(({ usable, used }) => {
    const room = (usable * limit.numerator) / limit.denominator - used;
    return room > 0n ? room : 0n;
  });
  const all = rooms.reduce((sum, room) => sum + room, 0n);
  return members.flatMap(({ row, name, used }, at): Remark[] => {
    const room = all - rooms[at]!;
    if (used <= room) return [];
    const sentence = `${name} could not be taken out of ${pool.pool}: it holds ${formatTerabytes(used)}, the others have room for ${formatTerabytes(room)}.`;
    return [remarkAt(model, "arrays", row, "pool", sentence)];
  });
}

function layoutRemarks(model: PlanModel, { pool, across, arrays }: PoolContents): Remark[] {
  if (across === null || refusalOf(() => layoutDrives(across, arrays.length)) !== null) return [];
  if (refusalOf(() => layoutDrives(across, arrays.length - 1)) === null) return [];
  const sentence = `No array could be taken out of ${pool.pool} for good: ${across.name} cannot be laid over ${arrays.length - 1}. Plan one more.`;
  return [remarkAt(model, "pools", pool, "acrossArrays", sentence)];
}
