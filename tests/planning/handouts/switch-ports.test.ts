import { planSwitchList, portLinesOf } from "../../../src/planning/handouts";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { modelOf } from "../../support/plan-model";
import { sample, workbookWith } from "../../support/plan-rows";
import { problemOf } from "../../support/sentence";

const site = "Mill";
const rows = {
  networks: [{ network: "d1", site, prefix: "10.0.1.0/24", vlan: 11, mtu: 9000 }, { network: "d6", site, prefix: "fd6b:41c2:9e07:31::/64", vlan: 16 }],
  switches: [{ switch: "s1", site, ports: "x1, 1-24", keptPorts: "23-24" }],
  arrays: [{ array: "arr", site }],
  hosts: [{ host: "h", site }],
} satisfies TableRows;

function lines(more: TableRows): string[] {
  const model = modelOf({ ...rows, ...more });
  return portLinesOf(model, model.rows("switches")[0]!).map(({ port, vlan, mtu, description }) => [port, vlan, mtu ?? "", description].join(" | "));
}

describe("the ports of a switch for its owner", () => {
  test("stand in the order of the switch, array ports and host ports alike, both addresses of one cable in one line", () => {
    const port = { array: "arr", controller: "A", switch: "s1" };
    expect(lines({
      ports: [{ ...port, port: "1", network: "d1", switchPort: "10" }, { ...port, port: "0", network: "d1", switchPort: "2", mtu: 1500 }, { ...port, port: "0", network: "d6", switchPort: "2" }],
      hostPorts: [{ host: "h", card: "c1", network: "d1", switch: "S1", switchPort: "X1" }],
    })).toEqual(["X1 | 11 | 9000 | h port c1, d1", "2 | 11, 16 | 1500 | arr port A/0, d1, d6", "10 | 11 | 9000 | arr port A/1, d1", "23-24 |  |  | kept: the plan leaves it alone"]);
  });

  test("say how fast the other end is and what it has for a connector, where its model does", () => {
    const modelPorts = [{ model: "M", port: "0", gbits: 25, connector: "SFP28" }, { model: "M", port: "1", connector: "RJ45" }];
    const ports = ["0", "1"].map((port) => ({ array: "arr", controller: "A", port, network: "d1", switch: "s1", switchPort: port }));
    expect(lines({ arrays: [{ array: "arr", site, model: "M" }], modelPorts, ports }).slice(0, 2)).toEqual([
      "1 | 11 | 9000 | arr port A/1, d1, RJ45", "0 | 11 | 9000 | arr port A/0, d1, 25 Gbit/s SFP28",
    ]);
  });

  test("end with what has no port yet, kept ports, and links; a host with rows in Host ports is told by those alone", () => {
    const links = [{ from: "s1", to: "s2" }, { from: "h", to: "s1" }];
    const switches = [...rows.switches, { switch: "s2", site }];
    const kept = "23-24 |  |  | kept: the plan leaves it alone";
    const link = (name: string) => ` |  |  | link to ${name}, whose port the plan does not say`;
    expect(lines({ switches, links })).toEqual([kept, link("s2"), link("h")]);
    expect(lines({ switches, links, hostPorts: [{ host: "h", switch: "s1" }] })).toEqual([" |  |  | h", kept, link("s2")]);
  });

  test("come a switch a page, every cable of the sample once", () => {
    const model = new PlanModel(workbookWith(sample()));
    const plan = planSwitchList(model, "2026-06-01 10:00");
    expect(plan.print!.breaksBefore).toHaveLength(5);
    const onTop = ["rr-sw2, Reading Room", "bi-sw1, Bindery", "bi-sw2, Bindery", "cs-sw1, Cold Store, side A", "cs-sw2, Cold Store, side B"];
    expect(plan.print!.breaksBefore.map((row) => plan.rows[row]![0]!.value)).toEqual(onTop);
    const listed = plan.rows.filter((row) => String(row[3]?.value ?? "").includes(" port ") && row[0]?.value !== undefined).length;
    expect(listed).toBe(new Set(model.wiring.all().map(({ cable }) => cable)).size);
  });

  test("have no sheet in a plan without switches", () => {
    expect(problemOf(() => planSwitchList(modelOf({}), "")).sentence).toBe("No switch stands in the plan, so there is no port to list. Fill Switches, then cable the ports.");
  });
});
