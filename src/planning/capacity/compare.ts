import { share, type Bytes } from "../quantity";
import { usableShare } from "./efficiency";
import { layoutDrives, survivedFailures } from "./layout";
import { parseScheme, type Scheme } from "./scheme";
import { usableBytes } from "./usable";
import { writeCost } from "./write-cost";

/** What one scheme gives on a number of equal drives. */
export interface SchemeComparison {
  readonly scheme: Scheme;
  readonly usable: Bytes;
  /** Usable as a share of all drives, spares included. */
  readonly efficiency: number;
  /** Drive failures survived whichever drives fail. */
  readonly always: number;
  /** Drive failures survived when they fall where most can be lost. */
  readonly best: number;
  /** Operations on drives for one small write. */
  readonly writeCost: number;
}

/** Compares `schemes` on the same drives. Refuses the whole comparison when one of them does not fit. */
export function compareSchemes(schemes: readonly Scheme[], drives: number, driveSize: Bytes, spares: number): SchemeComparison[] {
  return schemes.map((scheme) => {
    const layout = layoutDrives(scheme, drives, spares);
    return {
      scheme,
      usable: usableBytes(layout, driveSize, share(0)),
      efficiency: usableShare(layout),
      always: survivedFailures(layout, "always"),
      best: survivedFailures(layout, "best"),
      writeCost: writeCost(scheme, layout),
    };
  });
}

const common = ["RAID 0", "RAID 5", "RAID 6", "triple parity", "RAID 10", "2 copies", "3 copies", "RAID 60 4+2", "RAID 60 8+2", "4+2", "8+2", "8+3"].map(
  (text) => parseScheme(text, "schemes"),
);

/** Lists the common schemes that the drives suffice for. */
export function commonSchemes(drives: number, spares: number): Scheme[] {
  const { members } = layoutDrives(common[0]!, drives, spares);
  return common.filter((scheme) => scheme.leastDrives <= members && members <= scheme.mostDrives);
}
