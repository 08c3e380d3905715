import { noAnswer } from "../text";
import { bytesIn, exactFraction, terabyte, type Bytes, type Share } from "../quantity";
import { layoutDrives } from "./layout";
import { mostDrives, type Scheme } from "./scheme";
import { usableBytes } from "./usable";

/** What the drives are to hold, and what they are. */
export interface DriveNeed {
  readonly target: Bytes;
  readonly driveSize: Bytes;
  readonly spares: number;
  readonly reserve: Share;
  /** Share of the usable capacity that may be filled. */
  readonly fill: Share;
}

/**
 * Finds the fewest drives, spares included, whose usable capacity times `fill` reaches the target.
 *
 * Usable capacity never falls as drives are added, so the count is found by halving. No answer where 100,000 drives, or the most that
 * the scheme takes, do not reach it.
 */
export function drivesFor(scheme: Scheme, need: DriveNeed): number {
  const fill = exactFraction(need.fill);
  const reaches = (drives: number): boolean => {
    const usable = usableBytes(layoutDrives(scheme, drives, need.spares), need.driveSize, need.reserve);
    return usable * fill.numerator >= need.target * fill.denominator;
  };
  const fewest = scheme.leastDrives + need.spares;
  const most = Math.min(mostDrives, scheme.mostDrives + need.spares);
  if (fewest > most || !reaches(most)) {
    const target = `${bytesIn(need.target, terabyte)} TB`;
    throw noAnswer("target", target, `target ${target} is out of reach of ${scheme.name} with up to ${most} drives. Write a smaller target or larger drives.`);
  }
  let tooFew = fewest - 1;
  let enough = most;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (reaches(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

/**
 * Finds the fewest drives in whole chassis of `bays` drives whose usable capacity times `fill` reaches the target.
 *
 * Every chassis is an array of its own: it holds the spares of the need and whole groups beside them, and no group reaches into another
 * chassis. No answer where 100,000 drives do not reach the target; refuses bays in which the scheme and the spares find no room.
 */
export function drivesInChassis(scheme: Scheme, need: DriveNeed, bays: number): number {
  const one = usableBytes(layoutDrives(scheme, bays, need.spares, "bays"), need.driveSize, need.reserve);
  const fill = exactFraction(need.fill);
  const [wanted, given] = [need.target * fill.denominator, one * fill.numerator];
  const most = BigInt(Math.floor(mostDrives / bays));
  if (given * most < wanted) {
    const target = `${bytesIn(need.target, terabyte)} TB`;
    throw noAnswer("target", target, `target ${target} is out of reach of ${most} chassis of ${bays} bays. Write a smaller target or larger drives.`);
  }
  return Number((wanted + given - 1n) / given) * bays;
}
