import type { Kind } from "./wrong-inputs";

/** Kinds by the name of an argument, or by function and name where functions differ; of a range those of its columns, the last for all behind it. */
const kinds: Readonly<Record<string, Kind | readonly Kind[]>> = {
  scheme: "scheme", schemes: ["scheme"], drives: "count", spares: "few", driveSize: "size", driveSizes: ["size"], target: "size",
  size: "size", usable: "size", used: "size", capacity: "size", "UNITPRICE.capacity": "priced", step: "size", "SELLPRICE.step": "number",
  reserve: "share", fill: "share", unit: "unit", "HEAT.unit": "choice", bays: "count", failureCase: "choice", sector: "choice",
  "DRIVEBYTES.kind": "choice", reduction: "reduction", yearlyGrowth: "growth", growth: "growth", years: "number",
  "EXPANSION.years": "count", "POOLROOM.members": ["name", "size", "size"], remove: "name", digits: "count", driveWritesADay: "number",
  dailyWrites: "size", writeFactor: "number", ratedYears: "number", driveRate: "number", readShare: "share", cacheHits: "share",
  writeSize: "size", stripeUnit: "size", ports: "count", gigabits: "number", mtu: "mtu", ipVersion: "choice", timestamps: "flag",
  vlan: "flag", rate: "number", share: "share", state: "choice", ceiling: "number", rebuildShare: "share", operations: "number",
  serviceMs: "number", servers: "count", cacheMs: "number", queues: "choice", characters: "count", baud: "number", mttfHours: "number",
  repairHours: "number", waitHours: "number", afr: "share", afrLow: "share", afrHigh: "share", readErrorRate: "number",
  latentErrors: "number", scrubHours: "number", sharedCause: "share", rows: "count", errorRate: "number", k: "count", n: "count",
  p: "share", prefix: "subnet", "CARVE.prefix": "prefix", "SPLITPREFIX.prefix": "prefix", "NEXTSUBNET.prefix": "prefix", "GAPS.prefix": "prefix",
  "NEXTFREE.prefix": "prefix", "ASSIGN.prefix": "prefix", "CONTAINS.prefix": "prefix", "NETMASK.prefix": "mask length",
  "WILDCARD.prefix": "mask length", mask: "mask", position: "few", inner: "block", a: "prefix", b: "block", prefixes: ["prefix"],
  "MERGE.prefixes": ["block"], most: "count", length: "length", needs: ["name", "count", "prefix"], taken: ["block"],
  "RACKFIT.taken": ["few", "few"], count: "count", names: ["name"], kept: ["name", "address"],
  "PORTPLAN.kept": ["name", "name", "name", "address"], reserved: ["block"], arrays: ["name", "controllers", "ports"],
  networks: ["name", "prefix", "gateway"], sharing: "choice", address: "address", addresses: ["address"], yearMonth: "month",
  domain: "name", name: "name", links: ["name", "name"], "AVAILABILITY.links": ["name", "name", "number"],
  "AVAILBOUNDS.links": ["name", "name", "number"], nodes: ["name", "number"], from: "name", to: "name", kind: "choice", hostPorts: ["name"],
  arrayPorts: ["name"], placement: ["name", "name"], pieces: "choice", members: ["name"], domains: ["name", "count"],
  supplies: ["name", "number", "name"], feeds: ["name", "number", "number", "choice", "share", "number"], watts: "number", volts: "number",
  rating: "number", powerFactor: "number", continuousShare: "share", phases: "choice", units: "count",
  items: ["name", "few", "number", "few"], horizontal: "number", "LIFTLIMIT.from": "number", "LIFTLIMIT.to": "number", angle: "number",
  liftsPerMinute: "number", hours: "number", grip: "choice", reachAtEnd: "number", angleAtEnd: "number", price: "number", cost: "number",
  tariff: "number", overhead: "share", cell: "anything",
};

/** What kind of thing an argument takes, of a range column by column; undefined for one that nobody has described yet. */
export function kindOf(id: string, name: string): Kind | readonly Kind[] | undefined {
  return kinds[`${id}.${name}`] ?? kinds[name];
}
