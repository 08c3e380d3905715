import { controllersOf, portLabel, portUse } from "../../../../src/planning/plan/model";
import type { TableRow } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const array = { array: "a1", site: "Mill", controllers: "A,B", ports: "0,1,2" } as const;
const networks = [
  { network: "n1", site: "Mill", prefix: "10.1.0.0/24" },
  { network: "n2", site: "Mill", prefix: "10.2.0.0/24" },
  { network: "broken", site: "Mill", prefix: "10.3.0.1/24" },
  { network: "far", site: "Yard", prefix: "10.4.0.0/24" },
];

function expected(more: TableRow<"arrays"> = {}, ports: readonly TableRow<"ports">[] = [], own: readonly TableRow<"networks">[] = networks): string[] {
  const model = modelOf({ arrays: [{ ...array, ...more }], networks: own, ports });
  return model.ports.expected(model.rows("arrays")[0]!).map(({ controller, port, network, row }) => `${controller}/${port} ${network.row.network}${row === null ? "" : ` row ${row.row}`}`);
}

describe("the ports that an array ought to have", () => {
  test("come controller by controller, and take the networks of the site in turn that can be read", () => {
    expect(expected()).toEqual(["A/0 n1", "A/1 n2", "A/2 n1", "B/0 n1", "B/1 n2", "B/2 n1"]);
  });

  test("take the networks of each family apart, those of the site before those that reach every site", () => {
    const both = [...networks, { network: "v6a", site: "Mill", prefix: "fd00:1::/64" }, { network: "v6b", prefix: "fd00:2::/64" }, { network: "v6c", site: "Mill", prefix: "fd00:3::/64" }];
    expect(expected({ controllers: "1" }, [], both)).toEqual(["A/0 n1", "A/0 v6a", "A/1 n2", "A/1 v6c", "A/2 n1", "A/2 v6b"]);
    expect(expected({ controllers: "1" }, [], both.slice(4))).toEqual(["A/0 v6a", "A/1 v6c", "A/2 v6b"]);
  });

  test.each([
    ["controllers are blank", { controllers: null }],
    ["controllers cannot be read", { controllers: "A,A" }],
    ["ports are blank", { ports: null }],
    ["ports cannot be read", { ports: "0,0" }],
    ["there is no site", { site: null }],
    ["no network reaches the site", { site: "Hill" }],
  ])("are none where %s", (_, more) => {
    expect(expected(more)).toEqual([]);
  });

  test("are none of an array without a site, even where a network reaches every site", () => {
    const everywhere = [{ network: "all", prefix: "10.9.0.0/24" }];
    expect(expected({}, [], everywhere)[0]).toBe("A/0 all");
    expect(expected({ site: null }, [], everywhere)).toEqual([]);
  });

  test("have the row of their socket, without case, the first of two, and the network that it names", () => {
    const ports = [
      { array: "A1", controller: "b", port: "1", network: "n1" },
      { array: "a1", controller: "B", port: "1", network: "n2" },
      { array: "other", controller: "A", port: "0", network: "n2" },
    ];
    expect(expected({}, ports)).toEqual(["A/0 n1", "A/1 n2", "A/2 n1", "B/0 n1", "B/1 n1 row 4", "B/2 n1"]);
  });

  test("keep their turn where the row names a network that cannot be read", () => {
    expect(expected({ controllers: "1" }, [{ array: "a1", controller: "A", port: "1", network: "broken" }])).toEqual(["A/0 n1", "A/1 n2 row 4", "A/2 n1"]);
  });

  test("go by the family of the address where the row names no network", () => {
    const both = [...networks, { network: "v6", site: "Mill", prefix: "fd00::/64" }];
    const ports = [{ array: "a1", controller: "A", port: "0", address: "fd00::7" }];
    expect(expected({ controllers: "1", ports: "1" }, ports, both)).toEqual(["A/0 n1", "A/0 v6 row 4"]);
  });

  test("take a row that names neither network nor address for the first family that lacks one, and once", () => {
    const both = [...networks, { network: "v6", site: "Mill", prefix: "fd00::/64" }];
    const open = { array: "a1", controller: "A", port: "0" };
    expect(expected({ controllers: "1", ports: "1" }, [open], both)).toEqual(["A/0 n1 row 4", "A/0 v6"]);
    expect(expected({ controllers: "1", ports: "1" }, [open, { ...open, network: "n2" }], both)).toEqual(["A/0 n2 row 5", "A/0 v6 row 4"]);
  });

  test("are missing where they have no row", () => {
    const model = modelOf({ arrays: [array], networks, ports: [{ array: "a1", controller: "A", port: "1" }] });
    const [row] = model.rows("arrays");
    expect(model.ports.missing(row!).map(portLabel)).toEqual(["A/0", "A/2", "B/0", "B/1", "B/2"]);
    expect(model.ports.missing(row!)).toBe(model.ports.missing(row!));
  });
});

describe("a row of the Ports table", () => {
  const { ports } = modelOf({
    arrays: [array, { array: "A1", site: "Yard" }],
    networks,
    switches: [{ switch: "sw1", site: "Mill" }],
    ports: [
      { array: "a1", controller: " a ", port: "0", network: "N1", address: "10.1.0.5", switch: "SW1" },
      { array: "nobody", controller: "A", port: "1", network: "none such", address: "10.1", switch: "none such" },
      { array: "a1" },
    ],
  });

  test("is read with what it names: the array first of that name, network, address, switch and socket", () => {
    const [first, second, third] = ports.all();
    expect(first).toMatchObject({ array: { row: 4 }, network: { row: { network: "n1" } }, address: { family: 4 }, to: { switch: "sw1" }, socket: "a\n0" });
    expect(second).toMatchObject({ array: null, network: null, address: null, to: null, socket: "a\n1" });
    expect(third).toMatchObject({ array: { row: 4 }, network: null, address: null, to: null, socket: "\n" });
  });

  test("belongs to the array that it names", () => {
    const model = modelOf({ arrays: [array, { array: "empty" }], ports: [{ array: "a1", port: "0" }, { array: "x" }, { array: "A1", port: "1" }] });
    const [first, second] = model.rows("arrays");
    expect(model.ports.of(first!).map(({ row }) => row.port)).toEqual(["0", "1"]);
    expect(model.ports.of(second!)).toEqual([]);
  });
});

describe("the sockets of an array", () => {
  const socketsOf = (controllers: string | null, ports: string | null) => {
    const model = modelOf({ arrays: [{ ...array, controllers, ports }] });
    return model.ports.socketsOf(model.rows("arrays")[0]!);
  };

  test("count the place of each port on its controller", () => {
    expect(socketsOf("2", "X,Y")).toEqual([
      { controller: "A", port: "X", at: 0, socket: "a\nx" }, { controller: "A", port: "Y", at: 1, socket: "a\ny" },
      { controller: "B", port: "X", at: 0, socket: "b\nx" }, { controller: "B", port: "Y", at: 1, socket: "b\ny" },
    ]);
  });

  test.each([[null, "2"], ["2", null], ["A,A", "2"], ["2", "0,0"]])("are not known with controllers %s and ports %s", (controllers, ports) => {
    expect(socketsOf(controllers, ports)).toBeNull();
  });

  test("name the controllers alone, where those can be read", () => {
    const [good, bad, blank] = modelOf({ arrays: [array, { ...array, controllers: "A,A" }, { ...array, controllers: null }] }).rows("arrays");
    expect([good!, bad!, blank!].map(controllersOf)).toEqual([["A", "B"], null, null]);
  });
});

test("a port is called by controller and port, or by the port alone", () => {
  expect(portLabel({ controller: "A", port: "0" })).toBe("A/0");
  expect(portLabel({ controller: "", port: "0" })).toBe("0");
});

test("controllers that share the address of a port number use it once together, others each", () => {
  const [a, b] = [{ controller: "A", port: "P" }, { controller: "b", port: "p" }];
  expect(portUse("X", "array", a)).toBe(portUse("x", "array", b));
  expect(portUse("X", "controller", a)).not.toBe(portUse("x", "controller", b));
  expect(portUse("X", "", a)).toBe(portUse(" x ", "controller", { controller: "a", port: "p" }));
  expect(portUse("X", "array", a)).not.toBe(portUse("X", "array", { controller: "A", port: "Q" }));
  expect(portUse("X", "array", a)).not.toBe(portUse("Y", "array", a));
});
