import { invalid } from "../text";
import { bytes, bytesIn, gigabyte, terabyte, type Bytes } from "../quantity";

/** Sizes of a logical block for which the block count is published. */
export const sectorSizes = [512, 4096] as const;
export type SectorSize = (typeof sectorSizes)[number];

/** What a drive is made of: above 8 TB the published rule is one of disk drives; solid-state drives keep the line. */
export const driveKinds = ["disk", "flash"] as const;
export type DriveKind = (typeof driveKinds)[number];

const smallest = 50n;
const largest = 900_000n;
/** Up to here the count of every drive follows a line; above it, disk drives hold whole GiB. */
const lastLinear = 8000n;

/**
 * Computes the exact bytes of a drive sold as a whole number of GB, from 50 GB to 900 TB.
 *
 * The line: 97,696,368 + 1,953,504 · (GB - 50) blocks of 512 bytes, or 12,212,046 + 244,188 · (GB - 50) of 4096 (IDEMA LBA1-03). Disk drives
 * above 8 TB: the next whole GiB (SFF-8447, integer multiple of 1 GiB; the rule of rounding up from memory). Solid-state drives follow the
 * line at every size: 15.36 TB is 15,362,991,415,296 bytes, as such drives report (from memory).
 */
export function driveBytes(marketed: Bytes, sector: SectorSize, kind: DriveKind = "disk"): Bytes {
  const size = marketed / gigabyte.bytes;
  if (size * gigabyte.bytes !== marketed || size < smallest || size > largest) {
    const shown = `${bytesIn(marketed, terabyte)} TB`;
    throw invalid("size", shown, `size ${shown} is not a size drives are sold in. Write whole GB from 50 GB to 900 TB, such as "960 GB" or 4.`);
  }
  if (kind === "disk" && size > lastLinear) {
    const gibibyte = 2n ** 30n;
    return bytes(((marketed + gibibyte - 1n) / gibibyte) * gibibyte);
  }
  const blocks = sector === 512 ? 97_696_368n + 1_953_504n * (size - smallest) : 12_212_046n + 244_188n * (size - smallest);
  return bytes(blocks * BigInt(sector));
}
