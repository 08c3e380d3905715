import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { deriveArrayFields, deriveControllerFields, deriveNetworkFields, derivePortFields, deriveSwitchFields, firstController } from "../../../../src/planning/plan/subjects/derived-fields";
import { modelOf } from "../../../support/plan-model";

const array = { array: "a", drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 1, reserve: "10%", controllers: "A,B", bottomUnit: 5, units: 4, watts: 900, feedA: "F", feedB: "G/L1" } as const;
const feed = { volts: 230, phases: 1, breakerA: 16 } as const;

function fieldsOf(more: TableRow<"arrays"> = {}, rows: TableRows = {}) {
  const model = modelOf({ feeds: [{ ...feed, feed: "F" }, { ...feed, feed: "G" }], ...rows, arrays: [{ ...array, ...more }] });
  return { ...deriveArrayFields(model, { site: model.rows("sites")[0]!, arrays: model.rows("arrays") }, model.rows("arrays")[0]!), first: firstController(model, model.rows("arrays")[0]!) };
}

describe("the derived fields of an array", () => {
  test("say what follows from its row", () => {
    expect(fieldsOf()).toEqual({
      "Cluster act": "",
      "Cluster live": "",
      "Controller count": "2",
      "Top unit": "8",
      "Usable": "32.4 TB",
      "Usable before reserve": "36 TB",
      "Addresses": "",
      "Paths": "",
      "Host paths": "no host is planned",
      "Paths on one controller": "",
      "First port": "",
      "First address": "",
      "First prefix length": "",
      "First netmask": "",
      "First gateway": "",
      "Rebuild hours": "11",
      // 900 W at 230 V are 3.913 A; 0.8 of 16 A are 12.8 A.
      "Feed load": "F at worst 3.91 of 12.8 A (30.57%), G at worst 3.91 of 12.8 A (30.57%)",
      "Feeds": "F, G/L1",
      first: "A",
    });
  });

  test("are blank where the plan does not say enough", () => {
    expect(fieldsOf({ scheme: null, controllers: null, bottomUnit: null, feedA: null, feedB: "H" })).toMatchObject({
      "Controller count": "", "Top unit": "", "Usable": "", "Usable before reserve": "", "Rebuild hours": "", "Feed load": "", first: "",
    });
    expect(fieldsOf({ controllers: "A,A" })).toMatchObject({ "Controller count": "", first: "" });
  });

  test("count one unit where no height is planned", () => {
    expect(fieldsOf({ units: null })["Top unit"]).toBe("5");
  });

  test("rebuild at the drive rate of the settings, with two digits", () => {
    expect(fieldsOf({}, { settings: [{ setting: "Drive rate MB/s", value: "200" }] })["Rebuild hours"]).toBe("5.6");
  });

  test("count different addresses, without case, and take the first controller from the ports where the array names none", () => {
    const port = { array: "A", port: "0" };
    const ports = [
      { ...port, controller: "left", address: "FD00::1" }, { ...port, controller: "right", address: "fd00::1" }, { ...port, address: "10.0.0.1" },
      port, { ...port, array: "b", address: "10.0.0.2" },
    ];
    expect(fieldsOf({ controllers: null }, { ports })).toMatchObject({ "Addresses": "2", first: "left" });
  });
});

test("the derived fields of a controller say whether it is the first, and whether the job is about it", () => {
  const { arrays: [row] } = { arrays: modelOf({ arrays: [array] }).rows("arrays") };
  expect([deriveControllerFields(row!, "A", true, ""), deriveControllerFields(row!, "B", false, "A")]).toEqual([
    { "Controller": "A", "First controller": "yes", "Is subject": "yes" }, { "Controller": "B", "First controller": "no", "Is subject": "no" },
  ]);
  const named = ["B", "controller b", "a B", "A controller B", "Controller A", "shelf 3"].map((subject) => deriveControllerFields(row!, "B", false, subject)["Is subject"]);
  expect(named).toEqual(["yes", "yes", "yes", "yes", "no", "no"]);
});

describe("the derived fields of a port", () => {
  const model = modelOf({
    networks: [{ network: "n", prefix: "10.0.0.0/24", mtu: 9000 }, { network: "v6", prefix: "fd00::/64" }, { network: "open" }],
    ports: [{ array: "a", mtu: 4000, address: "fd00::1" }, { array: "a", address: "10.0.0.1" }, { array: "a" }],
  });
  const [own, address, bare] = model.rows("ports");
  const plain = modelOf({ arrays: [{ array: "a" }] }).rows("arrays")[0]!;
  const sizes = (port: typeof own, network: string) => {
    const { "Port MTU": mtu, "Ping size": size, "Ping too large": tooLarge } = derivePortFields(model, plain, port!, model.networks.named(network), true);
    return [mtu, size, tooLarge].map(Number);
  };

  test("take its own MTU, else the network's, else 1500, and the family of its address, else of its network, else IPv4", () => {
    expect(sizes(own, "n")).toEqual([4000, 3952, 3953]);
    expect(sizes(address, "n")).toEqual([9000, 8972, 8973]);
    expect(sizes(bare, "v6")).toEqual([1500, 1452, 1453]);
    expect(sizes(bare, "open")).toEqual([1500, 1472, 1473]);
    expect(sizes(bare, "nowhere")).toEqual([1500, 1472, 1473]);
  });

  test("name whom to ping: every host in its network, else other arrays, else nobody in words", () => {
    const site = "North";
    const lan = [{ network: "lan", site, prefix: "10.0.0.0/24" }, { network: "v6", site, prefix: "fd00::/64" }, { network: "empty", site, prefix: "10.0.9.0/24" }];
    const arrays = [{ array: "a", site, portSharing: "array" }, { array: "b", site }] as const;
    const ports = [{ array: "a", network: "lan", address: "10.0.0.1" }, { array: "b", network: "lan", address: "10.0.0.2" }];
    const targets = (hosts: TableRows["hosts"], network: string) => {
      const plan = modelOf({ sites: [{ site }], networks: lan, arrays, ports, hosts });
      return derivePortFields(plan, plan.rows("arrays")[0]!, plan.rows("ports")[0]!, plan.networks.named(network), true)["Ping targets"];
    };
    expect(targets([{ host: "scan-1", site, address: "10.0.0.65, fd00::65" }, { host: "scan-2", site, address: "10.0.0.66" }], "lan")).toBe("10.0.0.65 (scan-1), 10.0.0.66 (scan-2)");
    expect(targets([], "lan")).toBe("10.0.0.2 (b)");
    expect(targets([], "empty")).toBe("a device at the far end of empty, which the plan does not know");
    const many = Array.from({ length: 12 }, (_, at) => ({ host: `h${at}`, site, address: `10.0.0.${100 + at}` }));
    expect(targets(many, "lan")).toMatch(/10\.0\.0\.107 \(h7\) and 4 more$/);
  });

  test("say where their cable ends as its label does: the switch alone without its port, nothing without a switch", () => {
    const rows = modelOf({ arrays: [{ array: "a" }], ports: [{ array: "a", switch: "sw-1", switchPort: "1/4" }, { array: "a", switch: "sw-1" }, { array: "a", switchPort: "4" }] });
    expect(rows.rows("ports").map((port) => derivePortFields(rows, rows.rows("arrays")[0]!, port, null, true)["Switch end"])).toEqual(["sw-1 port 1/4", "sw-1", ""]);
  });

  test("say where there is none to ping from: an address that moves is on the first controller", () => {
    const sharing = modelOf({ arrays: [{ array: "a", portSharing: "array" }] }).rows("arrays")[0]!;
    expect([true, false].map((isFirst) => derivePortFields(model, sharing, bare!, null, isFirst)["Own address"])).toEqual(["yes", "no"]);
    expect([true, false].map((isFirst) => derivePortFields(model, plain, bare!, null, isFirst)["Own address"])).toEqual(["yes", "yes"]);
  });

  test("say whether its controller is the first", () => {
    expect([true, false].map((isFirst) => derivePortFields(model, plain, bare!, null, isFirst)["First controller"])).toEqual(["yes", "no"]);
  });
});

test("the derived fields of a network are those of its prefix; only IPv4 has a mask", () => {
  const { networks } = modelOf({ networks: [{ network: "n", prefix: "10.0.0.0/26" }, { network: "v6", prefix: "fd00::/64" }, { network: "open" }] });
  expect(["n", "v6", "open", "nowhere"].map((name) => deriveNetworkFields(networks.named(name)))).toEqual([
    { "Prefix length": "26", "Netmask": "255.255.255.192" }, { "Prefix length": "64", "Netmask": "" }, { "Prefix length": "", "Netmask": "" }, { "Prefix length": "", "Netmask": "" },
  ]);
});

test("a switch carries the largest MTU of its networks in a frame of 14 + 4 + 4 bytes more: header, tag, check sequence (IEEE 802.3 clause 3.1.1, IEEE 802.1Q clause 9.6)", () => {
  const model = modelOf({ networks: [{ network: "d", mtu: 9000 }, { network: "m" }], switches: [{ switch: "s1", networks: "m, D" }, { switch: "s2", networks: "m" }] });
  expect(model.rows("switches").map((row) => deriveSwitchFields(model, row))).toEqual([
    { "Largest MTU": "9000", "Least frame": "9022" }, { "Largest MTU": "1500", "Least frame": "1522" },
  ]);
});
