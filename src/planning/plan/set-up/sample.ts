import { initialSettings, lastIdSettings } from "../read";
import type { TableRow, TableRows } from "../schema";

/**
 * The sample plan: the Thornmere Map Library, which is invented, scans its maps at three sites.
 *
 * Six arrays of two models, two clusters (one over two sites), two feeds and two switches a site, ranges out of 10.64.0.0/16 and fd00::/8. Names,
 * serial numbers and prices are made up; contacts are roles.
 */
export function sampleRows(): TableRows {
  return {
    settings: initialSettings().map((row) => ({ ...row, value: lastIds[row.setting] ?? (row.value === "" ? null : row.value) })),
    sites,
    racks,
    feeds,
    networks,
    switches,
    hosts,
    links,
    clusters,
    pools,
    models,
    modelPorts,
    arrays,
    ports,
    volumes,
    access,
    prompts,
    jobs,
    quote,
  };
}

const lastIds: Readonly<Record<string, string>> = { [lastIdSettings.arrays]: "A0006", [lastIdSettings.jobs]: "J0003" };

const customer = "Thornmere Map Library";
const sites: readonly TableRow<"sites">[] = [
  {
    site: "Reading Room", room: "Basement, room 0.12", contact: "Duty librarian, front desk", timeServers: "10.64.0.5, 10.64.0.6", nameServers: "10.64.0.5",
    alertsTo: "storage-alerts@thornmere.example", access: "Ramp at the north door; lift carries 600 kg; book the corridor a day ahead.", customer,
  },
  {
    site: "Bindery", room: "Ground floor, room 1.03", contact: "Bindery foreman, workshop", timeServers: "10.64.0.5, 10.64.0.6", nameServers: "10.64.0.6",
    alertsTo: "storage-alerts@thornmere.example", access: "Level from the yard; door 95 cm wide.", customer,
  },
  {
    site: "Cold Store", room: "Annex, room C.2", contact: "Conservator on duty, annex", timeServers: "10.64.0.5, 10.64.0.6", nameServers: "10.64.0.5",
    alertsTo: "storage-alerts@thornmere.example", access: "Two steps at the door: take the folding ramp. 12 °C inside: let the crates warm up first.", customer,
  },
];

const rack = { units: 42, numberedFrom: "bottom", depthMm: 1000, limitKg: 800, coolingW: 4000, outlets: "12 x C13, 4 x C19" } as const;
const racks: readonly TableRow<"racks">[] = [
  { rack: "RR-R1", site: "Reading Room", ...rack },
  { rack: "RR-R2", site: "Reading Room", ...rack },
  { rack: "BI-R1", site: "Bindery", ...rack },
  { rack: "BI-R2", site: "Bindery", ...rack },
  { rack: "CS-R1", site: "Cold Store", ...rack, coolingW: 6000 },
];

const circuit = { volts: 230, phases: 1, breakerA: 16, continuousShare: 0.8, powerFactor: 0.95 } as const;
const feeds: readonly TableRow<"feeds">[] = [
  { feed: "RR-A", site: "Reading Room", source: "Reading Room UPS", ...circuit },
  { feed: "RR-B", site: "Reading Room", source: "Reading Room mains board", ...circuit },
  { feed: "BI-A", site: "Bindery", source: "Bindery UPS", ...circuit },
  { feed: "BI-B", site: "Bindery", source: "Bindery mains board", ...circuit },
  { feed: "CS-A", site: "Cold Store", source: "Annex UPS", ...circuit, volts: 400, phases: 3 },
  { feed: "CS-B", site: "Cold Store", source: "Annex mains board", ...circuit, volts: 400, phases: 3 },
];

const dataNetwork = { gateway: "none", mtu: 9000, role: "data" } as const;
const networks: readonly TableRow<"networks">[] = [
  { network: "rr-data-1", site: "Reading Room", prefix: "10.64.11.0/24", ...dataNetwork, vlan: 111, reserved: "10.64.11.64/26" },
  { network: "rr-data-2", site: "Reading Room", prefix: "10.64.12.0/24", ...dataNetwork, vlan: 112, reserved: "10.64.12.64/26" },
  { network: "bi-data-1", site: "Bindery", prefix: "10.64.21.0/24", ...dataNetwork, vlan: 121, reserved: "10.64.21.64/26" },
  { network: "bi-data-2", site: "Bindery", prefix: "10.64.22.0/24", ...dataNetwork, vlan: 122, reserved: "10.64.22.64/26" },
  { network: "cs-data-1", site: "Cold Store", prefix: "10.64.31.0/24", ...dataNetwork, side: "A", vlan: 131, reserved: "10.64.31.64/26" },
  { network: "cs-data-2", site: "Cold Store", prefix: "10.64.32.0/24", ...dataNetwork, side: "B", vlan: 132, reserved: "10.64.32.64/26" },
  { network: "mgmt", prefix: "10.64.0.0/24", gateway: "10.64.0.1", vlan: 100, mtu: 1500, role: "management", reserved: "10.64.0.2-10.64.0.9" },
  { network: "cs-data-1-v6", site: "Cold Store", prefix: "fd6b:41c2:9e07:31::/64", ...dataNetwork, side: "A", vlan: 131, reserved: "fd6b:41c2:9e07:31::40/122" },
  { network: "cs-data-2-v6", site: "Cold Store", prefix: "fd6b:41c2:9e07:32::/64", ...dataNetwork, side: "B", vlan: 132, reserved: "fd6b:41c2:9e07:32::40/122" },
  { network: "cs-mgmt-v6", site: "Cold Store", prefix: "fd6b:41c2:9e07:30::/64", gateway: "fd6b:41c2:9e07:30::1", vlan: 100, mtu: 1500, role: "management" },
];

const topOfRack = { bottomUnit: 40, units: 1, watts: 120, ports: "24", keptPorts: "23, 24", frameBytes: 9216 } as const;
const switches: readonly TableRow<"switches">[] = [
  { switch: "rr-sw1", site: "Reading Room", rack: "RR-R1", ...topOfRack, feedA: "RR-A", feedB: "RR-B", networks: "rr-data-1, rr-data-2, mgmt" },
  { switch: "rr-sw2", site: "Reading Room", rack: "RR-R2", ...topOfRack, feedA: "RR-A", feedB: "RR-B", networks: "rr-data-1, rr-data-2, mgmt" },
  { switch: "bi-sw1", site: "Bindery", rack: "BI-R1", ...topOfRack, feedA: "BI-A", feedB: "BI-B", networks: "bi-data-1, bi-data-2, mgmt" },
  { switch: "bi-sw2", site: "Bindery", rack: "BI-R2", ...topOfRack, feedA: "BI-A", feedB: "BI-B", networks: "bi-data-1, bi-data-2, mgmt" },
  { switch: "cs-sw1", site: "Cold Store", rack: "CS-R1", ...topOfRack, feedA: "CS-A/L1", feedB: "CS-B/L1", side: "A", networks: "cs-data-1, cs-data-1-v6, mgmt, cs-mgmt-v6" },
  { switch: "cs-sw2", site: "Cold Store", rack: "CS-R1", ...topOfRack, bottomUnit: 39, feedA: "CS-A/L1", feedB: "CS-B/L1", side: "B", networks: "cs-data-2, cs-data-2-v6, mgmt, cs-mgmt-v6" },
];

const hosts: readonly TableRow<"hosts">[] = [
  { host: "scan-1", site: "Reading Room", initiatorName: "iqn.2024-05.example.thornmere:scan-1", address: "10.64.11.65, 10.64.12.65", groups: "scanning" },
  { host: "scan-2", site: "Bindery", initiatorName: "iqn.2024-05.example.thornmere:scan-2", address: "10.64.21.65, 10.64.22.65", groups: "scanning" },
  { host: "archive-1", site: "Cold Store", initiatorName: "iqn.2024-05.example.thornmere:archive-1", address: "fd6b:41c2:9e07:31::41, fd6b:41c2:9e07:32::41" },
];

const links: readonly TableRow<"links">[] = [
  { from: "scan-1", to: "rr-sw1", unavailability: 0.0002 },
  { from: "scan-1", to: "rr-sw2", unavailability: 0.0002 },
  { from: "rr-sw1", to: "rr-sw2", unavailability: 0.0001 },
  { from: "scan-2", to: "bi-sw1", unavailability: 0.0002 },
  { from: "scan-2", to: "bi-sw2", unavailability: 0.0002 },
  { from: "bi-sw1", to: "bi-sw2", unavailability: 0.0001 },
  { from: "archive-1", to: "cs-sw1", unavailability: 0.0002 },
  { from: "archive-1", to: "cs-sw2", unavailability: 0.0002 },
  { from: "cs-sw1", to: "cs-sw2", unavailability: 0.0001 },
];

const clusters: readonly TableRow<"clusters">[] = [
  { cluster: "Scans", network: "mgmt", sharedAddress: "10.64.0.250", state: "new", release: "4.2" },
  { cluster: "Deep Store", network: "mgmt", sharedAddress: "10.64.0.251", state: "new", release: "4.2" },
];

const pools: readonly TableRow<"pools">[] = [
  { pool: "Scans", cluster: "Scans", fillLimit: 0.8, acrossArrays: "2 copies" },
  { pool: "Masters", cluster: "Deep Store", fillLimit: 0.85, acrossArrays: "none" },
];

const anyModel = {
  guide: "Sample row: invented", plug: "C14", supplies: 2, supplySwitch: "no",
  controllers: "A,B", ports: "0,1,2", portSharing: "controller",
  paths: "preferred", warmUpHours: 4, startUpMinutes: 15, promptsBeforePorts: "yes", joinAddsCapacity: "no",
} as const;
const models: readonly TableRow<"models">[] = [
  { ...anyModel, model: "Alder 24", bays: 24, units: 4, depthMm: 820, weightKg: 46, liftKg: 24, liftBy: "lift table", watts: 620 },
  { ...anyModel, model: "Rowan 12", bays: 12, units: 2, depthMm: 760, weightKg: 29, liftKg: 15, liftBy: "two", watts: 380 },
];

const modelPorts: readonly TableRow<"modelPorts">[] = models.flatMap(({ model = null }) => [
  { model, port: "0", role: "data", gbits: 25, connector: "SFP28" },
  { model, port: "1", role: "data", gbits: 25, connector: "SFP28" },
  { model, port: "2", role: "management", gbits: 1, connector: "RJ45" },
] as const);

const alder = { model: "Alder 24", drives: 24, driveSize: "8 TB", scheme: "RAID 60 9+2", spares: 2, reserve: 0.1 } as const;
const rowan = { model: "Rowan 12", drives: 12, driveSize: "16 TB", scheme: "RAID 6", spares: 1, reserve: 0.1 } as const;
const arrays: readonly TableRow<"arrays">[] = [
  {
    id: "A0001", array: "rr-array-1", site: "Reading Room", ...alder, serial: "TML-24-0107", rack: "RR-R1", bottomUnit: 10, feedA: "RR-A", feedB: "RR-B",
    cluster: "Scans", clusterOrder: 1, pool: "Scans", used: "62 TB", warrantyUntil: "2031-09-30",
  },
  {
    id: "A0002", array: "rr-array-2", site: "Reading Room", ...alder, serial: "TML-24-0108", rack: "RR-R2", bottomUnit: 10, feedA: "RR-A", feedB: "RR-B",
    cluster: "Scans", clusterOrder: 2, pool: "Scans", used: "60 TB", warrantyUntil: "2031-09-30",
  },
  {
    id: "A0003", array: "bi-array-1", site: "Bindery", ...rowan, serial: "TML-12-0311", rack: "BI-R1", bottomUnit: 12, feedA: "BI-A", feedB: "BI-B",
    cluster: "Scans", clusterOrder: 3, pool: "Scans", used: "61 TB", warrantyUntil: "2031-09-30",
  },
  {
    id: "A0004", array: "bi-array-2", site: "Bindery", ...rowan, serial: "TML-12-0312", rack: "BI-R2", bottomUnit: 12, feedA: "BI-A", feedB: "BI-B",
    cluster: "Scans", clusterOrder: 4, pool: "Scans", used: "59 TB", warrantyUntil: "2031-09-30",
  },
  {
    id: "A0005", array: "cs-array-1", site: "Cold Store", ...alder, serial: "TML-24-0109", rack: "CS-R1", bottomUnit: 6, feedA: "CS-A/L2", feedB: "CS-B/L2",
    portSharing: "array", scheme: "8+3", spares: 1, cluster: "Deep Store", clusterOrder: 1, pool: "Masters", used: "48 TB", warrantyUntil: "2032-03-31",
  },
  {
    id: "A0006", array: "cs-array-2", site: "Cold Store", ...alder, serial: "TML-24-0110", rack: "CS-R1", bottomUnit: 12, feedA: "CS-A/L3", feedB: "CS-B/L3",
    portSharing: "array", scheme: "8+3", spares: 1, cluster: "Deep Store", clusterOrder: 2, pool: "Masters", used: "45 TB", warrantyUntil: "2032-03-31",
  },
];

/** Array, controller, port, network, address, switch, port of the switch. Ports of the Cold Store have an address of each family. */
const cables: readonly (readonly [string, string, string, string, string, string, string])[] = [
  ["rr-array-1", "A", "0", "rr-data-1", "10.64.11.1", "rr-sw1", "1"],
  ["rr-array-1", "A", "1", "rr-data-2", "10.64.12.1", "rr-sw2", "1"],
  ["rr-array-1", "A", "2", "mgmt", "10.64.0.10", "rr-sw1", "2"],
  ["rr-array-1", "B", "0", "rr-data-1", "10.64.11.2", "rr-sw2", "2"],
  ["rr-array-1", "B", "1", "rr-data-2", "10.64.12.2", "rr-sw1", "3"],
  ["rr-array-1", "B", "2", "mgmt", "10.64.0.11", "rr-sw2", "3"],
  ["rr-array-2", "A", "0", "rr-data-1", "10.64.11.3", "rr-sw1", "4"],
  ["rr-array-2", "A", "1", "rr-data-2", "10.64.12.3", "rr-sw2", "4"],
  ["rr-array-2", "A", "2", "mgmt", "10.64.0.12", "rr-sw1", "5"],
  ["rr-array-2", "B", "0", "rr-data-1", "10.64.11.4", "rr-sw2", "5"],
  ["rr-array-2", "B", "1", "rr-data-2", "10.64.12.4", "rr-sw1", "6"],
  ["rr-array-2", "B", "2", "mgmt", "10.64.0.13", "rr-sw2", "6"],
  ["bi-array-1", "A", "0", "bi-data-1", "10.64.21.1", "bi-sw1", "1"],
  ["bi-array-1", "A", "1", "bi-data-2", "10.64.22.1", "bi-sw2", "1"],
  ["bi-array-1", "A", "2", "mgmt", "10.64.0.14", "bi-sw1", "2"],
  ["bi-array-1", "B", "0", "bi-data-1", "10.64.21.2", "bi-sw2", "2"],
  ["bi-array-1", "B", "1", "bi-data-2", "10.64.22.2", "bi-sw1", "3"],
  ["bi-array-1", "B", "2", "mgmt", "10.64.0.15", "bi-sw2", "3"],
  ["bi-array-2", "A", "0", "bi-data-1", "10.64.21.3", "bi-sw1", "4"],
  ["bi-array-2", "A", "1", "bi-data-2", "10.64.22.3", "bi-sw2", "4"],
  ["bi-array-2", "A", "2", "mgmt", "10.64.0.16", "bi-sw1", "5"],
  ["bi-array-2", "B", "0", "bi-data-1", "10.64.21.4", "bi-sw2", "5"],
  ["bi-array-2", "B", "1", "bi-data-2", "10.64.22.4", "bi-sw1", "6"],
  ["bi-array-2", "B", "2", "mgmt", "10.64.0.17", "bi-sw2", "6"],
  ["cs-array-1", "A", "0", "cs-data-1", "10.64.31.1", "cs-sw1", "1"],
  ["cs-array-1", "A", "0", "cs-data-1-v6", "fd6b:41c2:9e07:31::1", "cs-sw1", "1"],
  ["cs-array-1", "A", "1", "cs-data-2", "10.64.32.1", "cs-sw2", "1"],
  ["cs-array-1", "A", "1", "cs-data-2-v6", "fd6b:41c2:9e07:32::1", "cs-sw2", "1"],
  ["cs-array-1", "A", "2", "mgmt", "10.64.0.18", "cs-sw1", "2"],
  ["cs-array-1", "A", "2", "cs-mgmt-v6", "fd6b:41c2:9e07:30::2", "cs-sw1", "2"],
  ["cs-array-1", "B", "0", "cs-data-1", "10.64.31.1", "cs-sw1", "3"],
  ["cs-array-1", "B", "0", "cs-data-1-v6", "fd6b:41c2:9e07:31::1", "cs-sw1", "3"],
  ["cs-array-1", "B", "1", "cs-data-2", "10.64.32.1", "cs-sw2", "2"],
  ["cs-array-1", "B", "1", "cs-data-2-v6", "fd6b:41c2:9e07:32::1", "cs-sw2", "2"],
  ["cs-array-1", "B", "2", "mgmt", "10.64.0.18", "cs-sw2", "3"],
  ["cs-array-1", "B", "2", "cs-mgmt-v6", "fd6b:41c2:9e07:30::2", "cs-sw2", "3"],
  ["cs-array-2", "A", "0", "cs-data-1", "10.64.31.2", "cs-sw1", "4"],
  ["cs-array-2", "A", "0", "cs-data-1-v6", "fd6b:41c2:9e07:31::2", "cs-sw1", "4"],
  ["cs-array-2", "A", "1", "cs-data-2", "10.64.32.2", "cs-sw2", "4"],
  ["cs-array-2", "A", "1", "cs-data-2-v6", "fd6b:41c2:9e07:32::2", "cs-sw2", "4"],
  ["cs-array-2", "A", "2", "mgmt", "10.64.0.19", "cs-sw1", "5"],
  ["cs-array-2", "A", "2", "cs-mgmt-v6", "fd6b:41c2:9e07:30::3", "cs-sw1", "5"],
  ["cs-array-2", "B", "0", "cs-data-1", "10.64.31.2", "cs-sw1", "6"],
  ["cs-array-2", "B", "0", "cs-data-1-v6", "fd6b:41c2:9e07:31::2", "cs-sw1", "6"],
  ["cs-array-2", "B", "1", "cs-data-2", "10.64.32.2", "cs-sw2", "5"],
  ["cs-array-2", "B", "1", "cs-data-2-v6", "fd6b:41c2:9e07:32::2", "cs-sw2", "5"],
  ["cs-array-2", "B", "2", "mgmt", "10.64.0.19", "cs-sw2", "6"],
  ["cs-array-2", "B", "2", "cs-mgmt-v6", "fd6b:41c2:9e07:30::3", "cs-sw2", "6"],
];
const ports: readonly TableRow<"ports">[] = cables.map(([array, controller, port, network, address, to, switchPort]) => ({
  array, controller, port, network, address, mtu: network.includes("mgmt") ? 1500 : 9000, switch: to, switchPort,
}));

const volumes: readonly TableRow<"volumes">[] = [
  { volume: "scans-live", pool: "Scans", size: "80 TB", provisioning: "full", snapshotShare: 0.2, purpose: "Scans of the week, both reading rooms" },
  { volume: "scans-index", pool: "Scans", size: "4 TB", provisioning: "full", snapshotShare: 0.5, purpose: "Catalogue and thumbnails" },
  { volume: "masters", pool: "Masters", size: "150 TB", provisioning: "thin", snapshotShare: 0.1, purpose: "Master copies" },
];

const access: readonly TableRow<"access">[] = [
  { volume: "scans-live", to: "scanning", right: "read and write", number: 1 },
  { volume: "scans-index", to: "scanning", right: "read and write", number: 2 },
  { volume: "masters", to: "archive-1", right: "read and write", number: 1 },
];

const prompts: readonly TableRow<"prompts">[] = ["Alder 24", "Rowan 12"].flatMap((model) => [
  { model, order: 1, prompt: "First port", value: "{{First port}}" },
  { model, order: 2, prompt: "Its address", value: "{{First address}}" },
  { model, order: 3, prompt: "Its mask", value: "{{First netmask}}" },
  { model, order: 4, prompt: "Its gateway", value: "{{First gateway}}" },
  { model, order: 5, prompt: "Name of this array", value: "{{Array}}" },
  { model, order: 6, prompt: "Administrator password", value: "vault:thornmere/arrays/administrator" },
]);

const jobs: readonly TableRow<"jobs">[] = [
  { id: "J0001", job: "Reading Room installation", site: "Reading Room", procedure: "Install a rack array", plannedDate: "2026-10-06", state: "planned", longestStandstill: 60 },
  { id: "J0002", job: "Bindery installation", site: "Bindery", procedure: "Add an array to a live cluster", plannedDate: "2026-10-13", state: "planned", longestStandstill: 60 },
  { id: "J0003", job: "Cold Store installation", site: "Cold Store", procedure: "Install a rack array", plannedDate: "2026-10-20", state: "planned", longestStandstill: 60 },
];

const offered = { offer: "TML-26-014", taxRate: 0.2, currency: "EUR" } as const;
const quote: readonly TableRow<"quote">[] = [
  { item: "Two Alder 24, prepared", kind: "array", for: "Reading Room", quantity: 2, cost: 21400, margin: 0.22, ...offered },
  { item: "Two Rowan 12, prepared", kind: "array", for: "Bindery", quantity: 2, cost: 15900, margin: 0.22, ...offered },
  { item: "Alder 24, prepared", kind: "array", for: "cs-array-1", quantity: 1, cost: 22150, margin: 0.2, ...offered },
  { item: "Alder 24, prepared", kind: "array", for: "cs-array-2", quantity: 1, cost: 22150, margin: 0.2, discount: 0.02, ...offered },
  { item: "Installation and handover", kind: "service", quantity: 3, cost: 1850, margin: 0.3, ...offered },
  { item: "Call-out within a working day", kind: "support", quantity: 1, years: 3, cost: 4200, margin: 0.3, optional: "yes", ...offered },
];
