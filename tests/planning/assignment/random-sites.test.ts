import fc from "fast-check";
import { assignPlanAddresses, proposeCabling } from "../../../src/planning/assignment";
import { checkPlan, rules } from "../../../src/planning/checks";
import { PlanModel } from "../../../src/planning/plan/model";
import type { Scalar } from "../../../src/sheet";
import { carryOut } from "../../support/plan-changes";
import { editable, workbookWith, type EditableRows } from "../../support/plan-rows";

const site = "Mill";

/** A site that can be cabled well: as many data ports as data networks, and two of a lone controller. */
const shapes = fc.record({
  pairs: fc.constantFrom(0, 1, 2),
  unsided: fc.constantFrom(1, 2, 3),
  hasV6: fc.boolean(),
  switches: fc.constantFrom(2, 3),
  ports: fc.constantFrom<[ports: string, kept: string]>(["24", "23, 24"], ["1-22, x1, x2", "x1, x2"], ["Eth1-48", "Eth47-48"]),
  more: fc.constantFrom(0, 1, 2),
  controllers: fc.constantFrom("A", "A,B"),
  sharing: fc.constantFrom("controller", "array"),
  hasDuties: fc.boolean(),
  hasHostPorts: fc.boolean(),
  arrays: fc.constantFrom(1, 2),
  backwards: fc.boolean(),
});

type Shape = typeof shapes extends fc.Arbitrary<infer One> ? One : never;

function siteOf(shape: Shape): { readonly rows: EditableRows; readonly inUse: ReadonlySet<string>; readonly kept: ReadonlySet<string> } {
  const count = shape.pairs === 0 ? shape.unsided : 2 * shape.pairs;
  const sideAt = (at: number): string | null => (shape.pairs === 0 ? null : "AB"[at % 2]!);
  const data = Array.from({ length: count }, (_, at) => ({ site, gateway: "none", role: "data", mtu: 9000, vlan: 11 + at, side: sideAt(at) }));
  const management = { site, role: "management", mtu: 1500, vlan: 10 };
  const four: Record<string, Scalar>[] = [
    { network: "mgmt", prefix: "10.1.0.0/24", gateway: "10.1.0.1", ...management }, ...data.map((row, at) => ({ network: `data-${at}`, prefix: `10.1.${at + 1}.0/24`, ...row })),
  ];
  const six: Record<string, Scalar>[] = [
    { network: "mgmt-v6", prefix: "fd00:0:0:10::/64", gateway: "fd00:0:0:10::1", ...management }, ...data.map((row, at) => ({ network: `data-${at}-v6`, prefix: `fd00:0:0:${at + 1}::/64`, ...row })),
  ];
  const networks = shape.hasV6 ? [...four, ...six] : four;
  const [ports, keptPorts] = shape.ports;
  const switches = Array.from({ length: shape.pairs === 0 ? shape.switches : 2 }, (_, at) => ({
    switch: `s${at}`, site, ports, keptPorts, frameBytes: 9216, side: sideAt(at),
    networks: networks.filter(({ side, role }) => role !== "data" || side === sideAt(at)).map(({ network }) => network).join(", "),
  }));
  const dataPorts = Math.max(count, 2) + shape.more;
  const model = "Elm";
  const addresses = (at: number): string[] => data.map((_, network) => `10.1.${network + 1}.20${at}`);
  // A host with one data network has a second port in it.
  const cards = (at: number): Record<string, Scalar>[] => [
    ...addresses(at).map((address, card) => ({ host: `h${at}`, card: `c${card}`, network: `data-${card}`, address })),
    ...(count === 1 ? [{ host: `h${at}`, card: "c9", network: "data-0", address: `10.1.1.21${at}` }] : []),
  ];
  const hosts = [0, 1].map((at) => ({ host: `h${at}`, site, initiatorName: `iqn.2024-05.example.mill:h${at}`, address: shape.hasHostPorts ? null : addresses(at).join(", ") }));
  const rows = editable({
    sites: [{ site, timeServers: "10.1.0.5, 10.1.0.2", nameServers: "10.1.0.3", alertsTo: "10.1.0.4" }],
    networks: shape.backwards ? [...networks].reverse() : networks,
    switches,
    hosts,
    hostPorts: shape.hasHostPorts ? [0, 1].flatMap(cards) : [],
    links: shape.hasHostPorts ? [] : hosts.flatMap(({ host }) => switches.map((to) => ({ from: host, to: to.switch }))),
    models: shape.hasDuties ? [{ model, bays: 12 }] : [],
    modelPorts: shape.hasDuties
      ? Array.from({ length: dataPorts + 1 }, (_, port) => ({ model, port: String(port), role: port < dataPorts ? "data" : "management", side: port < dataPorts ? sideAt(port) : null }))
      : [],
    arrays: Array.from({ length: shape.arrays }, (_, at) => ({
      id: `A000${at + 1}`, array: `a${at}`, site, model, controllers: shape.controllers, ports: String(dataPorts + 1), portSharing: shape.controllers === "A" ? "controller" : shape.sharing,
    })),
  } as Parameters<typeof editable>[0]);
  const ofHosts = shape.hasHostPorts ? [0, 1].flatMap(cards).map(({ address }) => String(address)) : [0, 1].flatMap(addresses);
  return { rows, inUse: new Set(["10.1.0.1", "10.1.0.2", "10.1.0.3", "10.1.0.4", "10.1.0.5", "fd00:0:0:10::1", ...ofHosts]), kept: new Set(keptPorts.replace("Eth47-48", "Eth47, Eth48").split(", ")) };
}

test("whatever a site is like, addresses and cables are proposed so that no rule stops or warns, nothing in use is given and no kept port is taken", () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const { rows, inUse, kept } = siteOf(shape);
      const addressed = carryOut(workbookWith(rows), assignPlanAddresses(workbookWith(rows)));
      const planned = carryOut(addressed, proposeCabling(addressed));
      expect(checkPlan(planned, rules, "2026-06-01").filter(({ weight }) => weight !== "note")).toEqual([]);
      const model = new PlanModel(planned);
      const ports = model.rows("ports");
      expect(ports.filter(({ address, switchPort }) => address === "" || inUse.has(address) || kept.has(switchPort))).toEqual([]);
      // Paths of a host: in each of its data networks, its ports times the addresses of the array.
      for (const array of model.rows("arrays")) {
        for (const { host, paths } of model.hostPaths.to(array)) {
          const shorthand = rows.networks.filter(({ network, role }) => role === "data" && !String(network).endsWith("v6"));
          const own = (shape.hasHostPorts ? rows.hostPorts.filter((row) => row.host === host.host) : shorthand).map(({ network }) => network);
          const counted = own.reduce<number>((sum, network) => sum + new Set(ports.filter((port) => port.array === array.array && port.network === network).map(({ address }) => address)).size, 0);
          expect(paths).toBe(counted);
        }
      }
    }),
    { seed: 18, numRuns: 25 },
  );
});
