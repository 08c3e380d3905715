/** A column of a table that a function takes: a header cell that means it, and what sentences call it. */
interface TableColumn {
  readonly heading: string;
  readonly title: string;
  /** What sentences call it where no header does. */
  readonly untitled: string;
  /** Whether a text that is no figure is wrong there; an error cell is wrong anywhere. */
  readonly takesText: boolean;
}

interface ValidTable {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly unknown[])[];
}

/** Describes columns as `Heading:title:untitled`, with a `*` behind those in which any text will do. */
function table(columns: string, ...rows: readonly unknown[][]): ValidTable {
  return {
    columns: columns.split("|").map((column) => {
      const [heading, title = heading!.toLowerCase(), untitled = title] = column.replace("*", "").split(":");
      return { heading: heading!, title, untitled, takesText: column.endsWith("*") };
    }),
    rows,
  };
}

const links = table("From*|To*", ["host", "sw1"], ["host", "sw2"], ["sw1", "array"], ["sw2", "array"]);
const fallible = table("From*|To*|Unavailability", ["host", "sw1", 0.001], ["host", "sw2", 0.001], ["sw1", "array", 0.001], ["sw2", "array", 0.001]);
const nodes = table("Name*|Unavailability|Forwards", ["sw1", 0.0001, true], ["sw2", 0.0001, true], ["host", 0, false]);
const prefixes = table("Prefix:", ["10.20.0.0/26"], ["10.20.0.128/27"], ["10.20.0.192/26"]);

/** Valid tables by function and argument, in the order in which their columns stand without a header. */
export const tables: Readonly<Record<string, ValidTable>> = {
  "DEMAND.years": table("Year:", [1], [2], [3]),
  "MIXED.driveSizes": table("Size:", [4], [4], [8], [8], [8], ["12 TB"]),
  "SCHEMES.schemes": table("Scheme:", ["RAID 10"], ["RAID 60 8+2"], ["8+3"]),
  "POOLROOM.members": table("Name*|Usable|Used", ["A1", 40, 25], ["A2", 40, 20], ["A3", 40, 10]),
  "ASSIGN.names": table("Name:*", ["ctl-a"], ["ctl-b"], ["ctl-c"]),
  "ASSIGN.kept": table("Name*|Address", ["ctl-a", "10.20.0.20"], ["ctl-b", "10.20.0.21"], ["ctl-c", "10.20.0.22"]),
  "ASSIGN.reserved": table("Address:", ["10.20.0.1-10.20.0.9"], ["10.20.0.30"], ["10.20.0.64/28"]),
  "CARVE.needs": table("Need:name*|Hosts|Prefix:kept prefix", ["Management", 40, "10.20.3.0/26"], ["Data 1", 60, "10.20.5.0/26"], ["Data 2", 60, "10.20.6.0/25"]),
  "CARVE.taken": prefixes,
  "CLASHES.prefixes": prefixes,
  "GAPS.taken": prefixes,
  "MERGE.prefixes": prefixes,
  "NEXTFREE.taken": prefixes,
  "NEXTSUBNET.taken": prefixes,
  "PORTPLAN.arrays": table("Array:name*|Controllers*|Ports*", ["Array 1", 2, 2], ["Array 2", "A,B", "0-1"], ["Array 3", 2, 2]),
  "PORTPLAN.networks": table("Network:name*|Prefix|Gateway", ["data-1", "10.20.1.0/24", "none"], ["data-2", "10.20.2.0/24", "10.20.2.1"], ["data-3", "10.20.3.0/24", "none"]),
  "PORTPLAN.kept": table("Array*|Controller*|Port*|Address", ["Array 1", "A", "0", "10.20.1.9"], ["Array 1", "A", "1", "10.20.2.9"], ["Array 1", "B", "0", "10.20.1.10"]),
  "REPEATS.addresses": table("Address:", ["2001:db8::1"], ["10.20.0.1"], ["2001:0DB8::0001"]),
  "AVAILABILITY.links": fallible,
  "AVAILABILITY.nodes": nodes,
  "AVAILBOUNDS.links": fallible,
  "AVAILBOUNDS.nodes": nodes,
  "CUTSET.links": links,
  "CUTSET.nodes": nodes,
  "PATHS.links": links,
  "PATHS.nodes": nodes,
  "SINGLEPOINTS.links": links,
  "SINGLEPOINTS.nodes": nodes,
  "FEEDLOAD.supplies": table("Device*|Watts|Feed A:feed*|Feed B:feed*", ["Array 1", 900, "A", "B"], ["Array 2", 900, "A", "B"], ["Array 3", 500, "B", ""]),
  "FEEDLOAD.feeds": table("Feed*|Volts|Breaker A:breaker amps|Phases|Continuous share|Power factor", ["A", 230, 16, 1, 0.8, 0.95], ["B", 400, 32, 3, "80%", 1], ["C", 230, 16, 1, 0.8, 1]),
  "OUTAGE.placement": table("Member*|Rack:rack:column 2*|Feed:feed:column 3*", ["A1", "R1", "A"], ["A2", "R1", "B"], ["A3", "R2", "A"], ["A4", "R2", "B"]),
  "PATHCOUNT.hostPorts": table("Host:device*|Network*|Address*", ["host 1", "Data 1", "10.0.0.1"], ["host 1", "Data 2", "10.0.1.1"], ["host 2", "Data 1", "10.0.0.2"]),
  "PATHCOUNT.arrayPorts": table("Array:device*|Network*|Address*", ["Array 1", "Data 1", "10.0.0.9"], ["Array 1", "Data 1", "10.0.0.10"], ["Array 1", "Data 2", "10.0.1.9"]),
  "PLACE.members": table("Member:*", ["A1"], ["A2"], ["A3"], ["A4"]),
  "PLACE.domains": table("Domain:name*|Room", ["Rack 1", 2], ["Rack 2", 2], ["Rack 3", 2]),
  "RACKFIT.items": table("Item:name*|Units|kg|Bottom unit", ["Array 1", 4, 60, 1], ["Array 2", 2, 30, 5], ["Switch", 1, 5, 40]),
  "RACKFIT.taken": table("Bottom unit|Units", [1, 2], [10, 4], [20, 1]),
};
