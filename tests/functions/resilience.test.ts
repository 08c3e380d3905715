import fc from "fast-check";
import { CellFault } from "../../src/functions/support/custom-functions";
import { availability, availBounds, cutSet, feedLoad, outage, pathCount, paths, place, singlePoints } from "../../src/functions/resilience";
import { cellAnswer } from "../support/cell-answer";

const links = [
  ["From", "To", "Unavailability"],
  ["host", "SW1", 0.001],
  ["host", "SW2", "0.1%"],
  ["", "", ""],
  ["sw1", "core", 0.001],
  ["sw2", "core", 0.001],
  ["Core", "array", 0],
];

describe("OUTAGE", () => {
  const placement = [
    ["Array", "Rack", "Feed", "Group", ""],
    ["A1", "R1", "A+B", 1, ""],
    ["A2", "R1", "A", 2, ""],
    ["", "", "", "", ""],
    ["A3", "R2", "B", 1, ""],
    ["A4", "R2", "A + B", 2, ""],
    ["A5", 7, "B", 1, ""],
    ["A6", 7, "A", 2, ""],
  ];

  test("answers a row for each domain and one for the worst pair", () => {
    expect(outage("RAID 5 2+1", placement)).toEqual([
      ["Domain", "Worst", "Lost", "Left", "Survives"],
      ["Rack", "R1", 2, 0, true],
      ["Feed", "A", 2, 0, false],
      ["Pair", "Feed A and Feed B", 6, 0, false],
    ]);
  });

  test("calls the columns of a placement without a header Column 2 and so on", () => {
    const rows = outage("RAID 10", [["A1", "R1"], ["A2", "R2"], ["A3", "R1"], ["A4", "R2"]]);
    expect(rows.slice(1)).toEqual([
      ["Column 2", "R1", 2, 0, true],
      ["Pair", "Column 2 R1 and Column 2 R2", 4, 0, false],
    ]);
  });

  // Forty members over ten racks: eight data and three parity pieces put two into one rack and one into the others.
  const overRacks = [["Member", "Rack"], ...Array.from({ length: 40 }, (_, index) => [`N${index + 1}`, `R${(index % 10) + 1}`])];

  test("a code that spreads by rack survives the loss of one, and of one only where any members may hold the pieces", () => {
    expect(outage("8+3", overRacks)[1]).toEqual(["Rack", "R1", 4, 0, false]);
    expect(outage("8+3", overRacks, "")).toEqual(outage("8+3", overRacks, "any"));
    expect(outage("8+3", overRacks, "By domain").slice(1)).toEqual([["Rack", "R1", 4, 1, true], ["Pair", "Rack R1 and Rack R2", 8, 0, true]]);
  });

  test("a Group column says which group each member is in, wherever it stands", () => {
    const rows = [["d1", "R1", 1], ["d2", "R1", 2], ["d3", "R2", 1], ["d4", "R2", 2]];
    expect(outage("RAID 10", [["Drive", "Rack"], ...rows.map(([drive, rack]) => [drive, rack])])[1]).toEqual(["Rack", "R1", 2, 0, false]);
    expect(outage("RAID 10", [["Drive", "Rack", "Group"], ...rows])[1]).toEqual(["Rack", "R1", 2, 0, true]);
    expect(outage("RAID 10", [["Group", "Drive", "Rack"], ...rows.map(([drive, rack, group]) => [group, drive, rack])])[1]).toEqual(["Rack", "R1", 2, 0, true]);
  });

  test.each([
    ["pieces by domain of a group", () => outage("RAID 6", overRacks, "by domain"), '#VALUE! pieces "by domain" is for codes spread over all drives, such as 8+3; RAID 6 is none. Leave it out.'],
    ["other pieces", () => outage("8+3", overRacks, "by rack"), '#VALUE! pieces is "by rack". Choose "any" or "by domain".'],
  ])("refuses %s", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });

  test.each([
    ["a domain left blank", [["Member", "Rack"], ["A1", "R1"], ["A2", ""]], "#VALUE! placement row 3 Rack is blank. Write a name."],
    ["a name missing beside a +", [["Member", "Feed"], ["A1", "A+"], ["A2", "B"]], '#VALUE! placement row 2 Feed "A+" lacks a name beside its +. Write two names, such as A+B.'],
    ["nothing", [["", ""]], "#VALUE! placement is blank. Give a range with a member and its domains, such as rack and feed, in each row."],
    ["members without a domain", [["Member", "Group"], ["A1", "1"]], "#VALUE! placement has no domains. Add columns behind the members, such as rack and feed."],
    ["an error cell", [["Member", "Rack"], ["A1", "#REF!"]], '#VALUE! placement row 2 Rack holds "#REF!". Mend that cell first.'],
  ])("refuses %s", (_, placement, sentence) => {
    expect(cellAnswer(() => outage("mirror", placement))).toBe(sentence);
  });
});

describe("PLACE", () => {
  test("puts each member beside its domain", () => {
    expect(place([["A1"], ["A2"], ["A3"]], [["Rack", "Room"], ["R1", 1], ["R2", ""]])).toEqual([
      ["Member", "Domain"],
      ["A1", "R1"],
      ["A2", "R2"],
      ["A3", "R2"],
    ]);
  });

  const six = ["m0", "m1", "m2", "m3", "m4", "m5"].map((member) => [member]);
  const rooms = [["R0", 2], ["R1", 4], ["R2", 1]];

  test("with a scheme, OUTAGE says that the loss of any one domain is survived; without it, chance decides", () => {
    expect(outage("RAID 10", place(six, rooms, "RAID 10"))[1]!.at(-1)).toBe(true);
    expect(outage("RAID 10", place(six, rooms))[1]!.at(-1)).toBe(false);
    expect(place(six, rooms, "")).toEqual(place(six, rooms));
  });

  test("a Group column takes the place of the layout order and comes back with the answer, so that OUTAGE reads it, sorted too", () => {
    const grouped = [["Group", "Member"], ...["a", "b", "b", "c", "c", "a"].map((group, index) => [group, `m${index}`])];
    for (const scheme of ["RAID 10", ""]) {
      const spill = place(grouped, rooms, scheme);
      expect(spill[0]).toEqual(["Member", "Domain", "Group"]);
      expect(spill.slice(1).map(([member, , group]) => [group, member])).toEqual(grouped.slice(1));
      for (const column of [0, 1, 2]) {
        const sorted = [spill[0]!, ...spill.slice(1).sort((one, other) => (String(one[column]) < String(other[column]) ? -1 : 1))];
        expect(outage("RAID 10", sorted)[1]!.at(-1)).toBe(true);
      }
    }
  });

  test.each([
    ["members that fill no group", () => place([["A1"], ["A2"], ["A3"]], [["R1"], ["R2"]], "RAID 10"),
      "#VALUE! members has 3 rows; RAID 10 takes at least 4. Give a row for every member, and no others."],
    ["a group of another size", () => place([["Member", "Group"], ["A1", 1], ["A2", 1], ["A3", 1]], [["R1"], ["R2"]], "RAID 10"),
      '#VALUE! members: group "1" has 3 members; RAID 10 takes 2 a group. Mend the Group column.'],
    ["a group left blank", () => place([["Member", "Group"], ["A1", 1], ["A2", ""]], [["R1"], ["R2"]]), "#VALUE! members row 3 group is blank. Write a name."],
    ["groups without members", () => place([["Group", "Domain"], [1, "R1"]], [["R1"]]), "#VALUE! members has no column Member. Add it, or leave out the header row."],
  ])("refuses %s", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });

  test.each([
    ["more members than room", [["R1", 1], ["R2", 1]], "#N/A domains have room for 2 of 3 members. Add a domain or more room."],
    ["a domain twice", [["R1", 1], ["r1", 1]], '#VALUE! domains row 2: "r1" stands twice. Give each domain one row.'],
    ["room that is no count", [["R1", 1.5]], "#VALUE! domains row 1 room is 1.5. Write a whole number from 0 to 100000, such as 4."],
    ["no domains", [[""]], "#VALUE! domains is blank. Give a range with the name of every domain, and its room if it has a bound."],
  ])("refuses %s", (_, domains, sentence) => {
    expect(cellAnswer(() => place([["A1"], ["A2"], ["A3"]], domains))).toBe(sentence);
  });
});

describe("questions about links", () => {
  test("names match without case, empty rows are skipped, further columns are left alone", () => {
    expect(singlePoints(links, "Host", "ARRAY")).toEqual([["core"], ["core - array"]]);
    expect(cutSet(links, "host", "core")).toEqual([["SW1"], ["SW2"]]);
    expect(paths(links, "host", "core")).toBe(2);
    expect(paths(links, "host", "core", "Link")).toBe(2);
  });

  test("availability is exact, with links and with nodes that fail", () => {
    expect(availability(links, "host", "array")).toBe(1 - 0.001999 ** 2);
    expect(availability(links, "host", "array", [["Node", "Unavailability"], ["core", 0.5]])).toBeCloseTo(0.5 * (1 - 0.001999 ** 2), 15);
  });

  const throughHost = [["host", "sw1", 0.1], ["h2", "sw1", 0], ["h2", "sw2", 0], ["array", "sw2", 0], ["sw1", "array", 0.1]];

  test("no path runs through a host that does not forward", () => {
    const bystander = [["h2", "", false]];
    const only = throughHost.slice(0, 4);
    expect([paths(only, "host", "array"), paths(only, "host", "array", "", bystander), paths(only, "host", "array", "link", bystander)]).toEqual([1, 0, 0]);
    expect(cellAnswer(() => singlePoints(only, "host", "array", bystander))).toBe(
      '#N/A links: nothing that forwards joins "host" to "array". Add the missing link or mend a name or nodes.');
    expect(singlePoints(throughHost, "host", "array", bystander)).toEqual([["host - sw1"], ["sw1"], ["sw1 - array"]]);
    expect(singlePoints(throughHost, "host", "array")).toEqual([["host - sw1"], ["sw1"]]);
    expect(cutSet(throughHost, "sw1", "array")).toHaveLength(2);
    expect(cutSet(throughHost, "sw1", "array", bystander)).toEqual([["sw1 - array"]]);
    expect(availability(throughHost, "host", "array", [["h2", 0, false]])).toBeCloseTo(0.81, 15);
    expect(availability(throughHost, "host", "array", [["h2", 0, true]])).toBeCloseTo(0.9, 15);
    expect(paths(only, "host", "array", "node", [["Forwards", "Node"], ["FALSE", "h2"]])).toBe(0);
  });

  test("the ends are reached though they do not forward", () => {
    expect(paths(throughHost, "sw1", "array", "node", [["sw1", "", false], ["host", "", false], ["array", "", "false"], ["h2", "", ""], ["sw2", "", true]])).toBe(2);
  });

  test("one table of nodes serves all questions: an unavailability is passed over where it is of no use", () => {
    const nodes = [["Node", "Availability", "Forwards", "Site"], ["sw1", 0.999, "", "x"], ["h2", "100%", false, "x"]];
    expect(paths(throughHost, "host", "array", "", nodes)).toBe(1);
    expect(availability(throughHost, "host", "array", nodes)).toBeCloseTo(0.81 * 0.999, 15);
  });

  test("a column headed Availability is how often a link is up, digit for digit", () => {
    expect(availability([["From", "To", "Availability"], ["a", "b", 0.999]], "a", "b")).toBe(0.999);
    expect(availability([["Availability", "To", "From"], ["99.999999999999%", "b", "a"], [0.5, "b", "a"]], "a", "b")).toBe(1 - 5e-15);
    const [low, high] = availBounds([["From", "To", "Availability"], ["a", "b", "12.5%"]], "a", "b")[1]!.map(Number);
    expect([low! <= 0.125, high! >= 0.125]).toEqual([true, true]);
  });

  test("AVAILBOUNDS answers one row", () => {
    const [header, row] = availBounds(links, "host", "array", [["core", 0.5]]);
    const up = 0.5 * (1 - 0.001999 ** 2);
    expect(header).toEqual(["Low", "High", "Gap"]);
    expect(row![0]).toBeLessThanOrEqual(up);
    expect(row![1]).toBeGreaterThanOrEqual(up);
    expect(row![2]).toBeLessThan(1e-12);
  });

  // Were refused: fabrics whose links or nodes fail, and a grid; independent of each other, so the answer lies below that of its two ends.
  test.each<[string, number, number, number, number]>([
    ["8 spines and 10 leaves whose nodes fail", 8, 10, 0, 0.0005],
    ["8 spines and 40 leaves whose links fail", 8, 40, 0.001, 0],
  ])("AVAILABILITY answers %s", (_, spines, leaves, link, node) => {
    const names = [Array.from({ length: spines }, (__, spine) => `s${spine}`), Array.from({ length: leaves }, (__, leaf) => `l${leaf}`)] as const;
    const fabric = [["host", "l0", 0], ["array", "l1", 0], ...names[1].flatMap((leaf) => names[0].map((spine) => [leaf, spine, link]))];
    // Both leaves, and any spine between them: other leaves add what ten digits do not show.
    const between = 1 - (1 - (1 - link) ** 2 * (1 - node)) ** spines;
    expect(availability(fabric, "host", "array", node === 0 ? "" : [...names[0], ...names[1]].map((name) => [name, node]))).toBeCloseTo((1 - node) ** 2 * between, 10);
  });

  test("the same link twice counts twice", () => {
    expect(availability([["a", "b", 0.1], ["b", "a", 0.2]], "a", "b")).toBeCloseTo(0.98, 15);
  });

  test("pieces that nothing joins: no path, never up, and no cut to name", () => {
    const pieces = [["a", "b", 0.1], ["c", "d", 0.1]];
    const sentence = '#N/A links: nothing joins "a" to "d". Add the missing link or mend a name.';
    expect(paths(pieces, "a", "d")).toBe(0);
    expect(availability(pieces, "a", "d")).toBe(0);
    expect(cellAnswer(() => cutSet(pieces, "a", "d"))).toBe(sentence);
    expect(cellAnswer(() => singlePoints(pieces, "a", "d"))).toBe(sentence);
  });

  test.each<[string, () => unknown, string]>([
    ["a link to itself", () => paths([["a", "b"], ["b", "B"]], "a", "b"), '#VALUE! links row 2 joins "b" to itself. Give two different ends.'],
    ["an end that is not there", () => cutSet(links, "host", "disk"), '#VALUE! to "disk" is at no end of links. Write a name that stands there.'],
    ["a blank end", () => paths(links, "", "array"), "#VALUE! from is blank. Write a name."],
    ["the same end twice", () => paths(links, "host", "HOST"), '#VALUE! to "HOST" is the same node as from. Give two different nodes.'],
    ["a link with one end", () => paths([["a", "b"], ["c", ""]], "a", "b"), "#VALUE! links row 2 to is blank. Write a name."],
    ["no links", () => paths([[""]], "a", "b"), "#VALUE! links is blank. Give a range with the two ends of a link in each row."],
    ["an unavailability over 1", () => availability([["a", "b", 99.9]], "a", "b"), "#VALUE! links row 1 unavailability is 99.9. Write a number from 0 to 1, such as 0.001."],
    ["an unavailability below 0", () => availability([["a", "b", -0.1]], "a", "b"), "#VALUE! links row 1 unavailability is -0.1. Write a number from 0 to 1, such as 0.001."],
    ["an unavailability left blank", () => availability([["a", "b", ""]], "a", "b"), "#VALUE! links row 1 unavailability is blank. Write a number from 0 to 1, such as 0.001."],
    ["an availability that stands for an unavailability", () => availability([["a", "b", 0.999]], "a", "b"),
      "#VALUE! links row 1 unavailability is 0.999. Down or up that often? Under the heading Availability write the share it is up."],
    ["the same as a percentage", () => availability([["From", "To", "Unavailability"], ["a", "b", "99.9%"]], "a", "b"),
      '#VALUE! links row 2 unavailability is "99.9%". Down or up that often? Under the heading Availability write the share it is up.'],
    ["the same of a node", () => availBounds([["a", "b", 0.1]], "a", "b", [["a", 1]]),
      "#VALUE! nodes row 1 unavailability is 1. Down or up that often? Under the heading Availability write the share it is up."],
    ["both shares of one link", () => availability([["From", "To", "Availability", "Unavailability"], ["a", "b", 0.9, 0.1]], "a", "b"),
      "#VALUE! links row 2 has an unavailability and an availability. Leave one of the two columns out."],
    ["an availability over 1", () => availability([["From", "To", "Availability"], ["a", "b", 99.9]], "a", "b"),
      "#VALUE! links row 2 availability is 99.9, which means 9990%. Write 99.9% or 0.999."],
    ["FALSE where a share belongs", () => paths(links, "host", "array", "node", [["host", false]]),
      "#VALUE! nodes row 1 unavailability is FALSE. Write a number, such as 0, and behind it whether the node forwards."],
    ["another word than TRUE", () => paths(links, "host", "array", "node", [["host", "", "no"]]), '#VALUE! nodes row 1 forwards is "no". Write FALSE.'],
    ["nodes without a share", () => availability(links, "host", "array", [["core", "", false]]), "#VALUE! nodes row 1 unavailability is blank. Write a number from 0 to 1, such as 0.001."],
    ["a node twice", () => cutSet(links, "host", "array", [["core", 0], ["CORE", 0]]), '#VALUE! nodes row 2: "CORE" stands twice. Give each node one row.'],
    ["a node that no link joins", () => availability([["a", "b", 0]], "a", "b", [["c", 0.1]]), '#VALUE! nodes row 1: "c" is at no end of links. Mend the name or add its link.'],
    ["another kind of path", () => paths(links, "host", "array", "cable"), '#VALUE! kind is "cable". Choose "node" or "link".'],
    ["no single point", () => singlePoints(links, "host", "core"), "#N/A links: no single node or link parts the two ends. Nothing to mend here."],
  ])("answers %s with a sentence", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });

  test("5,000 meshed links are answered or refused, not hung on", () => {
    const mesh = Array.from({ length: 5000 }, (_, index) => [`n${index % 500}`, `n${(index * 7 + 3 + Math.floor(index / 500)) % 500}`, 0.01]);
    const sound = mesh.filter(([a, b]) => a !== b);
    expect(cutSet(sound, "n0", "n1").length).toBe(paths(sound, "n0", "n1"));
    expect(cellAnswer(() => availability(sound, "n0", "n1"))).toBe(
      "#N/A links are too closely meshed between from and to for an exact answer. Ask AVAILBOUNDS, or for a smaller part of the network.",
    );
  });
});

describe("PATHCOUNT", () => {
  const hosts = [["h1", "Data 1"], ["H1", "data 2"], ["h2", "Data 1"]];

  test("answers a row for each host and array, in order of appearance, those without a path too", () => {
    expect(pathCount(hosts, [["Network", "Array"], ["Data 1", "A1"], ["Data 2", "A1"], ["Data 2", "A2"]])).toEqual([
      ["Host", "Array", "Paths", "Networks", "Least left"],
      ["h1", "A1", 2, 2, 1],
      ["h1", "A2", 1, 1, 0],
      ["h2", "A1", 1, 1, 0],
      ["h2", "A2", 0, 0, 0],
    ]);
  });

  test("an address that moves between controllers is one port", () => {
    expect(pathCount([["h", "n", ""]], [["a", "n", "10.0.0.1"], ["a", "n", "10.0.0.1"], ["a", "n", "10.0.0.2"]])[1]).toEqual(["h", "a", 2, 1, 0]);
  });

  test.each<[string, () => unknown, string]>([
    ["no network", () => pathCount([["h1"]], hosts), "#VALUE! hostPorts row 1 network is blank. Write a name."],
    ["nothing", () => pathCount(hosts, ""), "#VALUE! arrayPorts is blank. Give a range with a device and its network in each row, a row a port."],
    ["a port plan without its header", () => pathCount(hosts, [["x", "A", "0", "Data 1", "10.0.1.1", "255.255.255.0", "none"]]),
      '#VALUE! arrayPorts row 1 column 4 is "Data 1". Give device, network and address only, or a header row on top.'],
    ["a header without a network", () => pathCount(hosts, [["Array", "Port"], ["a", 1]]), "#VALUE! arrayPorts has no column Network. Add it, or leave out the header row."],
  ])("answers %s with a sentence", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });
});

describe("FEEDLOAD", () => {
  const feeds = [
    ["Feed", "Volts", "Breaker A", "Phases", "Continuous share", "Power factor"],
    ["A", 230, 16, "", "", ""],
    ["B", 400, 16, 3, "100%", 0.9],
  ];

  test("answers a row for each feed", () => {
    const [header, a, b] = feedLoad([["Device", "Watts", "Feed", "Feed"], ["Array 1", 920, "A", "B/L2"]], feeds);
    expect(header).toEqual(["Feed", "Normal W", "Worst W", "Worst A", "Limit A", "Share", "OK"]);
    expect(a).toEqual(["A", 460, 920, 4, 12.8, 0.3125, true]);
    expect(b!.slice(0, 3)).toEqual(["B", 460, 920]);
    expect(b![3]).toBeCloseTo(920 / ((400 / Math.sqrt(3)) * 0.9), 12);
    expect(b![4]).toBe(16);
  });

  test.each([
    ["an unknown feed", [["d", 900, "A", "C"]], '#VALUE! supplies row 1: feed "C" is not in feeds. Add it there or mend the name (A, A/L2, A/L1-L2).'],
    ["a phase of a feed that has one", [["d", 900, "A/L1"]], '#VALUE! supplies row 1: "A/L1" names a phase, but the feed has one. Write the feed alone.'],
    ["a device twice", [["d", 900, "A"], ["D", 900, "B"]], '#VALUE! supplies row 2: device "D" stands in row 1 too. Give the whole device one row.'],
    ["a device with no feed", [["d", 900, ""]], '#VALUE! supplies row 1: device "d" has no feed. Write the feed of each of its supplies beside its watts.'],
    ["no watts", [["d", "", "A"]], "#VALUE! supplies row 1 watts is blank. Write a number above 0 and at most 1000000000, such as 900."],
  ])("refuses %s", (_, supplies, sentence) => {
    expect(cellAnswer(() => feedLoad(supplies, feeds))).toBe(sentence);
  });

  test("a device that is called as a header might be is counted", () => {
    expect(feedLoad([["Switch", 230, "A"], ["Array", 230, "A"]], feeds)[1]!.slice(0, 2)).toEqual(["A", 460]);
  });

  test("refuses two phases", () => {
    expect(cellAnswer(() => feedLoad([["d", 1, "A"]], [["A", 230, 16, 2]]))).toBe("#VALUE! feeds row 1 phases is 2. Choose 1 or 3.");
  });
});

describe("a range that would keep the sheet waiting is refused before it is read", () => {
  const rows = (count: number, row: (index: number) => unknown[]): unknown[][] => Array.from({ length: count }, (_, index) => row(index));

  test.each<[string, () => unknown, string]>([
    ["ports", () => pathCount(rows(100_001, (index) => [`h${index}`, "n"]), [["a", "n"]]), "#VALUE! hostPorts has 100001 rows. Give at most 100000."],
    ["links that fail", () => availability(rows(20_001, (index) => [`n${index}`, `n${index + 1}`, 0.1]), "n0", "n1"), "#VALUE! links has 20001 rows. Give at most 20000."],
    ["domains", () => place([["a"]], rows(100_001, (index) => [`R${index}`])), "#VALUE! domains has 100001 rows. Give at most 100000."],
    ["members", () => place(rows(200_001, () => ["a"]), [["R"]]), "#VALUE! members has 200001 rows. Give at most 200000."],
    ["members that stand somewhere", () => outage("none", rows(200_001, (index) => [`m${index}`, "R"])), "#VALUE! placement has 200001 rows. Give at most 200000."],
    ["feeds", () => feedLoad([["d", 1, "f"]], rows(5001, (index) => [`f${index}`, 230, 16])), "#VALUE! feeds has 5001 rows. Give at most 5000."],
    ["supplies of one device", () => feedLoad([["d", 1, ...Array.from({ length: 17 }, () => "f")]], [["f", 230, 16]]),
      '#VALUE! supplies row 1: device "d" has 17 feeds. Give at most 16, one a supply.'],
    ["a domain that takes nearly all, among a thousand", () => place(rows(50_000, (index) => [`m${index}`]), [["R"], ...rows(1000, (index) => [`R${index}`, 1])], "RAID 10"),
      "#N/A members take too long to place over 1001 domains of such unlike room, in such groups. Give fewer members or domains."],
  ])("%s", (_, call, sentence) => {
    expect(cellAnswer(call)).toBe(sentence);
  });

  test("empty rows below what is filled do not count", () => {
    expect(pathCount([["h", "n"], ...rows(200_000, () => ["", null])], [["a", "n"]])[1]).toEqual(["h", "a", 1, 1, 0]);
  });
});

test("whatever stands in the ranges, the answer is a value or one short sentence, never a defect of ours", () => {
  const word = fc.constantFrom<unknown>("A", "B", "A+B", "B/L2", "x".repeat(200), "Group", "Member", "", null, 0, 1, 3, 0.5, -1, 1e300, true, "#N/A", "50%", "constructor");
  const rangeOf = (width: number) => fc.array(fc.array(word, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 });
  const calls = [
    fc.tuple(rangeOf(3), fc.constantFrom("mirror", "none", "1+1", "2+1", "RAID 10")).map(([range, scheme]) => () => outage(scheme, range)),
    fc.tuple(rangeOf(3), fc.constantFrom("1+1", "2+1", "8+3")).map(([range, scheme]) => () => outage(scheme, range, "by domain")),
    fc.tuple(rangeOf(1), rangeOf(2), word).map(([members, domains, scheme]) => () => place(members, domains, scheme)),
    fc.tuple(rangeOf(3), rangeOf(2)).map(([members, domains]) => () => place([["Member", "Group", "Domain"], ...members], domains, "RAID 10")),
    fc.tuple(rangeOf(3), word, word, rangeOf(3)).map(([range, from, to, nodes]) => () => availability(range, from, to, nodes)),
    fc.tuple(rangeOf(3), word, word, rangeOf(3)).map(([range, from, to, nodes]) => () => availBounds(range, from, to, nodes)),
    fc.tuple(rangeOf(2), word, word, rangeOf(3)).map(([range, from, to, nodes]) => () => cutSet(range, from, to, nodes)),
    fc.tuple(rangeOf(3), rangeOf(4)).map(([hosts, arrays]) => () => pathCount(hosts, arrays)),
    fc.tuple(rangeOf(4), rangeOf(6)).map(([supplies, feeds]) => () => feedLoad(supplies, feeds)),
  ];
  fc.assert(
    fc.property(fc.oneof(...calls), (call) => {
      try {
        call();
      } catch (thrown) {
        if (!(thrown instanceof CellFault)) throw thrown;
        expect(thrown.message).not.toContain("inside the add-in");
        expect(thrown.message.length).toBeLessThanOrEqual(160);
      }
    }),
    { seed: 20260511, numRuns: 3000 },
  );
});
