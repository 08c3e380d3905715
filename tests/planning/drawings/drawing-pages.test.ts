import fc from "fast-check";
import { SaxesParser } from "saxes";
import { assignPlanAddresses, proposeCabling } from "../../../src/planning/assignment";
import { drawingPages, svgOf, type DrawingPage, type TextMark } from "../../../src/planning/drawings";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRow } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { carryOut } from "../../support/plan-changes";
import { editable, sample, workbookWith, type EditableRows } from "../../support/plan-rows";
import { snapshotOf } from "../../support/plain-workbook";

const [site, pointsPerMm] = ["Mill", 72 / 25.4];
const texts = (page: DrawingPage): readonly TextMark[] => page.marks.filter((mark) => mark.kind === "text");
const words = (pages: readonly DrawingPage[]): readonly string[] => pages.flatMap((page) => texts(page).map(({ text }) => text));
const cabling = (pages: readonly DrawingPage[]): readonly DrawingPage[] => pages.filter(({ kind }) => kind === "cabling");
const modelOf = (rows: EditableRows): PlanModel => new PlanModel(workbookWith(rows));

interface Size {
  readonly arrays: number;
  readonly controllers: number;
  readonly ports: number;
  readonly switches: number;
  readonly hosts: number;
  readonly racks: number;
  readonly namePart: string;
  readonly isCabled: boolean;
}

const count = <Item>(many: number, of: (at: number) => Item): Item[] => Array.from({ length: many }, (_, at) => of(at));

/** Makes a plan of one site of so many devices, with addresses and cables as they are proposed, or with neither. */
function planOf({ arrays, controllers, ports, switches, hosts, racks, namePart, isCabled }: Size): PlanModel {
  const hostPort = (card: string, network: string) => (at: number): TableRow<"hostPorts"> => ({ host: `h${at}${namePart}`, card, network });
  const workbook = snapshotOf(planSetUp({ sheets: [] }, {
    sites: [{ site, room: "Loft" }],
    racks: count(racks, (at) => ({ rack: `R${at}`, site, units: 42, numberedFrom: at % 2 === 0 ? "bottom" : "top" } as const)),
    feeds: [{ feed: "F1", site, volts: 230, phases: 1, breakerA: 16 }],
    networks: [
      { network: `one${namePart}`, site, prefix: "10.1.0.0/22", gateway: "none", role: "data", side: "A" },
      { network: "two", site, prefix: "10.2.0.0/22", gateway: "none", role: "data", side: "B" },
      { network: "six", site, prefix: "fd00:1::/64", gateway: "none", role: "data", side: "A" }, { network: "ctl", site, prefix: "10.3.0.0/22", role: "management" },
    ],
    switches: count(switches, (at) => ({
      switch: `s${at}${namePart}`, site, rack: `R${at % racks}`, bottomUnit: 38 + (at % 3), ports: at % 3 === 0 ? "" : "48", networks: `one${namePart}, two, six, ctl`,
    })),
    pools: [{ pool: "P", fillLimit: 0.8 }],
    arrays: count(arrays, (at) => ({
      array: `a${at}${namePart}`, site, rack: at % 5 === 4 ? "" : `R${at % racks}`, bottomUnit: at % 7 === 6 ? 40 : 1 + 2 * Math.floor(at / racks), units: 2, watts: 400,
      feedA: "F1",
      controllers: String(controllers), ports: String(ports), pool: "P", drives: 12, driveSize: "4 TB", scheme: at % 6 === 5 ? "" : "RAID 6", used: "3 TB",
    })),
    hosts: count(hosts, (at) => ({ host: `h${at}${namePart}`, site })),
    hostPorts: [...count(hosts, hostPort("c1", "two")), ...count(hosts, hostPort("c2", "ctl"))],
    links: switches > 1 ? [{ from: `s0${namePart}`, to: `s1${namePart}` }] : [],
  }));
  if (!isCabled) return new PlanModel(workbook);
  const addressed = carryOut(workbook, assignPlanAddresses(workbook));
  return new PlanModel(carryOut(addressed, proposeCabling(addressed)));
}

const plans: fc.Arbitrary<Size> = fc.record({
  arrays: fc.integer({ min: 0, max: 24 }), controllers: fc.integer({ min: 1, max: 3 }), ports: fc.integer({ min: 1, max: 9 }), switches: fc.integer({ min: 1, max: 5 }),
  hosts: fc.integer({ min: 0, max: 12 }), racks: fc.integer({ min: 1, max: 4 }), isCabled: fc.boolean(),
  namePart: fc.constantFrom("", "-of-a-name-that-is-far-longer-than-its-column-of-the-drawing", "<&\"'>", "地図館の保管庫", "WWWWWWWW"),
});

/** Lists pairs of texts of a page that touch: letters reach three quarters of their size above the line they stand on and a fifth below it. */
function touching(page: DrawingPage): string[] {
  const areas = texts(page).map(({ x, y, size, width, text }) => ({ left: x, right: x + width, top: y - 0.75 * size, bottom: y + 0.2 * size, text })).sort((a, b) => a.top - b.top);
  return areas.flatMap((one, at) => {
    const found: string[] = [];
    for (let next = at + 1; next < areas.length && areas[next]!.top < one.bottom; next += 1) {
      const other = areas[next]!;
      if (one.left < other.right && other.left < one.right) found.push(`${page.title}: ${one.text} / ${other.text}`);
    }
    return found;
  });
}

/** Lists marks that reach beyond the page. */
function outside(page: DrawingPage): string[] {
  return page.marks.flatMap((mark) => {
    const points: readonly (readonly [number, number])[] =
      mark.kind === "line" ? mark.points
      : mark.kind === "rect" ? [[mark.x, mark.y], [mark.x + mark.width, mark.y + mark.height]]
      : [[mark.x, mark.y - mark.size], [mark.x + mark.width, mark.y + 0.25 * mark.size]];
    return points.every(([x, y]) => x >= 7.9 && y >= 7.9 && x <= page.width - 7.9 && y <= page.height - 7.9) ? [] : [`${page.title}: ${JSON.stringify(mark)}`];
  });
}

function readAsXml(document: string): string[] {
  const parser = new SaxesParser({ xmlns: true });
  const told: string[] = [];
  parser.on("error", (fault) => { throw fault; });
  parser.on("text", (text) => told.push(text));
  parser.write(document).close();
  return told.map((text) => text.trim()).filter((text) => text !== "");
}

const samplePages = ["Reading Room", "Bindery", "Cold Store"].map((name) => [name, drawingPages(modelOf(sample()), name)] as const);
const twenty: Size = { arrays: 20, controllers: 2, ports: 4, switches: 4, hosts: 10, racks: 4, namePart: "", isCabled: true };

describe("every page of drawings, over random plans and the sample", () => {
  const always = (holds: (pages: readonly DrawingPage[]) => void): void => {
    for (const [, pages] of samplePages) holds(pages);
    fc.assert(fc.property(plans, (size) => holds(drawingPages(planOf(size), site, { madeAt: "2026-05-31 14:05", planName: "mill.xlsx" }))), { numRuns: 20, seed: 20260531 });
  };

  test("is A3, landscape (ISO 216), and everything stands inside its frame", () => always((pages) => {
    for (const { width, height } of pages) expect([width, height]).toEqual([420, 297]);
    expect(pages.flatMap(outside)).toEqual([]);
  }));

  test("has no text that touches another", () => always((pages) => expect(pages.flatMap(touching)).toEqual([])));

  test("has no text under 7 point on paper", () => always((pages) => {
    for (const page of pages) for (const { size } of texts(page)) expect(size * pointsPerMm).toBeGreaterThanOrEqual(7);
  }));

  test("is well-formed XML with all its texts, in the judgement of a general parser", () => always((pages) => {
    for (const page of pages) expect(readAsXml(svgOf(page))).toEqual([page.title, page.summary, ...texts(page).map(({ text }) => text.trim())].map((text) => text.trim()));
  }));

  test("says which of how many it is", () => always((pages) => {
    pages.forEach((page, at) => expect(words([page])).toContain(`Page ${at + 1} of ${pages.length}`));
  }));
});

test("the same plan gives the same pages, to the letter", () => {
  const drawn = () => drawingPages(planOf(twenty), site).map(svgOf);
  expect(drawn()).toEqual(drawn());
});

describe("the cabling drawing", () => {
  test("has every port of every array and host exactly once, with its address, over random plans", () => {
    fc.assert(fc.property(plans, (size) => {
      const named = { ...size, namePart: "" };
      const model = planOf(named);
      const told = words(cabling(drawingPages(model, site)));
      const counts = new Map<string, number>();
      for (const word of told) counts.set(word, (counts.get(word) ?? 0) + 1);
      for (const { address } of [...model.rows("ports"), ...model.rows("hostPorts")]) if (address !== "") expect([address, counts.get(address)]).toEqual([address, 1]);
      const sockets = new Set(model.rows("arrays").flatMap((array) => (model.ports.socketsOf(array) ?? []).map(({ controller, port }) => `${controller}/${port}`)));
      for (const socket of sockets) expect([socket, counts.get(socket)]).toEqual([socket, size.arrays]);
      for (const card of ["c1", "c2"]) expect(counts.get(card) ?? 0).toBe(size.hosts);
      if (!size.isCabled) return;
      // The other end of a cable is named at each of its two ends.
      for (const { switch: to, switchPort, array, controller, port } of model.rows("ports")) {
        if (switchPort === "") continue;
        expect(counts.get(`${to} port ${switchPort}`)).toBe(1);
        expect(counts.get(`${array} port ${controller}/${port}`)).toBe(1);
      }
    }), { numRuns: 20, seed: 20260531 });
  });

  test("is one page with a line a cable where a site is small", () => {
    const [page, ...others] = cabling(samplePages[0]![1]);
    expect(others).toEqual([]);
    // Twelve cables of arrays and two links of the host go from column to column: each bends twice.
    expect(page!.marks.filter((mark) => mark.kind === "line" && mark.points.length === 4)).toHaveLength(14);
  });

  test("is a page a rack, a page two switches and one for the hosts at 20 arrays, and each end says the page of the other", () => {
    const pages = drawingPages(planOf(twenty), site);
    expect(cabling(pages).map(({ title }) => title)).toEqual([
      "Cabling, rack R0", "Cabling, rack R1", "Cabling, rack R2", "Cabling, rack R3", "Cabling of arrays without a rack",
      "Cabling, switches s0 and s1", "Cabling, switches s2 and s3", "Cabling, hosts",
    ]);
    const switchPage = pages.findIndex(({ title }) => title.includes("s0 and s1")) + 1;
    expect(words(pages.filter(({ title }) => title === "Cabling, rack R0"))).toContain(`p. ${switchPage}`);
  });

  test("draws sides and roles with strokes that differ without their colour, and names them in its legend", () => {
    const [page] = cabling(drawingPages(planOf({ ...twenty, arrays: 2, ports: 3 }), site));
    const strokeOf = (kind: string): string => {
      const name = texts(page!).filter(({ text }) => text === kind).at(-1)!;
      const sign = page!.marks.find((mark) => mark.kind === "line" && mark.points.length === 2 && Math.abs(mark.points[1]![1] - name.y + 0.9) < 0.01 && name.x - mark.points[1]![0] === 2);
      return sign?.kind === "line" ? sign.stroke.dashes.join(" ") : "none found";
    };
    const dashes = ["side A", "side B", "management"].map(strokeOf);
    expect(dashes).not.toContain("none found");
    expect(new Set(dashes).size).toBe(3);
  });

  test("says at the port and below the drawing what is not cabled", () => {
    const rows = sample();
    for (const row of rows.ports.filter(({ array }) => array === "rr-array-1").slice(0, 3)) row["switch"] = row["switchPort"] = "";
    const told = words(cabling(drawingPages(modelOf(rows), "Reading Room")));
    expect(told.filter((word) => word === "no cable")).toHaveLength(3);
    expect(told).toContainEqual(expect.stringContaining("3 ports without a cable"));
  });

  test("draws a port that has no row in Ports, and a switch that has no row in Switches by its name", () => {
    const rows = sample();
    rows.ports = rows.ports.filter(({ array, port }) => array !== "rr-array-1" || port !== "2");
    rows.ports.find(({ array }) => array === "rr-array-2")!["switch"] = "sw-of-others";
    const told = words(cabling(drawingPages(modelOf(rows), "Reading Room")));
    expect(told.filter((word) => word === "not in Ports")).toHaveLength(2);
    expect(told.some((word) => word.startsWith("sw-of-others port"))).toBe(true);
    expect(told).toContainEqual(expect.stringContaining("1 cable to a switch that is not in Switches"));
  });

  test("shortens a long name in its middle, where it can be seen", () => {
    const rows = sample();
    const long = `archive-${"x".repeat(90)}-seven`;
    rows.hosts[0]!["host"] = long;
    const told = words(cabling(drawingPages(modelOf(rows), "Reading Room")));
    expect(told).toContainEqual(expect.stringMatching(/^archive-x+…x+-seven$/));
  });
});

describe("the other drawings", () => {
  test("begin with what hosts can store, then say what the raw capacity goes to", () => {
    const [first] = samplePages[2]![1];
    expect(texts(first!)[0]!.text).toMatch(/^Masters: .* to hosts$/);
  });

  test("show a rack from the front with weights, and from the rear with feeds and ports", () => {
    const told = words(samplePages[0]![1].filter(({ kind }) => kind === "racks"));
    expect(told).toEqual(expect.arrayContaining(["Front", "Rear", "units 10 to 13, 46 kg, Alder 24", "feed A RR-A, feed B RR-B", "ports A/0 A/1 A/2 B/0 B/1 B/2"]));
  });

  test("carry their cautions: lifting and anchoring at racks, a licensed electrician at feeds", () => {
    const all = samplePages[0]![1];
    expect(words(all.filter(({ kind }) => kind === "racks")).join(" ")).toContain("Anchor the rack");
    expect(words(all.filter(({ kind }) => kind === "feeds")).join(" ")).toContain("A licensed electrician and the local code decide");
  });

  test("are none for a site that the plan does not name", () => expect(drawingPages(modelOf(editable({})), "Nowhere")).toEqual([]));
});

test("letters that XML cannot hold become the sign for them, and markup stays text", () => {
  const rows = sample();
  rows.switches[0]!["switch"] = "<b>\u0001\ud800&\"";
  const pages = cabling(drawingPages(modelOf(rows), "Reading Room"));
  expect(pages.flatMap((page) => readAsXml(svgOf(page)))).toContain("<b>\ufffd\ufffd&\"");
});
