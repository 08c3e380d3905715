import fc from "fast-check";
import { CellFault } from "../../src/functions/support/custom-functions";
import { availability, cutSet, feedLoad, outage, paths, place, singlePoints } from "../../src/functions/resilience";
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

test("whatever stands in the ranges, the answer is a value or one short sentence, never a defect of ours", () => {
  const word = fc.constantFrom<unknown>("A", "B", "A+B", "B/L2", "x".repeat(200), "Group", "Member", "", null, 0, 1, 3, 0.5, -1, 1e300, true, "#N/A", "50%", "constructor");
  const rangeOf = (width: number) => fc.array(fc.array(word, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 });
  const calls = [
    fc.tuple(rangeOf(3), fc.constantFrom("mirror", "none", "1+1", "2+1", "RAID 10")).map(([range, scheme]) => () => outage(scheme, range)),
    fc.tuple(rangeOf(1), rangeOf(2)).map(([members, domains]) => () => place(members, domains)),
    fc.tuple(rangeOf(3), word, word).map(([range, from, to]) => () => availability(range, from, to)),
    fc.tuple(rangeOf(2), word, word).map(([range, from, to]) => () => cutSet(range, from, to)),
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
