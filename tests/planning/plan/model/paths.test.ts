import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const site = { site: "Mill" };
const base = {
  switches: [{ switch: "s1", ...site }, { switch: "s2", ...site }, { switch: "s3", ...site }],
  hosts: [{ host: "h", ...site }],
  arrays: [{ array: "a", ...site, controllers: "A,B" }],
} satisfies TableRows;

/** Ports of array a, written `A0>s1`. */
const cables = (...texts: string[]): TableRow<"ports">[] =>
  texts.map((text) => ({ array: "a", controller: text[0] ?? "", port: text.slice(1, text.indexOf(">")), switch: text.slice(text.indexOf(">") + 1) }));
/** Links, written `s1-h`. */
const links = (...texts: string[]): TableRow<"links">[] => texts.map((text) => ({ from: text.split("-")[0] ?? "", to: text.split("-")[1] ?? "" }));

function pointsOf(ports: TableRow<"ports">[], own: TableRow<"links">[], more: TableRows = {}): (string | null)[] {
  return modelOf({ ...base, ports, links: own, ...more }).paths.all().map(({ host, array, points }) =>
    `${host.host} ${array.array}: ${points === null ? "parted" : points.map(({ kind, name }) => `${kind} ${name}`).sort().join(", ")}`,
  );
}

describe("the paths between hosts and arrays", () => {
  test("have no single point where two controllers reach two switches, and both the host", () => {
    expect(pointsOf(cables("A0>s1", "B0>s2"), links("s1-h", "h-s2"))).toEqual(["h a: "]);
  });

  test("have the only switch of the host and its link as single points", () => {
    expect(pointsOf(cables("A0>s1", "B0>s2"), links("s1-h", "s2-s1"))).toEqual(["h a: link s1 - h, node s1"]);
  });

  test("have the one switch on which all paths meet, and its link to the next", () => {
    expect(pointsOf(cables("A0>s1", "B0>s1"), links("s1-s3", "s3-h"))).toEqual(["h a: link s1 - s3, link s3 - h, node s1, node s3"]);
  });

  test("have one controller as a single point where the other is not cabled, but not the way to it", () => {
    expect(pointsOf(cables("A0>s1", "A1>s2"), links("s1-h", "s2-h"))).toEqual(["h a: node controller A"]);
  });

  test("have a lone cable as a single point, and two that run alike not", () => {
    expect(pointsOf(cables("A0>s1"), links("s1-h", "s1-s2", "s2-h"))).toEqual(["h a: link controller A - s1, node controller A, node s1"]);
    expect(pointsOf(cables("A0>s1", "A1>s1"), links("s1-h", "s1-s2", "s2-h"))).toEqual(["h a: node controller A, node s1"]);
  });

  test("count two addresses of one port as one cable", () => {
    expect(pointsOf(cables("A0>s1", "A0>s1"), links("s1-h", "s1-s2", "s2-h"))).toEqual(["h a: link controller A - s1, node controller A, node s1"]);
  });

  test("count the cables of two controllers apart, though the array does not say that it has two", () => {
    const unsaid = { arrays: [{ array: "a", ...site }] };
    expect(pointsOf(cables("A0>s1", "B0>s1"), links("s1-h", "s1-s2", "s2-h"), unsaid)).toEqual(["h a: node s1"]);
    expect(pointsOf(cables("A0>s1", "a0>s1"), links("s1-h", "s1-s2", "s2-h"), unsaid)).toEqual(["h a: link the array - s1, node s1"]);
  });

  test("are not told of a host without a link beside one that has some", () => {
    const more = { hosts: [...base.hosts, { host: "g", ...site }] };
    expect(pointsOf(cables("A0>s1", "B0>s2"), links("s1-h", "h-s2"), more)).toEqual(["h a: "]);
  });

  test("take a lone controller for the array itself", () => {
    expect(pointsOf(cables("A0>s1"), links("s1-h", "s2-h", "s1-s2"), { arrays: [{ array: "a", ...site, controllers: "A" }] })).toEqual(["h a: link the array - s1, node s1"]);
    expect(pointsOf(cables("A0>s1"), links("s1-h", "s2-h", "s1-s2"), { arrays: [{ array: "a", ...site }] })).toEqual(["h a: link the array - s1, node s1"]);
  });

  test("name switches, controllers and hosts without case", () => {
    expect(pointsOf(cables("A0>S1", "a1>s2"), links("S1-H", "h-S2"))).toEqual(["h a: node controller A"]);
  });

  test("lead over no other host and no other array", () => {
    const more = { hosts: [...base.hosts, { host: "g", ...site }] };
    expect(pointsOf(cables("A0>s1", "B0>s1"), links("s1-g", "g-s2", "s2-h"), more)).toEqual(["h a: parted", "g a: link s1 - g, node s1"]);
  });

  test("are not there where nothing joins host and array, and not told where either has no cable at all", () => {
    expect(pointsOf(cables("A0>s1"), links("s2-h"))).toEqual(["h a: parted"]);
    expect(pointsOf([], links("s2-h"))).toEqual([]);
    expect(pointsOf(cables("A0>s1"), [])).toEqual([]);
    expect(pointsOf(cables("A0>none"), links("s1-h"))).toEqual([]);
  });

  test("are those of a site: hosts and arrays of another are not compared", () => {
    const more = { hosts: [...base.hosts, { host: "far", site: "Yard" }], arrays: [...base.arrays, { array: "b", site: "Yard" }] };
    expect(pointsOf([
      ...cables("A0>s1", "B0>s2"), { array: "b", port: "0", switch: "s3" },
    ], links("s1-h", "s2-h", "s3-far"), more)).toEqual(["h a: ", "far b: link s3 - far, link the array - s3, node s3"]);
  });

  test("are the same for arrays that are cabled alike, whatever the order of their rows, each with its own name", () => {
    const more = { arrays: [...base.arrays, { array: "b", ...site, controllers: "A,B" }] };
    const twin = [{ array: "b", controller: "B", port: "0", switch: "s1" }, { array: "b", controller: "A", port: "0", switch: "s1" }];
    const points = modelOf({ ...base, ...more, ports: [...cables("A0>s1", "B0>s1"), ...twin], links: links("s1-h", "s1-s1", "s1-nowhere") }).paths.all();
    expect(points.map(({ array }) => array.array)).toEqual(["a", "b"]);
    expect(points[1]!.points).toBe(points[0]!.points);
    expect(points[0]!.points!.map(({ name }) => name).sort()).toEqual(["s1", "s1 - h"]);
  });

  test("of two hosts are told apart: each has its own links", () => {
    const more = { hosts: [...base.hosts, { host: "g", ...site }] };
    expect(pointsOf(cables("A0>s1", "B0>s2"), links("s1-h", "s2-h", "s2-g", "s2-s1"), more)).toEqual(["h a: ", "g a: link s2 - g, node s2"]);
  });
});

describe("the switches of a host", () => {
  const model = modelOf({ ...base, hosts: [{ host: "h" }, { host: "g" }, { host: "f" }], links: links("S1-h", "H-s2", "h-other", "g-s1", "s1-G", "s1-s2") });
  const [h, g, f] = model.rows("hosts");

  test("are one a link, first those to which the link leads from the host", () => {
    expect(model.paths.switchesOf(h!)).toEqual(["s2", "s1"]);
    expect(model.paths.switchesOf(g!)).toEqual(["s1", "s1"]);
    expect(model.paths.switchesOf(f!)).toEqual([]);
  });

  test("are one where all links go to the same", () => {
    expect([h!, g!, f!].map((host) => model.paths.onlySwitchOfHost(host))).toEqual([null, "s1", null]);
  });
});

test("an array is on one switch where all its cabled ports go there, whether the switch has a row or not", () => {
  const only = (...texts: string[]) => {
    const model = modelOf({ ...base, ports: cables(...texts) });
    return model.paths.onlySwitchOf(model.rows("arrays")[0]!);
  };
  expect([only("A0>s1", "B0>S1", "B1>"), only("A0>gone"), only("A0>s1", "B0>s2"), only("A0>"), only()]).toEqual(["s1", "gone", null, null, null]);
});
