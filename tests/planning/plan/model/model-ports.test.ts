import { assignPlanAddresses, proposeCabling } from "../../../../src/planning/assignment";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { readPlan, rowsOf } from "../../../../src/planning/plan/read";
import { planWorkbook } from "../../../support/commissioning-plan";
import { carryOut } from "../../../support/plan-changes";
import { modelOf } from "../../../support/plan-model";

const site = "Mill";
const networks: readonly TableRow<"networks">[] = [
  { network: "m", site, prefix: "10.0.0.0/24", role: "management" },
  { network: "b", site, prefix: "10.0.2.0/24", role: "data", side: "B" },
  { network: "a", site, prefix: "10.0.1.0/24", role: "data", side: "A" },
  { network: "r", site, prefix: "10.0.3.0/24", role: "replication" },
];
const rows = { networks, arrays: [{ array: "arr", site, model: "M", controllers: "A,B", ports: "0,1,2" }], models: [{ model: "M" }] } satisfies TableRows;

function expected(modelPorts: readonly TableRow<"modelPorts">[], more: TableRows = {}): string {
  const model = modelOf({ ...rows, modelPorts, ...more });
  return model.ports.expected(model.rows("arrays")[0]!).map(({ controller, port, network }) => `${controller}${port} ${network.row.network}`).join(", ");
}

describe("the ports that an array ought to have by its model", () => {
  test("without rows of the model they take all networks in turn", () => {
    expect(expected([])).toBe("A0 a, A1 b, A2 r, B0 a, B1 b, B2 r".replaceAll("r", "m"));
    expect(expected([{ model: "another", port: "0", role: "management" }])).toBe("A0 a, A1 b, A2 m, B0 a, B1 b, B2 m");
  });

  test("take the networks of their role, in turn with those for the same, wherever the port stands", () => {
    expect(expected([{ model: "m", port: "0", role: "management" }, { model: "M", port: "1", role: "data" }, { model: "M", port: "2", role: "data" }])).toBe("A0 m, A1 a, A2 b, B0 m, B1 a, B2 b");
  });

  test("take the network of their side, and those of no side where none of their role names it", () => {
    const sided: readonly TableRow<"modelPorts">[] = [{ model: "M", port: "0", role: "data", side: "B" },
      { model: "M", port: "1", role: "data", side: "A" }, { model: "M", port: "2", role: "replication", side: "A" }];
    expect(expected(sided)).toBe("A0 b, A1 a, A2 r, B0 b, B1 a, B2 r");
  });

  test("are for another use on a controller that is named", () => {
    const every: readonly TableRow<"modelPorts">[] = [{ model: "M", controller: "B", port: "2", role: "replication" }, { model: "M", port: "2", role: "management" }];
    expect(expected(every)).toBe("A0 a, A1 b, A2 m, B0 a, B1 b, B2 r");
  });

  test("are none for a port whose role no network of the site has, and any for one whose row says no role", () => {
    expect(expected([{ model: "M", port: "0", role: "cluster" }, { model: "M", port: "1", gbits: 25 }])).toBe("A1 b, A2 m, B1 b, B2 m");
  });

  test("in a network of another kind than IP have one row, beside those of both families elsewhere", () => {
    const both: readonly TableRow<"networks">[] = [
      { network: "f", site, role: "data", kind: "other" }, ...networks.filter(({ role }) => role === "management"), { network: "m6", site, prefix: "fd6b:41c2:9e07:30::/64", role: "management" },
    ];
    expect(expected([], { networks: both })).toBe("A0 f, A1 m, A1 m6, A2 f, B0 f, B1 m, B1 m6, B2 f");
    expect(expected([{ model: "M", port: "2", role: "management" }, { model: "M", port: "1", role: "data" }], { networks: both })).toBe("A0 f, A1 f, A2 m, A2 m6, B0 f, B1 f, B2 m, B2 m6");
    expect(expected([], { networks: [{ network: "f", site, kind: "other" }] })).toBe("A0 f, A1 f, A2 f, B0 f, B1 f, B2 f");
    expect(expected([], { networks: both, ports: [{ array: "arr", controller: "A", port: "1", network: "f" }, { array: "arr", controller: "A", port: "0", network: "m" }] })).toBe(
      "A0 m, A1 f, A2 f, B0 f, B1 m, B1 m6, B2 f",
    );
  });
});

test("addresses and cables follow what the model says: each data port to the switch of its side, management to either", () => {
  const modelPorts: readonly TableRow<"modelPorts">[] = [
    { model: "M", port: "0", role: "management" }, { model: "M", controller: "A", port: "1", role: "data", side: "A" }, { model: "M", controller: "B", port: "1", role: "data", side: "B" },
    { model: "M", port: "2", role: "replication" },
  ];
  const flat = networks.map((network) => ({ ...network, side: null }));
  const switches = (["A", "B"] as const).map((side) => ({ switch: `s-${side}`, site, side, networks: "m, a, b, r", ports: "8" }));
  const assigned = carryOut(planWorkbook({ ...rows, networks: flat, modelPorts, switches }), assignPlanAddresses(planWorkbook({ ...rows, networks: flat, modelPorts, switches })));
  const ports = rowsOf(readPlan(carryOut(assigned, proposeCabling(assigned))), "ports");
  expect(ports.map(({ controller, port, network, address }) => `${controller}${port} ${network} ${address}`)).toEqual([
    "A0 m 10.0.0.1", "A1 b 10.0.2.1", "A2 r 10.0.3.1", "B0 m 10.0.0.2", "B1 b 10.0.2.2", "B2 r 10.0.3.2",
  ]);
  expect(ports.filter(({ port }) => port === "1").map((row) => row.switch)).toEqual(["s-A", "s-B"]);
});
