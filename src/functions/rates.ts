// Rate and time: what the drives and the links carry, and how long moving and rebuilding take.
import { layoutDrives, pairWriteSizes, writeCost } from "../planning/capacity";
import { arrayStates, hostOperationsPerSecond, moveHours, queueKinds, rebuildHours, responseTimeMs, serialSeconds, streamRate, tcpPayload } from "../planning/rates";
import { number } from "./support/answers";
import { choice, flag } from "./support/choice";
import { count, number as anyNumber, orNoneNorZero } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { stripeUnit, writeSize } from "./support/plausible-sizes";
import { dataRate, share } from "./support/quantities";
import { worksheetFunction } from "./support/worksheet-function";

export const writecost = worksheetFunction({
  id: "WRITECOST",
  description: "Counts the operations on drives that one write takes: a small one, or one of a given size.",
  parameters: [
    given.scheme('"RAID 6" or "RAID 6 8+2"', "; a mirror counts as two drives."),
    optional("writeSize", 'Size of the write, with its unit, such as "256 KiB". Left out: a small write.', writeSize),
    optional("stripeUnit", 'Bytes that lie together on one drive, with their unit, such as "64 KiB"; belongs to writeSize.', stripeUnit),
  ],
  answers: number("Operations a write."),
  examples: ['=BAY.WRITECOST("RAID 6")', '=BAY.WRITECOST("3 copies")', '=BAY.WRITECOST("RAID 6 8+2","256 KiB","64 KiB")'],
  mistakes: ['=BAY.WRITECOST("RAID 7")', '=BAY.WRITECOST("RAID 6 8+2","256 KiB")', '=BAY.WRITECOST("RAID 6","256 KiB","64 KiB")', '=BAY.WRITECOST("RAID 6 8+2",256,64)'],
  compute: (scheme, size, unit) => writeCost(scheme, null, pairWriteSizes(size, unit)),
});

export const iops = worksheetFunction({
  id: "IOPS",
  description: "Computes the host operations a second, small and random, that drives sustain together.",
  parameters: [
    given.scheme('"RAID 10"'),
    given.drives(12),
    parameter("driveRate", "Operations a second of one drive, such as {example}.", anyNumber({ above: 0, max: 1e9, example: 150 })),
    parameter("readShare", "Share of reads among the operations, such as {example}.", share({ example: "70%" })),
    given.spares(),
    optional("cacheHits", "Share of the reads that a cache answers, such as {example}. Left out: {default}.", share({ default: 0, example: "30%" })),
  ],
  answers: number("Host operations a second."),
  examples: ['=BAY.IOPS("RAID 10",24,150,"70%")', '=BAY.IOPS("RAID 6",12,150,"70%",0,"30%")'],
  mistakes: ['=BAY.IOPS("RAID 10",24,150,70)', '=BAY.IOPS("RAID 10",24,150,1,0,"100%")'],
  compute: (scheme, drives, driveRate, readShare, spares, cacheHits) => hostOperationsPerSecond(layoutDrives(scheme, drives, spares), driveRate, readShare, cacheHits),
});

export const throughput = worksheetFunction({
  id: "THROUGHPUT",
  description: "Computes the MB/s of many long streams together, on whole drives or with one out.",
  parameters: [
    given.scheme('"RAID 6"'),
    given.drives(12),
    parameter("driveRate", "Rate of one drive in MB/s, such as {example}.", dataRate(200)),
    optional("readShare", "Share of reads in what is moved, such as {example}. Left out: {default}.", share({ default: 1, example: "70%" })),
    optional("state", '"healthy", "degraded" with one drive out, or "rebuilding" it. Left out: {default}.', choice(...arrayStates)),
    given.spares(),
    optional("ceiling", "Most that controllers and links carry in MB/s, such as {example}. Left out: no limit.", orNoneNorZero(dataRate(2400))),
    optional("rebuildShare", "Share of the drives' rate that a rebuild takes, such as {example}. Left out: {default}.", share({ default: 0.3, example: "50%" })),
  ],
  answers: number("MB/s, 10^6 bytes a second."),
  examples: ['=BAY.THROUGHPUT("RAID 6",12,200)', '=BAY.THROUGHPUT("RAID 60 8+2",22,200,"70%","rebuilding",2,3000,"50%")'],
  mistakes: ['=BAY.THROUGHPUT("RAID 0",12,200,1,"degraded")', '=BAY.THROUGHPUT("RAID 6",12,200,70)'],
  compute: (scheme, drives, driveRate, readShare, state, spares, ceiling, rebuildShare) =>
    streamRate(layoutDrives(scheme, drives, spares), driveRate, { readShare, state, ceiling, rebuildShare }),
});

export const responsetime = worksheetFunction({
  id: "RESPONSETIME",
  description: "Computes the mean milliseconds that an operation takes, waiting included.",
  parameters: [
    parameter("operations", "Operations a second, those that a cache answers included, such as {example}.", anyNumber({ above: 0, max: 1e12, example: 2000 })),
    parameter("serviceMs", "Milliseconds that one takes when nothing waits, such as {example}.", anyNumber({ above: 0, max: 1e6, example: 5 })),
    parameter("servers", "Drives, controllers or links that serve them, such as {example}.", count({ min: 1, max: 100_000, example: 12 })),
    optional("cacheHits", "Share of the operations that a cache answers, such as {example}. Left out: {default}.", share({ default: 0, example: "30%" })),
    optional("cacheMs", "Milliseconds that the cache takes, such as {example}. Left out: {default}.", anyNumber({ min: 0, max: 1e6, default: 0.2, example: 0.5 })),
    optional("queues", '"own" where each has its own queue, as drives do; "shared" for one queue, as controllers and links have. Left out: {default}.', choice(...queueKinds)),
  ],
  answers: number("Milliseconds."),
  examples: ['=BAY.RESPONSETIME(800,10,10)', '=BAY.RESPONSETIME(800,10,10,0,,"shared")', '=BAY.RESPONSETIME(2000,5,12,"30%",0.2)'],
  mistakes: ["=BAY.RESPONSETIME(3000,5,12)", "=BAY.RESPONSETIME(2000,5,12,30)"],
  compute: (operations, serviceMs, servers, cacheHits, cacheMs, queues) => responseTimeMs({ operations, serviceMs, servers, cacheHits, cacheMs, queues }),
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
