// Rate and time: what the drives and the links carry, and how long moving and rebuilding take.
import { layoutDrives, writeCost } from "../planning/capacity";
import { hostOperationsPerSecond, ipVersions, moveHours, rebuildHours, serialSeconds, tcpPayload } from "../planning/rates";
import { share } from "../planning/quantity";
import { answer } from "./support/answer";
import { readChoice, readFlag } from "./support/choice";
import { readCount, readNumber } from "./support/numbers";
import { readDataRate, readDrives, readScheme, readShare as readShareOfWhole, readSize, readSpares } from "./support/quantities";

const noHits = share(0);

/**
 * Counts the operations on drives that one small write takes.
 * @customfunction WRITECOST
 * @param scheme Redundancy scheme in quotes, such as "RAID 6"; a mirror counts as two drives.
 * @returns Operations a write.
 */
export function writecost(scheme: unknown): number {
  return answer("WRITECOST", () => writeCost(readScheme(scheme, "scheme")));
}

/**
 * Computes the host operations a second that drives sustain together, small and random, without a cache.
 * @customfunction IOPS
 * @param scheme Redundancy scheme in quotes, such as "RAID 10".
 * @param drives Number of drives, spares included, such as 12.
 * @param driveRate Operations a second of one drive, such as 150.
 * @param readShare Share of reads among the operations, such as 70%.
 * @param [spares] Hot spare drives among them, such as 1. Left out: 0.
 * @returns Host operations a second.
 */
export function iops(scheme: unknown, drives: unknown, driveRate: unknown, readShare: unknown, spares?: unknown): number {
  return answer("IOPS", () => {
    const layout = layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives"), readSpares(spares, "spares"));
    const rate = readNumber(driveRate, "driveRate", { above: 0, max: 1e9, example: 150 });
    return hostOperationsPerSecond(layout, rate, readShareOfWhole(readShare, "readShare"), noHits);
  });
}

/**
 * Computes the TCP payload that Ethernet links carry in one direction.
 * @customfunction PAYLOAD
 * @param ports Number of links, such as 2.
 * @param gigabits Speed of one link in Gb/s, such as 25.
 * @param [mtu] Largest IP packet in bytes, such as 9000. Left out: 1500.
 * @param [ipVersion] 4 or 6. Left out: 4.
 * @param [timestamps] TRUE where TCP carries timestamps. Left out: FALSE.
 * @param [vlan] TRUE where frames carry a VLAN tag. Left out: FALSE.
 * @returns Payload in MB/s, 10^6 bytes a second.
 */
export function payload(ports: unknown, gigabits: unknown, mtu?: unknown, ipVersion?: unknown, timestamps?: unknown, vlan?: unknown): number {
  return answer("PAYLOAD", () =>
    tcpPayload(
      readCount(ports, "ports", { min: 1, max: 100_000, example: 2 }),
      readNumber(gigabits, "gigabits", { above: 0, max: 1e6, example: 25 }),
      {
        mtu: readCount(mtu, "mtu", { min: 68, max: 65_535, default: 1500, example: 9000 }),
        ipVersion: readChoice(ipVersion, "ipVersion", ipVersions),
        timestamps: readFlag(timestamps, "timestamps"),
        vlan: readFlag(vlan, "vlan"),
      },
    ),
  );
}

/**
 * Computes the hours that moving a size takes.
 * @customfunction MOVETIME
 * @param size What is moved: TB as a number, such as 30, or text such as "500 GB".
 * @param rate Rate in MB/s, such as 400.
 * @returns Hours.
 */
export function movetime(size: unknown, rate: unknown): number {
  return answer("MOVETIME", () => moveHours(readSize(size, "size"), readDataRate(rate, "rate")));
}

/**
 * Computes the hours that rebuilding one failed drive takes.
 * @customfunction REBUILDHOURS
 * @param scheme Redundancy scheme in quotes, such as "RAID 6" or "8+2".
 * @param drives Number of drives, without spares, such as 12.
 * @param driveSize Size of one drive: TB as a number, such as 4, or text such as "960 GB".
 * @param driveRate Rate of one drive in MB/s, such as 150.
 * @param [share] Share of that rate which the rebuild gets, such as 30%. Left out: 1.
 * @returns Hours.
 */
export function rebuildhours(scheme: unknown, drives: unknown, driveSize: unknown, driveRate: unknown, share?: unknown): number {
  return answer("REBUILDHOURS", () =>
    rebuildHours(
      layoutDrives(readScheme(scheme, "scheme"), readDrives(drives, "drives")),
      readSize(driveSize, "driveSize"),
      readDataRate(driveRate, "driveRate"),
      readShareOfWhole(share, "share", { aboveZero: true, default: 1 }),
    ),
  );
}

/**
 * Computes the seconds that text takes on a console line with 8 data bits, no parity and 1 stop bit.
 * @customfunction SERIALTIME
 * @param characters Number of characters, such as 4000.
 * @param baud Speed of the line, such as 9600.
 * @returns Seconds.
 */
export function serialtime(characters: unknown, baud: unknown): number {
  return answer("SERIALTIME", () =>
    serialSeconds(
      readCount(characters, "characters", { min: 1, example: 4000 }),
      readNumber(baud, "baud", { above: 0, max: 1e9, example: 9600 }),
    ),
  );
}
