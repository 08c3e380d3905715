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

test.each([
  ["raid", "USABLE"],
  ["mirror", "SCHEMES"],
  ["TiB", "CONVERTSIZE"],
  ["price per tb", "UNITPRICE"],
  ["how long rebuild", "REBUILDHOURS"],
  ["How many drives?", "DRIVESFOR"],
  ["latency", "RESPONSETIME"],
])("what people call it leads to the function: %s", (query, id) => {
  expect(matchFunctions(catalogue, query).map((one) => one.id)).toContain(id);
});
