// The sample plan, broken on purpose: at least once for every rule of the checks, with what the checks have to find.
import { initialRows } from "../../src/actions/set-up";
import { tables, type TableKey, type TableRows } from "../../src/planning/plan/schema";
import { planSetUp, sampleRows } from "../../src/planning/plan/set-up";
import type { SheetPlan } from "../../src/sheet";
import { set, type Break, type Row, type Rows } from "./break";
import { offerBreaks } from "./broken-offers";

const step = { procedure: "Install a rack array", section: "Boxes left closed", record: "tick", required: "no" };

/** Every break; all of them are in one plan, so that a change may add to the findings of another. */
export const breaks: readonly Break[] = [
  { what: "A warranty ends at no date", change: ({ arrays }) => set(arrays[0], { warrantyUntil: "next year" }), found: [["unreadable-cell", "Arrays 5 Warranty until"]] },
  { what: "A host has no name", change: ({ hosts }) => void hosts.push({ site: "Bindery", address: "10.64.21.66" }), found: [["nameless-row", "Hosts 8 Host"]] },
  { what: "A switch names a rack in another spelling", change: ({ switches }) => set(switches[0], { rack: "RR R1" }), found: [["unknown-name", "Switches 5 Rack"]] },
  {
    what: "A model that is spelt in another way than its array spells it",
    change: ({ models }) => void models.push({ model: "Sorrel-4", bays: 4 }, { model: "Sorrel 8", bays: 8 }),
    found: [["unknown-model", "Arrays 11 Model"]],
  },
  { what: "A switch hangs on a feed of another site", change: ({ switches }) => set(switches[3], { feedB: "RR-B" }), found: [["other-site", "Switches 8 Feed B"]] },
  { what: "A site stands twice", change: ({ sites }) => void sites.push({ site: "bindery" }), found: [["repeated-name", "Sites 8 Site"]] },
  { what: "A job's name cannot be the name of a tab", change: ({ jobs }) => set(jobs[0], { job: "Reading Room: installation" }), found: [["tab-name", "Jobs 5 Job"]] },
  { what: "A job has no id", change: ({ jobs }) => set(jobs[1], { id: null }), found: [["missing-id", "Jobs 6 Id"]] },
  { what: "A room number turned into a date", change: ({ sites }) => set(sites[0], { room: 46_024 }), found: [["date-in-text", "Sites 5 Room"]] },
  { what: "A number was typed as text", change: ({ racks }) => set(racks[0], { units: "42" }), found: [["number-as-text", "Racks 5 Units"]] },
  {
    what: "A setting that nothing reads, and one that cannot be read",
    change: (rows) => {
      const share = rows.settings.find(({ setting }) => setting === "Two person share")!;
      rows.settings = [{ setting: "Coffee breaks", value: "2" }, { ...share, value: "67" }, ...rows.settings.filter((row) => row !== share)];
    },
    found: [["unknown-setting", "Settings 5 Setting"], ["unreadable-setting", "Settings 6 Value"]],
  },
  { what: "Too few drives for RAID 6", change: ({ arrays }) => set(arrays[2], { drives: 3 }), found: [["scheme-layout", "Arrays 7 Drives"]] },
  { what: "A spare less leaves a drive outside its groups", change: ({ arrays }) => set(arrays[0], { spares: 1 }), found: [["drives-outside-group", "Arrays 5 Drives"]] },
  { what: "An array without a spare", change: ({ arrays }) => set(arrays[3], { spares: 0 }), found: [["too-few-spares", "Arrays 8 Spares"]] },
  {
    what: "A pool is nearly full, so that neither of its arrays could be taken out",
    change: ({ arrays }) => set(arrays[4], { used: "160 TB" }),
    found: [["pool-fill", "Pools 6 Fill limit"], ["pool-removal", "Arrays 9 Pool"], ["pool-removal", "Arrays 10 Pool"]],
  },
  { what: "Single parity over ten large drives", change: ({ arrays }) => set(arrays[1], { scheme: "RAID 5 10+1" }), found: [["rebuild-read-fault", "Arrays 6 Scheme"]] },
  { what: "A host's address lacks its last part", change: ({ hosts }) => set(hosts[1], { address: "10.64.21" }), found: [["not-an-address", "Hosts 6 Address"]] },
  {
    what: "A network out of a range for documentation",
    change: ({ networks }) => void networks.push({ network: "lab", site: "Bindery", prefix: "192.0.2.0/24", gateway: "none" }),
    found: [["unusable-range", "Networks 15 Prefix"], ["network-role", "Networks 15 Role"]],
  },
  {
    what: "A network inside another",
    change: ({ networks }) => void networks.push({ network: "rr-spare", site: "Reading Room", prefix: "10.64.12.128/25", gateway: "none", role: "data" }),
    found: [["networks-overlap", "Networks 16 Prefix"], ["data-network-unused", "Networks 16 Network"]],
  },
  {
    what: "A network too small for its four ports: one has its broadcast address, one is outside",
    change: ({ networks }) => set(networks[3], { prefix: "10.64.22.0/30" }),
    found: [["network-too-small", "Networks 8 Prefix"], ["network-or-broadcast", "Ports 24 Address"], ["address-outside-network", "Ports 27 Address"]],
  },
  { what: "A gateway outside its network", change: ({ networks }) => set(networks[9], { gateway: "fd00::1" }), found: [["gateway-outside", "Networks 14 Gateway"]] },
  { what: "A cluster at the gateway's address", change: ({ clusters }) => set(clusters[0], { sharedAddress: "10.64.0.1" }), found: [["gateway-taken", "Clusters 5 Shared address"]] },
  { what: "A cluster at the address of a port", change: ({ clusters }) => set(clusters[1], { sharedAddress: "10.64.0.13" }), found: [["shared-address-on-port", "Clusters 6 Shared address"]] },
  {
    what: "A new cluster in a network without a gateway, at an address outside it, which no array creates",
    change: ({ clusters }) => void clusters.push({ cluster: "Prints", network: "rr-data-1", sharedAddress: "10.64.77.20", state: "new" }),
    found: [["gateway-missing", "Networks 5 Gateway"], ["shared-address-outside", "Clusters 7 Shared address"], ["first-of-cluster", "Clusters 7 Cluster"]],
  },
  {
    what: "A cluster without a shared address",
    change: ({ clusters }) => void clusters.push({ cluster: "Maps", network: "mgmt", state: "existing" }),
    found: [["cluster-without-address", "Clusters 8 Shared address"]],
  },
  { what: "An array in a cluster whose network it has no port in", change: ({ arrays }) => set(arrays[5], { cluster: "Prints" }), found: [["cluster-without-port", "Arrays 10 Cluster"]] },
  { what: "A fourth port that has no row in Ports", change: ({ arrays }) => set(arrays[1], { ports: "0,1,2,3" }), found: [["port-without-row", "Arrays 6 Ports"]] },
  { what: "A port without a network", change: ({ ports }) => set(ports[0], { network: null }), found: [["port-without-network", "Ports 5 Network"]] },
  { what: "A port in a reserved range", change: ({ ports }) => set(ports[2], { address: "10.64.0.5" }), found: [["reserved-address", "Ports 7 Address"], ["address-of-server", "Ports 7 Address"]] },
  { what: "Two ports with one address", change: ({ ports }) => set(ports[3], { address: "10.64.11.3" }), found: [["address-twice", "Ports 11 Address"]] },
  { what: "A port without an address", change: ({ ports }) => set(ports[7], { address: null }), found: [["port-without-address", "Ports 12 Address"]] },
  { what: "A port with an MTU of its own", change: ({ ports }) => set(ports[10], { mtu: 1500 }), found: [["port-mtu", "Ports 15 MTU"]] },
  {
    what: "All ports of an array on one switch, and one on none",
    change: ({ ports }) => {
      ports.slice(18, 23).forEach((row, at) => set(row, { switch: "bi-sw1", switchPort: String(at + 11) }));
      set(ports[23], { switch: null, switchPort: null });
    },
    found: [["array-on-one-switch", "Arrays 8 Array"], ["port-without-switch", "Ports 28 Switch"]],
  },
  { what: "All ports of a controller on one switch", change: ({ ports }) => set(ports[1], { switch: "rr-sw1", switchPort: "21" }), found: [["controller-on-one-switch", "Ports 5 Switch"]] },
  { what: "A switch that does not carry the network of a port", change: ({ switches }) => set(switches[1], { networks: "rr-data-1, mgmt" }), found: [["switch-without-network", "Ports 12 Switch"]] },
  { what: "Two cables in one port of a switch", change: ({ ports }) => set(ports[17], { switchPort: "2" }), found: [["switch-port-twice", "Ports 22 Switch port"]] },
  { what: "Both supplies of an array on one feed", change: ({ arrays }) => set(arrays[2], { feedB: "BI-A" }), found: [["supplies-on-one-feed", "Arrays 7 Feed B"]] },
  {
    what: "Both feeds of a site on one source",
    change: ({ feeds }) => set(feeds[5], { source: "Annex UPS" }),
    found: [
      ["supplies-on-one-source", "Arrays 9 Feed B"],
      ["supplies-on-one-source", "Arrays 10 Feed B"],
      ["supplies-on-one-source", "Switches 9 Feed B"],
      ["supplies-on-one-source", "Switches 10 Feed B"],
      ["switches-on-one-feed", "Switches 10 Feed A"],
    ],
  },
  { what: "A feed that cannot carry the load of the other", change: ({ feeds }) => set(feeds[0], { breakerA: 8 }), found: [["feed-takeover", "Feeds 5 Breaker A"]] },
  { what: "A feed over its limit while all is well", change: ({ feeds }) => set(feeds[2], { breakerA: 3 }), found: [["circuit-load", "Feeds 7 Breaker A"]] },
  { what: "A switch that does not say what it draws", change: ({ switches }) => set(switches[5], { watts: null }), found: [["load-not-known", "Feeds 9 Feed"], ["load-not-known", "Feeds 10 Feed"]] },
  { what: "A phase of a feed that has one", change: ({ switches }) => set(switches[2], { feedA: "BI-A/L1" }), found: [["feed-phase", "Switches 7 Feed A"]] },
  { what: "A host without a link", change: ({ hosts }) => void hosts.push({ host: "scan-9", site: "Bindery" }), found: [["host-without-path", "Hosts 9 Host"]] },
  { what: "A host with one link", change: (rows) => (rows.links = rows.links.filter(({ from, to }) => from !== "archive-1" || to !== "cs-sw2")), found: [["host-on-one-switch", "Hosts 7 Host"]] },
  {
    what: "A host behind one core switch",
    change: (rows) => {
      for (const name of ["rr-sw3", "rr-sw4", "rr-core"]) rows.switches.push({ switch: name, site: "Reading Room", networks: "rr-data-1" });
      const links = ["scan-1 rr-sw3", "scan-1 rr-sw4", "rr-sw3 rr-core", "rr-sw4 rr-core", "rr-core rr-sw1", "rr-core rr-sw2"].map((text) => text.split(" "));
      rows.links = [...rows.links.filter(({ from }) => from !== "scan-1" && from !== "rr-sw1"), ...links.map(([from, to]) => ({ from: from!, to: to! }))];
    },
    found: [["single-point", "Arrays 5 Array"], ["single-point", "Arrays 6 Array"]],
  },
  {
    what: "Two of four arrays in one rack, one of them reaching over its top",
    change: ({ arrays }) => set(arrays[1], { rack: "RR-R1", bottomUnit: 40 }),
    found: [["pool-domain", "Pools 5 Across arrays"], ["rack-outside", "Arrays 6 Bottom unit"]],
  },
  { what: "A pool without redundancy across its arrays", change: () => undefined, found: [["pool-without-scheme", "Pools 6 Across arrays"]] },
  { what: "Two arrays in the same units", change: ({ arrays }) => set(arrays[5], { bottomUnit: 8 }), found: [["rack-overlap", "Arrays 10 Bottom unit"]] },
  { what: "A rack that carries less than stands in it", change: ({ racks }) => set(racks[4], { limitKg: 90 }), found: [["rack-weight", "Racks 9 Limit kg"]] },
  { what: "An array deeper than its rack", change: ({ arrays }) => set(arrays[4], { depthMm: 1100 }), found: [["rack-depth", "Arrays 9 Depth mm"]] },
  { what: "A rack with too little cooling", change: ({ racks }) => set(racks[3], { coolingW: 100 }), found: [["rack-cooling", "Racks 8 Cooling W"]] },
  { what: "A rack with too few outlets", change: ({ racks }) => set(racks[2], { outlets: "1 x C13" }), found: [["rack-outlets", "Racks 7 Outlets"]] },
  { what: "A heavy array high above a light one", change: ({ arrays }) => set(arrays[3], { rack: "BI-R1", bottomUnit: 30, weightKg: 45 }), found: [["heavier-above", "Arrays 8 Bottom unit"]] },
  { what: "A lift by two that needs a lift table", change: ({ arrays }) => set(arrays[2], { liftKg: 19.9 }), found: [["lift-aid", "Arrays 7 Lift by"]] },
  {
    what: "Steps with an unknown field, an ambiguous one, an expectation that cannot be compared, a condition that cannot be met, an id that stands twice, and a caution in a grid",
    change: (rows) => {
      rows.steps = [
        { ...step, stepId: "OWN-1", do: "Look at the {{Colour}} label." },
        { ...step, stepId: "OWN-2", do: "Count {{Units}} units." },
        { ...step, stepId: "OWN-3", do: "Count the screws.", record: "number", expect: "a few" },
        { ...step, stepId: "OWN-4", do: "Tie the cables.", when: "Port sharing = both" },
        { ...step, stepId: "own-1", do: "Sweep the floor." },
        { ...step, stepId: "OWN-5", section: "Drives by bay", do: "Look at the latch.", caution: "Its edge cuts." },
        ...rows.steps,
      ];
    },
    found: [
      ["unknown-placeholder", "Steps 5 Do"],
      ["ambiguous-placeholder", "Steps 6 Do"],
      ["uncomparable-expectation", "Steps 7 Expect"],
      ["impossible-condition", "Steps 8 When"],
      ["repeated-step", "Steps 9 Step id"],
      ["impossible-grid", "Steps 10 Caution"],
    ],
  },
  {
    what: "A host at one side alone",
    change: ({ hosts }) => set(hosts[2], { address: "fd6b:41c2:9e07:31::41" }),
    found: [["host-on-one-side", "Hosts 7 Address"], ["host-data-on-one-switch", "Hosts 7 Address"]],
  },
  { what: "An initiator name that is none", change: ({ hosts }) => set(hosts[1], { initiatorName: "scan-2" }), found: [["initiator-name", "Hosts 6 Initiator name"]] },
  { what: "One initiator name for two hosts", change: ({ hosts }) => set(hosts[4], { initiatorName: hosts[0]!.initiatorName! }), found: [["initiator-twice", "Hosts 9 Initiator name"]] },
  {
    what: "A host in the management network alone",
    change: ({ hosts, links }) => {
      hosts.push({ host: "scan-8", site: "Reading Room", address: "10.64.0.77" });
      links.push({ from: "scan-8", to: "rr-sw1" }, { from: "scan-8", to: "rr-sw2" });
    },
    found: [["host-paths", "Hosts 10 Address"]],
  },
  {
    what: "A site of one switch, with two sides on it, an array in management alone, and a host of which no link is known",
    change: ({ sites, switches, hosts, networks, arrays, ports }) => {
      const site = "Attic";
      sites.push({ site });
      switches.push({ switch: "at-sw1", site, networks: "at-data-1, at-data-2, mgmt" });
      hosts.push({ host: "print-1", site });
      const data = { site, gateway: "none", role: "data" };
      networks.push({ ...data, network: "at-data-1", prefix: "10.64.41.0/24", side: "A" }, { ...data, network: "at-data-2", prefix: "10.64.42.0/24", side: "B" });
      arrays.push({ id: "A0007", array: "at-array-1", site, model: "Sorrel 4" }, { id: "A0008", array: "at-array-2", site, model: "Sorrel 8" });
      const cable = { controller: "A", switch: "at-sw1" };
      ports.push(
        { array: "at-array-1", ...cable, port: "0", network: "mgmt", address: "10.64.0.40", switchPort: "1" },
        { array: "at-array-2", ...cable, port: "0", network: "at-data-1", address: "10.64.41.1", switchPort: "2" },
        { array: "at-array-2", ...cable, port: "1", network: "at-data-2", address: "10.64.42.1", switchPort: "3" },
      );
    },
    found: [
      ["unknown-links", "Hosts 11 Host"], ["array-without-data", "Arrays 11 Ports"], ["sides-on-one-switch", "Ports 55 Switch"], ["array-on-one-switch", "Arrays 11 Array"],
      ["array-on-one-switch", "Arrays 12 Array"],
    ],
  },
  { what: "A data port on the management network", change: ({ ports }) => set(ports[18], { network: "mgmt", address: "10.64.0.41", mtu: 1500 }), found: [["port-of-other-role", "Ports 23 Network"]] },
  {
    what: "The data ports of an array on one switch, and all ports of its second controller",
    change: ({ ports }) => {
      set(ports[12], { switch: "bi-sw2", switchPort: "20" });
      set(ports[16], { switch: "bi-sw2", switchPort: "21" });
    },
    found: [["data-on-one-switch", "Arrays 7 Array"], ["controller-on-one-switch", "Ports 20 Switch"]],
  },
  {
    what: "A port of side A on the switch of side B",
    change: ({ ports }) => set(ports[30], { switch: "cs-sw2", switchPort: "9" }),
    found: [["wrong-side", "Ports 35 Switch"], ["switch-without-network", "Ports 35 Switch"]],
  },
  {
    what: "A port of one array is for data, the same port of another array of its model for management, and nobody says what the model's ports are for",
    change: ({ arrays, ports }) => {
      arrays.push({ id: "A0009", array: "at-array-3", site: "Attic", model: "Sorrel 8" });
      ports.push({ array: "at-array-3", controller: "A", port: "0", network: "mgmt", address: "10.64.0.42", switch: "at-sw1", switchPort: "4" });
    },
    found: [["port-role", "Ports 56 Network"], ["array-without-data", "Arrays 13 Ports"], ["array-on-one-switch", "Arrays 13 Array"]],
  },
  {
    what: "A port that an array does not have, on a network of another kind than IP",
    change: ({ networks, ports }) => {
      networks.push({ network: "bi-fabric", site: "Bindery", kind: "other", role: "replication" });
      ports.push({ array: "bi-array-1", controller: "A", port: "7", network: "bi-fabric", switch: "bi-sw2", switchPort: "19" });
    },
    found: [["port-beyond-array", "Ports 57 Port"], ["network-not-checked", "Networks 19 Kind"], ["switch-without-network", "Ports 57 Switch"]],
  },
  {
    what: "The switches of a site are one stack",
    change: ({ switches }) => switches.slice(4, 6).forEach((row) => set(row, { stack: "cs-core" })),
    found: [["paths-on-one-stack", "Arrays 9 Array"], ["paths-on-one-stack", "Arrays 10 Array"]],
  },
  {
    what: "A second customer, whom the management network reaches too",
    change: ({ sites }) => set(sites.find(({ site }) => site === "Attic"), { customer: "Hollin Print Room" }),
    found: [["network-of-customers", "Networks 11 Routing"]],
  },
  { what: "A port that the switch does not have", change: ({ ports }) => set(ports[8], { switchPort: "99" }), found: [["switch-port-beyond", "Ports 13 Switch port"]] },
  { what: "A port that the switch keeps for its uplink", change: ({ ports }) => set(ports[9], { switchPort: "23" }), found: [["switch-port-kept", "Ports 14 Switch port"]] },
  { what: "A switch that forwards small frames alone", change: ({ switches }) => set(switches[3], { frameBytes: 1522 }), found: [["frame-bytes", "Switches 8 Frame bytes"]] },
  ...offerBreaks,
  { what: "A warranty that has ended", change: ({ arrays }) => set(arrays[5], { warrantyUntil: "2025-03-31" }), found: [["warranty-end", "Arrays 10 Warranty until"]] },
  {
    what: "Volumes of a small pool: a full one larger than the pool, open to hosts of no group, and a thin one; one without a pool and host",
    change: ({ pools, arrays, volumes, access }) => {
      pools.push({ pool: "Trials", acrossArrays: "none" });
      arrays.push({ id: "A0107", array: "cs-trial", site: "Cold Store", drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 1, pool: "Trials" });
      volumes.push({ volume: "trial-1", pool: "Trials", size: "40 TB", provisioning: "full" });
      volumes.push({ volume: "trial-2", pool: "Trials", size: "10 TB", provisioning: "thin" }, { volume: "nowhere", size: "1 TB" });
      access.push({ volume: "trial-1", to: "scanning", number: 7 }, { volume: "trial-1", to: "archive-1", number: 7 }, { volume: "trial-2", to: "scan-l", number: 8 });
    },
    found: [
      ["volumes-beyond-pool", "Pools 7 Pool"], ["thin-volumes", "Pools 7 Pool"], ["volumes-promised", "Pools 7 Pool"], ["volumes-not-held", "Pools 5 Pool"], ["volumes-not-held", "Volumes 10 Pool"],
      ["volume-without-host", "Volumes 10 Volume"],
      ["volume-open-to-strangers", "Access 9 Host or group"], ["unknown-opener", "Access 10 Host or group"],
    ],
  },
  {
    what: "Readings: one that says otherwise than its array, one of nothing that there is, and one of a day to come",
    change: ({ readings }) => {
      const reading = { what: "used", value: 52.5, unit: "TB" };
      readings.push({ ...reading, date: "2026-01-05", subject: "rr-array-1" }, { ...reading, date: "2026-01-05", subject: "cs-array-9" }, { ...reading, date: "2999-01-05", subject: "Scans" });
    },
    found: [["used-beside-reading", "Arrays 5 Used"], ["reading-not-counted", "Readings 6 Subject"], ["reading-not-counted", "Readings 7 Date"]],
  },
  {
    what: "A cluster that is neither new nor existing, and an installation over an array that was installed",
    change: ({ clusters, arrays, jobs }) => {
      clusters.push({ cluster: "Trials", network: "mgmt", sharedAddress: "10.64.0.252" });
      set(arrays.at(-1), { cluster: "Trials" });
      const installation = { site: "Cold Store", procedure: "Install a rack array", arrays: "cs-trial" };
      jobs.push({ id: "J0104", job: "Trial installation", ...installation, state: "closed" }, { id: "J0105", job: "Trial once more", ...installation, state: "planned" });
    },
    found: [["cluster-without-state", "Clusters 9 State"], ["installed-again", "Jobs 7 Arrays"], ["installed-again", "Jobs 9 Arrays"]],
  },
  {
    what: "Values that were assumed, one of a feed at a site with an installation",
    change: ({ assumptions }) => void assumptions.push({ named: "CS-R1", table: "Racks", column: "Units", value: "42" }, { named: "CS-A", table: "Feeds", column: "Volts", value: "400" }),
    found: [["assumed-value", "Racks 9 Units"], ["assumed-and-relied-on", "Feeds 9 Volts"]],
  },
  {
    what: "A thin volume that promises more than any limit, and one host of a group that cannot open its volume",
    change: ({ volumes, access }) => {
      set(volumes[2], { size: "900 TB" });
      set(access[0], { to: "scan-1", number: 2 });
    },
    found: [["volumes-promised", "Pools 6 Pool"], ["rights-differ", "Access 5 Right"], ["volume-number-twice", "Access 6 Number"]],
  },
  {
    what: "More drives than bays, two shelves of which too little is known, and three of 24 drives one by one: two in one bay, one beyond the last, one with the serial number of its array",
    change: ({ arrays, shelves, drives }) => {
      set(arrays.find(({ array }) => array === "at-array-2"), { drives: 9 });
      const shelf = { array: "cs-array-1", rack: "CS-R1" };
      shelves.push({ ...shelf, shelf: "S1", bottomUnit: 20, bays: 12 }, { ...shelf, shelf: "S2", bottomUnit: 24, units: 2, weightKg: 18 });
      const drive = { array: "rr-array-1", size: "8 TB" };
      drives.push({ ...drive, bay: 1, serial: "TML-D-0001" }, { ...drive, bay: 1, serial: "TML-24-0107" }, { ...drive, bay: 25, serial: "TML-D-0003" });
    },
    found: [
      ["more-drives-than-bays", "Arrays 12 Drives"], ["rack-not-known", "Racks 9 Rack"], ["bays-not-known", "Shelves 6 Bays"], ["drives-differ", "Arrays 5 Drives"], ["bay-twice", "Drives 6 Bay"],
      ["serial-twice", "Drives 6 Serial"], ["bay-beyond-model", "Drives 7 Bay"],
    ],
  },
  {
    what: "A host whose one port is cabled, though its links say two switches",
    change: ({ hostPorts }) => {
      hostPorts.push({ host: "scan-2", card: "1", network: "bi-data-1", address: "10.64.21.65", mtu: 9000, switch: "bi-sw1", switchPort: "22" });
    },
    found: [["host-ports-differ", "Links 6 To"], ["host-on-one-switch", "Hosts 6 Host"]],
  },
  {
    what: "An installation, which creates a cluster, where arrays join one that is live, and a step that was withdrawn",
    change: ({ jobs, steps }) => {
      set(jobs[1], { procedure: "Install a rack array" });
      set(steps.find(({ stepId }) => stepId === "INS-404"), { stepId: "INS-152" });
    },
    found: [["no-step-for-cluster", "Jobs 6 Procedure"], ["withdrawn-step", "Steps 141 Step id"]],
  },
  {
    what: "A cable that runs to another port since its label was printed, one that is gone, and the others without a row",
    change: ({ cables }) => void cables.push({ id: "C0001", from: "cs-array-2 port B/2", to: "cs-sw2 port 16", colour: "yellow" }, { id: "C0002", from: "print-7", to: "bi-sw1 port 24" }),
    found: [["cable-ends", "Cables 5 From"], ["cable-ends", "Cables 6 From"], ["cable-without-row", "Cables 5 Id"]],
  },
  {
    what: "An array whose drive sets say something else than its own row",
    change: ({ arrays, driveSets }) => {
      arrays.push({ id: "A0108", array: "cs-trial-2", site: "Cold Store", drives: 8, driveSize: "4 TB", spares: 1 });
      const set = { array: "cs-trial-2", driveSize: "4 TB" };
      driveSets.push({ ...set, set: "fast", drives: 4, scheme: "RAID 10" }, { ...set, set: "bulk", drives: 6, scheme: "RAID 6", spares: 1 });
    },
    found: [["drive-sets-differ", "Arrays 15 Drives"]],
  },
  {
    what: "A network of a VLAN that another has, of an MTU that no link has, which keeps back what lies outside it, on no side where others have one",
    change: ({ networks }) => {
      networks.push({ network: "cs-data-3", site: "Cold Store", prefix: "10.64.33.0/24", gateway: "none", vlan: 131, mtu: 20, role: "data", reserved: "10.64.34.0-10.64.34.9" });
    },
    found: [
      ["vlan-twice", "Networks 20 VLAN"], ["network-mtu", "Networks 20 MTU"], ["reserved-outside", "Networks 20 Reserved"], ["side-not-said", "Networks 20 Side"],
      ["data-network-unused", "Networks 20 Network"], ["reserved-outside", "Networks 8 Reserved"],
    ],
  },
  {
    what: "A port with two rows for one network, and one with two cables",
    change: ({ ports }) => {
      ports.push({ ...ports[16], address: "10.64.22.77" });
      set(ports[31], { switchPort: "18" });
    },
    found: [
      ["port-row-twice", "Ports 58 Network"], ["port-cabled-twice", "Ports 36 Switch port"], ["address-outside-network", "Ports 58 Address"],
      ["reserved-address", "Ports 58 Address"],
    ],
  },
  {
    what: "A rack, and a host, of no site",
    change: ({ racks, hosts }) => {
      racks.push({ rack: "Spare rack", units: 42 });
      hosts.push({ host: "print-3", address: "10.64.12.90" });
    },
    found: [["row-without-site", "Racks 10 Site"], ["row-without-site", "Hosts 12 Site"]],
  },
  {
    what: "A model without ports that anybody could read",
    change: ({ models }) => void models.push({ model: "Sorrel 16", bays: 16, controllers: "A,A", ports: "0" }),
    found: [["unreadable-ports", "Models 9 Controllers"], ["unreadable-ports", "Models 9 Ports"]],
  },
  {
    what: "Links from a switch to itself, and to a switch of another site",
    change: ({ links }) => void links.push({ from: "cs-sw1", to: "cs-sw1" }, { from: "scan-8", to: "bi-sw1" }),
    found: [["link-ends", "Links 18 To"], ["other-site", "Links 19 To"]],
  },
  {
    what: "A list that went into no column of the plan",
    change: ({ lists }) => void lists.push({ header: "Asset", table: "Arrays", column: "Asset tag" }),
    found: [["list-column", "Lists 5 Column"]],
  },
  {
    what: "A group of hosts that is called like one of them, a stack of two sites, a time server with one digit too many, and a feed of two phases",
    change: ({ hosts, switches, sites, feeds }) => {
      set(hosts[1], { groups: "scanning, scan-1" });
      set(switches[2], { stack: "cs-core" });
      set(sites[1], { timeServers: "10.64.0.5, 10.64.0.555" });
      set(feeds[3], { phases: 2 });
    },
    found: [
      ["repeated-name", "Hosts 6 Groups"], ["stack-of-sites", "Switches 9 Stack"], ["stack-of-sites", "Switches 10 Stack"],
      ["not-an-address", "Sites 6 Time servers"], ["feed-phase", "Feeds 8 Phases"],
    ],
  },
  {
    what: "Two arrays that join a cluster as one",
    change: ({ arrays }) => set(arrays[3], { clusterOrder: 3 }),
    found: [["cluster-order", "Arrays 8 Cluster order"], ["pool-of-other-cluster", "Arrays 10 Pool"]],
  },
  {
    what: "A volume that a group opens twice",
    change: ({ access }) => void access.push({ volume: "scans-index", to: "scanning", number: 2 }),
    found: [["volume-opened-twice", "Access 11 Host or group"], ["volume-number-twice", "Access 11 Number"], ["volume-out-of-reach", "Access 8 Host or group"]],
  },
  {
    what: "An array that is offered twice, one that two jobs install, and a drive that was taken out before it was fitted",
    change: ({ quote, jobs, drives }) => {
      quote.push({ item: "Rowan 12, prepared", kind: "array", for: "bi-array-1", quantity: 1, cost: 15900, margin: 0.22, currency: "EUR" });
      jobs.push({ id: "J0106", job: "Reading Room once more", site: "Reading Room", procedure: "Install a rack array", arrays: "rr-array-2", state: "planned" });
      drives.push({ array: "rr-array-1", bay: 2, serial: "TML-D-0009", size: "8 TB", fitted: "2026-05-02", takenOut: "2026-04-30" });
    },
    found: [
      ["quoted-twice", "Quote 19 For"], ["planned-twice", "Jobs 9 Arrays"], ["planned-twice", "Jobs 10 Arrays"], ["no-step-for-cluster", "Jobs 10 Procedure"],
      ["drive-dates", "Drives 8 Taken out"],
    ],
  },
  {
    what: "What all of these rows leave blank, told once a table, and hosts of which nobody knows the paths",
    change: () => undefined,
    found: [
      ["not-filled", "Sites 8 Room"], ["not-filled", "Racks 10 Numbered from"], ["not-filled", "Networks 15 Role"], ["not-filled", "Switches 11 Rack"],
      ["not-filled", "Hosts 8 Initiator name"], ["not-filled", "Clusters 8 Shared address"], ["not-filled", "Pools 7 Fill limit"],
      ["not-filled", "Arrays 14 Model"], ["not-filled", "Drive sets 5 Spares"], ["not-filled", "Ports 5 Network"], ["not-filled", "Jobs 8 Planned date"], ["not-filled", "Quote 11 For"],
      ["paths-not-known", "Hosts 5 Address"],
    ],
  },
  {
    what: "A controller that is to be replaced, of which nobody says which it is",
    change: ({ jobs }) => void jobs.push({ id: "J0107", job: "Cold Store controller", site: "Cold Store", procedure: "Replace a controller", arrays: "cs-array-1", state: "planned" }),
    found: [["job-without-subject", "Jobs 11 Subject"]],
  },
  {
    what: "A job that waits for itself",
    change: ({ jobs }) => void jobs.push({ id: "J0108", job: "Bindery year one", site: "Bindery", procedure: "Yearly check", after: "Bindery year one", state: "planned" }),
    found: [["jobs-in-circle", "Jobs 12 After"]],
  },
  { what: "A password in the plan (an invented one)", change: ({ prompts }) => set(prompts[5], { value: "sesame-4711" }), found: [["stored-secret", "Prompts 10 Value"]] },
];

/** Headers that were renamed: sheet, column, new text, and what the checks say of it. */
const renamed = [
  { sheet: "Sites", column: tables.sites.columns.alertsTo.header, text: "Alarm to", found: ["missing-column", "Sites 4 Site"] },
  { sheet: "Quote", column: tables.quote.columns.item.header, text: "What", found: ["missing-key-column", "Quote 4 What"] },
] as const;

/** A formula that somebody typed over: sheet, row and column, what stands there now, and what the checks say of it. */
const typedOver = { sheet: "Arrays", row: 5, column: tables.arrays.columns.usable.header, value: 300, found: ["figure-differs", "Arrays 5 Usable"] } as const;

/** Every finding that the broken plan has to give, as rule and cell, with how it came about. */
export const brokenFindings: readonly { readonly rule: string; readonly cell: string; readonly what: string }[] = [
  ...breaks.flatMap(({ what, found }) => found.map(([rule, cell]) => ({ rule, cell, what }))),
  ...renamed.map(({ column, text, found: [rule, cell] }) => ({ rule, cell, what: `The header ${column} was renamed ${text}` })),
  { rule: typedOver.found[0], cell: typedOver.found[1], what: `A figure was typed over the formula of ${typedOver.column}` },
];

/** Plans the sheets of the sample plan. */
export function samplePlan(): SheetPlan[] {
  return planSetUp({ sheets: [] }, { ...initialRows(), ...sampleRows() });
}

/** Plans the sheets of the broken plan. */
export function brokenPlan(): SheetPlan[] {
  const whole = { ...initialRows(), ...sampleRows() } as Readonly<Partial<Record<TableKey, readonly Row[]>>>;
  const rows = Object.fromEntries((Object.keys(tables) as TableKey[]).map((key) => [key, (whole[key] ?? []).map((row) => ({ ...row }))])) as Rows;
  for (const { change } of breaks) change(rows);
  return planSetUp({ sheets: [] }, rows as unknown as TableRows).map((plan) => {
    const isTypedOver = (row: number, at: number): boolean => plan.name === typedOver.sheet && row + 1 === typedOver.row && plan.rows[3]![at]?.value === typedOver.column;
    const newHeader = (header: unknown) => renamed.find(({ sheet, column }) => sheet === plan.name && column === header)?.text;
    const rows = plan.rows.map((line, at) => {
      if (at === 3) return line.map((cell) => ({ ...cell, value: newHeader(cell.value) ?? cell.value ?? null }));
      return line.map((cell, column) => (isTypedOver(at, column) ? { value: typedOver.value, ...(cell.style !== undefined && { style: cell.style }) } : cell));
    });
    return { ...plan, rows };
  });
}
