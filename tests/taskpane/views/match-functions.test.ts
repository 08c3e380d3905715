import { catalogue } from "../../../src/functions/catalogue";
import { matchFunctions } from "../../../src/taskpane/views/match-functions";

const one = (id: string, description: string, ...names: string[]) => ({ id, family: "Capacity", description, parameters: names.map((name) => ({ name, description: "" })) });
const functions = [
  one("BREAKDOWN", "Shows where raw capacity goes to usable.", "scheme"),
  one("USABLE", "Computes usable capacity.", "scheme", "drives"),
  one("SUBNET", "Lists every fact.", "prefix"),
];
const found = (query: string) => matchFunctions(functions, query).map(({ id }) => id);

describe("finding a function", () => {
  test.each([
    ["", ["BREAKDOWN", "USABLE", "SUBNET"]],
    ["usable", ["USABLE", "BREAKDOWN"]],
    ["=BAY.usa", ["USABLE", "BREAKDOWN"]],
    ["drives", ["USABLE"]],
    ["usable drives", ["USABLE"]],
    ["  PREFIX ", ["SUBNET"]],
    ["nothing", []],
  ])("by %p finds %p, those named so first", (query, ids) => expect(found(query)).toEqual(ids));
});

/** What people of the trade call things, as they would type it; which function is meant is common practice, no source. */
test.each([
  ["raid", "USABLE"],
  ["RAID 6 usable capacity of 12 disks", "USABLE"],
  ["raid10", "USABLE"],
  ["mirror", "SCHEMES"],
  ["compare raid levels", "SCHEMES"],
  ["hot spares", "USABLE"],
  ["overhead", "EFFICIENCY"],
  ["TiB", "CONVERTSIZE"],
  ["convert terabytes", "CONVERTSIZE"],
  ["price per tb", "UNITPRICE"],
  ["cost per TB?", "UNITPRICE"],
  ["markup", "SELLPRICE"],
  ["profit margin", "SELLPRICE"],
  ["electricity cost", "ENERGYCOST"],
  ["how long rebuild", "REBUILDHOURS"],
  ["resilver", "REBUILDHOURS"],
  ["How many drives?", "DRIVESFOR"],
  ["when is it full", "RUNWAY"],
  ["growth forecast", "DEMAND"],
  ["deduplication", "EFFECTIVE"],
  ["SSD wear", "ENDURANCE"],
  ["latency", "RESPONSETIME"],
  ["copy time", "MOVETIME"],
  ["bandwidth", "THROUGHPUT"],
  ["data loss", "LOSSRISK"],
  ["mtbf", "AFR"],
  ["URE", "READFAULT"],
  ["uptime", "AVAILABILITY"],
  ["single point of failure", "SINGLEPOINTS"],
  ["BTU", "HEAT"],
  ["amps", "CURRENT"],
  ["breaker", "CIRCUITUSE"],
  ["weight", "LIFTLIMIT"],
  ["rack space", "RACKFIT"],
  ["subnet mask", "NETMASK"],
  ["free ip", "NEXTFREE"],
  ["duplicate ip", "REPEATS"],
  ["overlapping subnets", "CLASHES"],
  ["jumbo frame ping", "PINGSIZE"],
  ["IQN", "ISCSINAME"],
  ["console cable baud", "SERIALTIME"],
])("what people call it leads, among the first eight, to the function: %s", (query, id) => {
  expect(matchFunctions(catalogue, query).slice(0, 8).map((one) => one.id)).toContain(id);
});

test.each([
  ["capcity", "USABLE"],
  ["usabel", "USABLE"],
  ["redundency", "SCHEMES"],
  ["durabilty", "LOSSRISK"],
  ["availibility", "AVAILABILITY"],
  ["rebiuld", "REBUILDHOURS"],
  ["subent", "SUBNET"],
  ["adress", "ASSIGN"],
  ["brodcast", "BROADCAST"],
  ["electrcity", "ENERGYCOST"],
])("a word that is misspelt is taken for the one it is near: %s", (query, id) => {
  expect(matchFunctions(catalogue, query).map((one) => one.id)).toContain(id);
});

test("where no function speaks of every word, those come that speak of most", () => {
  expect(found("usable drives prefix")).toEqual(["USABLE"]);
});
