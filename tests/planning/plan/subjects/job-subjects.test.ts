import { JobSubjects, lookupIn, type Subject } from "../../../../src/planning/plan/subjects";
import type { ForEach, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";
import { problemOf } from "../../../support/sentence";

const rows = {
  sites: [{ site: "Mill", room: "M.1" }, { site: "Yard", room: "Y.1" }],
  racks: [{ rack: "R1", site: "Mill", units: 42 }],
  networks: [{ network: "mgmt", prefix: "10.0.0.0/24", vlan: 100 }, { network: "data", site: "Mill", prefix: "fd00::/64", mtu: 9000, vlan: 7 }],
  clusters: [{ cluster: "C", network: "mgmt", sharedAddress: "10.0.0.9", state: "new" }, { cluster: "Far", network: "data" }, { cluster: "Empty" }],
  pools: [{ pool: "P", cluster: "C", fillLimit: "85.5%" }, { pool: "Alone" }, { pool: "None", cluster: "C" }, { pool: "Away", cluster: "Far" }],
  arrays: [
    { id: "A0003", array: "a1", site: "Mill", model: "Elm", rack: "R1", controllers: "A,B", ports: "1", drives: 2, cluster: "C", clusterOrder: 2, pool: "P" },
    { id: "A0002", array: "a2", site: "Mill", model: "elm", drives: 1, cluster: "C", clusterOrder: 1, pool: "P" },
    { array: "New One", site: "Mill", pool: "Alone" },
    { id: "A0001", array: "far", site: "Yard", cluster: "Far", clusterOrder: 1, pool: "Away" },
    { id: "A0009", array: "late", site: "Yard", cluster: "C", clusterOrder: 3, pool: "P" },
  ],
  ports: [
    { array: "a1", controller: "A", port: "0", network: "mgmt", address: "10.0.0.1" },
    { array: "a1", controller: "B", port: "0", network: "mgmt", address: "10.0.0.2", mtu: 4000 },
    { array: "a1", controller: "A", port: "0", network: "data", address: "fd00::1" },
    { array: "a1", controller: "A", port: "0", network: "data", address: "fd00::2" },
    { array: "a1", controller: "A", port: "0", address: "fd00::3" },
    { array: "a2", controller: "X", port: "0" },
    { array: "a2", controller: "Y", port: "0", network: "data" },
  ],
  prompts: [
    { model: "Elm", order: 2, prompt: "Name", value: "{{Array}} in {{Rack}}" },
    { model: "Elm", prompt: "Last", value: "yes" },
    { model: "Elm", order: 1, prompt: "Gateway" },
    { model: "elm", order: 2, prompt: "name", value: "{{Cluster}}" },
    { model: "Oak", order: 1, prompt: "Other" },
  ],
  jobs: [{ id: "J0001", job: "First", site: "Mill", subject: "shelf 3" }],
} satisfies TableRows;

function subjectsOf(more: TableRows = {}, job: TableRows["jobs"] = rows.jobs) {
  const model = modelOf({ ...rows, ...more, jobs: job });
  const [row] = model.rows("jobs");
  return new JobSubjects(model, model.places.of(row!), row!);
}

const listed = (forEach: ForEach | "", subjects = subjectsOf()): string[] => subjects.list(forEach).map(({ id, label }) => `${id} = ${label}`);
const fieldsOf = ({ scope }: Subject, ...names: string[]): string[] => names.map(lookupIn(scope, "Step"));

describe("the subjects of a job", () => {
  test("are the site once, which a section that says nothing is about too", () => {
    expect(listed("site")).toEqual(["site = Mill"]);
    expect(listed("")).toEqual(["site = Mill"]);
  });

  test("are its arrays in cluster order, known by their ids, or by their names as long as they have none", () => {
    expect(listed("array")).toEqual(["A0002 = a2", "A0003 = a1", "~new one = New One"]);
  });

  test("are the clusters and pools whose home is in the job, known by the lowest id of their arrays in the whole plan", () => {
    expect(listed("cluster")).toEqual(["A0002.cluster = C"]);
    expect(listed("pool")).toEqual(["A0002.pool = P", "~new one.pool = Alone"]);
    const away = subjectsOf({}, [{ job: "Second", site: "Yard" }]);
    expect(listed("cluster", away)).toEqual(["A0001.cluster = Far"]);
    expect(listed("pool", away)).toEqual(["A0001.pool = Away"]);
  });

  test("are the controllers that an array names, and none where it names none", () => {
    expect(listed("controller")).toEqual(["A0003.A = a1 A", "A0003.B = a1 B"]);
  });

  test("are the port rows of an array: those of the second family and repeated ones have ids of their own", () => {
    expect(listed("port")).toEqual([
      "A0002.X.0 = a2 X0",
      "A0002.Y.0 = a2 Y0",
      "A0003.A.0 = a1 A0",
      "A0003.B.0 = a1 B0",
      "A0003.A.0.v6 = a1 A0 IPv6",
      "A0003.A.0.v6.2 = a1 A0 IPv6",
      "A0003.A.0.v6.3 = a1 A0 IPv6",
    ]);
  });

  test("know whether the Subject of the job names them, with or without their array, and where it is empty take it that it does", () => {
    const shelves: TableRows = { shelves: [{ array: "a1", shelf: "S1", feedA: "F", feedB: "G" }, { array: "a1", shelf: "S2", feedA: "F" }], drives: [{ array: "a1", shelf: "S2", bay: 1 }] };
    const named = (forEach: ForEach, subject: string | null): string[] =>
      subjectsOf(shelves, [{ ...rows.jobs[0], subject }]).list(forEach).filter((one) => fieldsOf(one, "Is subject")[0] === "yes").map(({ label }) => label);
    expect([named("controller", "B"), named("controller", "A1 controller b")]).toEqual([["a1 B"], ["a1 B"]]);
    expect([named("shelf", "shelf s2"), named("shelf", "a1 S1"), named("shelf", "S3")]).toEqual([["a1 S2"], ["a1 S1"], []]);
    expect([named("drive", "a1 bay 1"), named("drive", "S2 bay 1"), named("drive", "shelf S2 1")]).toEqual([["a1 bay 1"], ["a1 S2 bay 1"], ["a1 S2 bay 1"]]);
    expect(named("shelf", null)).toEqual(["a1 S1", "a1 S2"]);
  });

  test("name the feeds of an array and of a shelf in the order of their supplies, and none that is not planned", () => {
    const fed: TableRows = { arrays: rows.arrays.map((row) => ({ ...row, feedA: "F", feedB: row.array === "a1" ? "G" : null })), shelves: [{ array: "a1", shelf: "S1", feedB: "G" }] };
    const subjects = subjectsOf(fed);
    expect(subjects.list("array").map((one) => fieldsOf(one, "Feeds")[0])).toEqual(["F", "F, G", "F"]);
    expect(subjects.list("shelf").map((one) => fieldsOf(one, "Shelf.Feeds")[0])).toEqual(["G"]);
  });

  test("know whether the plan has a host at the site", () => {
    const known = (more: TableRows) => fieldsOf(subjectsOf(more).list("site")[0]!, "With hosts");
    expect([known({}), known({ hosts: [{ host: "h", site: "Yard" }] }), known({ hosts: [{ host: "h", site: "Mill" }] })]).toEqual([["no"], ["no"], ["yes"]]);
  });

  test("are the bays of an array from 1 on", () => {
    expect(listed("drive")).toEqual(["A0002.bay-1 = a2 bay 1", "A0003.bay-1 = a1 bay 1", "A0003.bay-2 = a1 bay 2"]);
  });

  test("are the prompts of an array's model in their order, those without one last, and a repeated one numbered", () => {
    expect(listed("prompt").filter((text) => text.startsWith("A0003"))).toEqual([
      "A0003.prompt gateway = a1: Gateway", "A0003.prompt name = a1: Name", "A0003.prompt name 2 = a1: name", "A0003.prompt last = a1: Last",
    ]);
    expect(listed("prompt").filter((text) => text.startsWith("~"))).toEqual([]);
  });

  test("are the racks, feeds, switches and networks of its arrays and their shelves; of the site as long as nothing is placed or cabled", () => {
    const site = "Mill";
    const places: TableRows = {
      racks: [{ rack: "R1", site }, { rack: "R2", site }, { rack: "R3", site }, { rack: "R9", site: "Barn" }],
      feeds: [{ feed: "F", site }, { feed: "G", site }, { feed: "H", site }],
      switches: [{ switch: "s1", site, rack: "R2" }, { switch: "s2", site }],
      networks: [{ network: "data", site }, { network: "spare", site }],
    };
    const one = { id: "A1", array: "a1", site, controllers: "A" } as const;
    const placed: TableRows = {
      ...places,
      arrays: [{ ...one, rack: "R2", feedA: "G/L2", feedB: "F" }],
      shelves: [{ array: "a1", shelf: "S1", rack: "R1", feedA: "G" }],
      ports: [{ array: "a1", controller: "A", port: "0", network: "data", switch: "s2" }],
    };
    const kinds = ["rack", "feed", "switch", "network", "shelf"] as const;
    const ids = (more: TableRows) => kinds.map((kind) => subjectsOf(more).list(kind).map(({ id }) => id));
    expect(ids(placed)).toEqual([["rack.r1", "rack.r2"], ["feed.f", "feed.g"], ["switch.s2"], ["network.data"], ["A1.shelf s1"]]);
    expect(ids({ ...places, arrays: [one], shelves: [], ports: [] })).toEqual([
      ["rack.r1", "rack.r2", "rack.r3"], ["feed.f", "feed.g", "feed.h"], ["switch.s1", "switch.s2"], ["network.data", "network.spare"], [],
    ]);
  });

  test("are the hosts of the site, their ports for data, and the volumes of the pools of its arrays", () => {
    const site = "Mill";
    const plan: TableRows = {
      networks: [{ network: "d1", site, prefix: "10.0.1.0/24", role: "data", mtu: 9000 }, { network: "m", site, prefix: "10.0.9.0/24", role: "management" }],
      clusters: [{ cluster: "C", state: "new" }],
      pools: [{ pool: "P", cluster: "C" }, { pool: "Q" }],
      arrays: [{ id: "A1", array: "a1", site, controllers: "A,B", cluster: "C", clusterOrder: 1, pool: "P" }],
      ports: [{ array: "a1", controller: "A", port: "0", network: "d1", address: "10.0.1.1" }, { array: "a1", controller: "B", port: "0", network: "d1", address: "10.0.1.2" }],
      hosts: [{ host: "h1", site, address: "10.0.1.65" }, { host: "h2", site }, { host: "far", site: "Barn" }],
      hostPorts: [{ host: "h2", card: "c1", network: "d1", address: "10.0.1.66", mtu: 1500 }, { host: "h2", card: "c2", network: "m", address: "10.0.9.66" }],
      volumes: [{ volume: "v1", pool: "P" }, { volume: "v2", pool: "Q" }],
      access: [{ volume: "v1", to: "h1", number: 3 }, { volume: "v1", to: "h2", right: "read" }],
    };
    const subjects = subjectsOf(plan);
    expect([listed("host", subjects), listed("host port", subjects), listed("volume", subjects)]).toEqual([
      ["host.h1 = h1", "host.h2 = h2"], ["host port.h1.d1 = h1 d1", "host port.h2.c1 = h2 c1"], ["volume.v1 = v1"],
    ]);
    // RFC 791 and RFC 792: 20 + 8 bytes of headers. Each host reaches both controllers in one network: two paths.
    expect(subjects.list("host port").map((one) => fieldsOf(one, "Ping size", "Ping too large", "Ping targets", "Host port.Address"))).toEqual([
      ["8972", "8973", "10.0.1.1, 10.0.1.2", "10.0.1.65"], ["1472", "1473", "10.0.1.1, 10.0.1.2", "10.0.1.66"],
    ]);
    expect(subjects.list("host").map((one) => fieldsOf(one, "Paths to arrays", "Paths by array"))).toEqual([["2", "a1: 2"], ["2", "a1: 2"]]);
    expect(subjects.list("array").map((one) => fieldsOf(one, "Host paths"))).toEqual([["2 from each host"]]);
    const [own, port] = [plan.arrays![0]!, plan.ports![0]!];
    const second = subjectsOf({ ...plan, arrays: [own, { ...own, id: "A2", array: "a2", clusterOrder: 2 }], ports: [...plan.ports!, { ...port, array: "a2", address: "10.0.1.3" }] });
    expect(second.list("host").map((one) => fieldsOf(one, "Paths by array"))).toEqual([["a1: 2, a2: 1"], ["a1: 2, a2: 1"]]);
    expect(fieldsOf(subjects.list("volume")[0]!, "Opened by", "Cluster")).toEqual(["h1, read and write, number 3; h2, read", "C"]);
    const [array] = subjects.list("array");
    expect(fieldsOf(array!, "Paths", "Paths on one controller", "Cluster live")).toEqual(["2", "1", "no"]);
    expect(fieldsOf(array!, "First port", "First address", "First netmask")).toEqual(["A 0", "10.0.1.1", "255.255.255.0"]);
  });

  test("are, of live clusters, those that its arrays join and that others use already", () => {
    const rest = { site: "Mill", cluster: "C" } as const;
    const two = { arrays: [{ ...rest, id: "A1", array: "a1", clusterOrder: 1 }, { ...rest, id: "A2", array: "a2", clusterOrder: 2 }] };
    const live = (state: "new" | "existing", arrays: string) => {
      const subjects = subjectsOf({ ...two, clusters: [{ cluster: "C", state }] }, [{ job: "J", site: "Mill", arrays }]);
      return (["cluster", "live cluster"] as const).map((kind) => listed(kind, subjects));
    };
    expect(live("new", "")).toEqual([["A1.cluster = C"], []]);
    expect(live("new", "a2")).toEqual([[], ["A1.cluster = C"]]);
    expect(live("existing", "a1")).toEqual([["A1.cluster = C"], ["A1.cluster = C"]]);
  });

  test("are refused where controllers cannot be read, or a prompt names what no table has", () => {
    const [first, ...others] = rows.arrays;
    expect(problemOf(() => subjectsOf({ arrays: [{ ...first, controllers: "A,A" }, ...others] }).list("controller")).argument).toBe("Controllers");
    expect(problemOf(() => subjectsOf({ prompts: [{ model: "Elm", prompt: "Colour", value: "{{Paint}}" }] }).list("prompt")).sentence).toBe(
      'Prompt Colour names "Paint", which no table in reach has. Write the header of a column, such as {{Array}}.',
    );
  });
});

describe("the fields of a subject", () => {
  test("are, for the site, those of site and job", () => {
    const [site] = subjectsOf().list("site");
    expect(fieldsOf(site!, "Room", "Job", "Subject", "Job.Site")).toEqual(["M.1", "First", "shelf 3", "Mill"]);
    expect(() => fieldsOf(site!, "Array")).toThrow("no table in reach has");
  });

  test("are, for a cluster, its own and those of its network", () => {
    const [cluster] = subjectsOf().list("cluster");
    expect(fieldsOf(cluster!, "Shared address", "Prefix", "VLAN", "Netmask", "Prefix length", "Room")).toEqual(["10.0.0.9", "10.0.0.0/24", "100", "255.255.255.0", "24", "M.1"]);
  });

  test("are, for a pool, its own, its cluster's and that network's; blank where it has no cluster", () => {
    const [pool, alone] = subjectsOf().list("pool");
    expect(fieldsOf(pool!, "Fill limit", "Cluster", "Shared address", "VLAN")).toEqual(["85.5%", "C", "10.0.0.9", "100"]);
    expect(fieldsOf(alone!, "Fill limit", "Cluster", "Shared address", "VLAN", "Netmask")).toEqual(["", "", "", "", ""]);
  });

  test("are, for an array, its own and those of its pool, cluster, rack and cluster network", () => {
    const [second, first, alone] = subjectsOf().list("array");
    expect(fieldsOf(first!, "Array", "Fill limit", "Shared address", "Rack.Units", "VLAN", "Cluster act", "Room")).toEqual(["a1", "85.5%", "10.0.0.9", "42", "100", "join", "M.1"]);
    expect(fieldsOf(second!, "Array", "Cluster act", "Rack")).toEqual(["a2", "create", ""]);
    expect(fieldsOf(alone!, "Array", "Fill limit", "Cluster", "Rack.Units", "VLAN")).toEqual(["New One", "", "", "", ""]);
  });

  test("are, for a controller, its name, whether it is the first, and the array's", () => {
    expect(subjectsOf().list("controller").map((one) => fieldsOf(one, "Controller", "First controller", "Array", "Rack.Units"))).toEqual([["A", "yes", "a1", "42"], ["B", "no", "a1", "42"]]);
  });

  test("are, for a port, its own, its controller's and those of its own network, not of the cluster's", () => {
    const ports = subjectsOf().list("port");
    const of = (...names: string[]) => ports.map((one) => fieldsOf(one, ...names));
    expect(of("Controller", "First controller")).toEqual([["X", "yes"], ["Y", "no"], ["A", "yes"], ["B", "no"], ["A", "yes"], ["A", "yes"], ["A", "yes"]]);
    expect(of("VLAN", "Prefix length")).toEqual([["", ""], ["7", "64"], ["100", "24"], ["100", "24"], ["7", "64"], ["7", "64"], ["", ""]]);
    // RFC 792 and RFC 8200: an echo request takes 28 bytes beside its payload in IPv4, 48 in IPv6.
    expect(of("Port MTU", "Ping size", "Ping too large")).toEqual([
      ["1500", "1472", "1473"], ["9000", "8952", "8953"], ["1500", "1472", "1473"], ["4000", "3972", "3973"], ["9000", "8952", "8953"], ["9000", "8952", "8953"], ["1500", "1452", "1453"],
    ]);
    expect(of("Array", "Shared address", "Site")[2]).toEqual(["a1", "10.0.0.9", "Mill"]);
  });

  test("are, for a drive, the number of its bay and the array's", () => {
    expect(subjectsOf().list("drive").map((one) => fieldsOf(one, "Bay", "Array"))).toEqual([["1", "a2"], ["1", "a1"], ["2", "a1"]]);
  });

  test("are, for a prompt, its own with the value filled, and the array's", () => {
    const prompts = subjectsOf().list("prompt").slice(4);
    expect(prompts.map((one) => fieldsOf(one, "Prompt", "Value", "Array"))).toEqual([["Gateway", "", "a1"], ["Name", "a1 in R1", "a1"], ["name", "C", "a1"], ["Last", "yes", "a1"]]);
  });
});

describe("the fields of a model", () => {
  const elm = [{ model: "Elm", units: 4, controllers: "X,Y", supplySwitch: "yes", consoleLine: "9600 8N1" }] as const;

  test("are reached at its arrays, where their own cells are empty; a column of Models alone too", () => {
    const [a2, a1, fresh] = subjectsOf({ models: elm }).list("array");
    expect(fieldsOf(a1!, "Units", "Controllers", "Supply switch", "Console line", "Array.Supply switch", "Guide")).toEqual(["4", "A,B", "yes", "9600 8N1", "yes", ""]);
    expect(fieldsOf(a2!, "Units", "Controllers", "Controller count")).toEqual(["4", "X,Y", "2"]);
    expect(fieldsOf(fresh!, "Units", "Supply switch")).toEqual(["", ""]);
  });

  test("give an array its controllers", () => {
    expect(listed("controller", subjectsOf({ models: elm }))).toEqual(["A0002.X = a2 X", "A0002.Y = a2 Y", "A0003.A = a1 A", "A0003.B = a1 B"]);
  });

  test("are blank, not unknown, in a plan without the table Models", () => {
    expect(fieldsOf(subjectsOf().list("array")[0]!, "Supply switch", "Console line")).toEqual(["", ""]);
  });
});

describe("drives that have rows of their own", () => {
  const drives = [
    { array: "a1", bay: 2, serial: "D-2", size: "4" }, { array: "a1", shelf: "S1", bay: 1, serial: "D-9" }, { array: "a2", bay: 1, serial: "old", takenOut: "2026-05-01" },
    { array: "a2", bay: 1, serial: "new" }, { array: "a2", bay: 1, serial: "both" },
  ];

  test("are by bay, those of the chassis first; bays keep the ids that they had without rows, and two drives in one bay have two", () => {
    expect(listed("drive", subjectsOf({ drives }))).toEqual([
      "A0002.bay-1 = a2 bay 1", "A0002.bay-1.2 = a2 bay 1", "A0003.bay-2 = a1 bay 2", "A0003.s1.bay-1 = a1 S1 bay 1",
    ]);
  });

  test("are reached with the columns of their rows, the array's serial number by its name", () => {
    const [first, , second, third] = subjectsOf({ drives }).list("drive");
    expect(fieldsOf(first!, "Serial", "Bay", "Array", "Shelf")).toEqual(["new", "1", "a2", ""]);
    expect(fieldsOf(second!, "Drive.Serial", "Size", "Array.Serial", "Rack.Units")).toEqual(["D-2", "4 TB", "", "42"]);
    expect(fieldsOf(third!, "Serial", "Shelf", "Bay")).toEqual(["D-9", "S1", "1"]);
  });

  test("have blank columns where the plan has no row", () => {
    expect(fieldsOf(subjectsOf().list("drive")[0]!, "Drive.Serial", "Firmware", "Taken out")).toEqual(["", "", ""]);
  });
});
