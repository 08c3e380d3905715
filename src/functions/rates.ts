// Rate and time: what the drives and the links carry, and how long moving and rebuilding take.
import { layoutDrives, writeCost } from "../planning/capacity";
import { hostOperationsPerSecond, moveHours, rebuildHours, serialSeconds, tcpPayload } from "../planning/rates";
import { share as shareOf } from "../planning/quantity";
import { number } from "./support/answers";
import { flag } from "./support/choice";
import { count, number as anyNumber } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { dataRate, share } from "./support/quantities";
import { worksheetFunction } from "./support/worksheet-function";

const noHits = shareOf(0);

export const writecost = worksheetFunction({
  id: "WRITECOST",
  description: "Counts the operations on drives that one small write takes.",
  parameters: [given.scheme('"RAID 6"', "; a mirror counts as two drives.")],
  answers: number("Operations a write."),
  examples: ['=BAY.WRITECOST("RAID 6")', '=BAY.WRITECOST("3 copies")'],
  mistakes: ['=BAY.WRITECOST("RAID 7")'],
  compute: (scheme) => writeCost(scheme),
});

export const iops = worksheetFunction({
  id: "IOPS",
  description: "Computes the host operations a second that drives sustain together, small and random, without a cache.",
  parameters: [
    given.scheme('"RAID 10"'),
    given.drives(12),
    parameter("driveRate", "Operations a second of one drive, such as {example}.", anyNumber({ above: 0, max: 1e9, example: 150 })),
    parameter("readShare", "Share of reads among the operations, such as {example}.", share({ example: "70%" })),
    given.spares(),
  ],
  answers: number("Host operations a second."),
  examples: ['=BAY.IOPS("RAID 10",24,150,"70%")'],
  mistakes: ['=BAY.IOPS("RAID 10",24,150,70)'],
  compute: (scheme, drives, driveRate, readShare, spares) => hostOperationsPerSecond(layoutDrives(scheme, drives, spares), driveRate, readShare, noHits),
});

export const payload = worksheetFunction({
  id: "PAYLOAD",
  description: "Computes the TCP payload that Ethernet links carry in one direction.",
  parameters: [
    parameter("ports", "Number of links, such as {example}.", count({ min: 1, max: 100_000, example: 2 })),
    parameter("gigabits", "Speed of one link in Gb/s, such as {example}.", anyNumber({ above: 0, max: 1e6, example: 25 })),
    optional("mtu", "Largest IP packet in bytes, such as {example}. Left out: {default}.", count({ min: 68, max: 65_535, default: 1500, example: 9000 })),
    given.ipVersion("4 or 6. Left out: {default}."),
    optional("timestamps", "TRUE where TCP carries timestamps. Left out: {default}.", flag),
    optional("vlan", "TRUE where frames carry a VLAN tag. Left out: {default}.", flag),
  ],
  answers: number("Payload in MB/s, 10^6 bytes a second."),
  examples: ["=BAY.PAYLOAD(2,10)", "=BAY.PAYLOAD(4,25,9000,6,TRUE,TRUE)"],
  mistakes: ["=BAY.PAYLOAD(2,10,40)"],
  compute: (ports, gigabits, mtu, ipVersion, timestamps, vlan) => tcpPayload(ports, gigabits, { mtu, ipVersion, timestamps, vlan }),
});

export const movetime = worksheetFunction({
  id: "MOVETIME",
  description: "Computes the hours that moving a size takes.",
  parameters: [given.size("size", "What is moved", 30, "500 GB"), parameter("rate", "Rate in MB/s, such as {example}.", dataRate(400))],
  answers: number("Hours."),
  examples: ['=BAY.MOVETIME("20 TB",400)'],
  mistakes: ['=BAY.MOVETIME("20 TB",0)'],
  compute: moveHours,
});

export const rebuildhours = worksheetFunction({
  id: "REBUILDHOURS",
  description: "Computes the hours that rebuilding one failed drive takes.",
  parameters: [
    given.scheme('"RAID 6" or "8+2"'),
    given.members(12),
    given.driveSize,
    parameter("driveRate", "Rate of one drive in MB/s, such as {example}.", dataRate(150)),
    optional("share", "Share of that rate which the rebuild gets, such as {example}. Left out: {default}.", share({ aboveZero: true, default: 1, example: "30%" })),
  ],
  answers: number("Hours."),
  examples: ['=BAY.REBUILDHOURS("RAID 6",12,8,150)', '=BAY.REBUILDHOURS("8+2",24,8,150,"30%")'],
  mistakes: ['=BAY.REBUILDHOURS("RAID 0",12,8,150)'],
  compute: (scheme, drives, size, rate, given) => rebuildHours(layoutDrives(scheme, drives), size, rate, given),
});

export const serialtime = worksheetFunction({
  id: "SERIALTIME",
  description: "Computes the seconds that text takes on a console line with 8 data bits, no parity and 1 stop bit.",
  parameters: [
    parameter("characters", "Number of characters, such as {example}.", count({ min: 1, example: 4000 })),
    parameter("baud", "Speed of the line, such as {example}.", anyNumber({ above: 0, max: 1e9, example: 9600 })),
  ],
  answers: number("Seconds."),
  examples: ["=BAY.SERIALTIME(2000,9600)"],
  mistakes: ["=BAY.SERIALTIME(2000,0)"],
  compute: serialSeconds,
});
