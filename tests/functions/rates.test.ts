import { iops, movetime, payload, rebuildhours, responsetime, serialtime, throughput, writecost } from "../../src/functions/rates";
import { cellAnswer } from "../support/cell-answer";

describe("an answer in a cell", () => {
  test.each<[string, () => unknown, number]>([
    ["WRITECOST", () => writecost("RAID 6"), 6],
    ["IOPS", () => iops("RAID 10", 9, 150, "50%", 1), 800],
    ["WRITECOST of full stripes", () => writecost("RAID 6 8+2", "1 MiB", "64 KiB"), 20],
    ["IOPS with a cache that answers half of the reads", () => iops("RAID 10", 8, 150, "50%", 0, "50%"), 960],
    ["THROUGHPUT", () => throughput("RAID 6", 12, 200), 2400],
    ["THROUGHPUT of every option", () => throughput("RAID 60 4+2", 13, 200, 0, "rebuilding", 1, 5000, "25%"), 1200],
    ["THROUGHPUT under a ceiling", () => throughput("RAID 6", 12, 200, 1, "healthy", 0, 1500), 1500],
    ["RESPONSETIME", () => responsetime(800, 10, 10), 50],
    ["RESPONSETIME of every option", () => responsetime(200, 10, 2, "50%", 1, "shared"), 0.5 + 0.5 * (10 / (1 - 0.25))],
    ["PAYLOAD", () => payload(1, 1), (125 * 1460) / 1538],
    ["PAYLOAD of every option", () => payload(2, 25, 9000, 6, true, true), (50 * 125 * 8928) / 9042],
    ["MOVETIME", () => movetime(3.6, 100), 10],
    ["REBUILDHOURS", () => rebuildhours("RAID 6", 12, 3.6, 100, "25%"), 40],
    ["SERIALTIME", () => serialtime(960, 9600), 1],
  ])("%s", (_name, call, answer) => {
    expect(call()).toBeCloseTo(answer, 10);
  });

  test.each([[undefined], [null], [""]])("optional arguments that are %p mean their defaults", (blank) => {
    expect(payload(1, 1, blank, blank, blank, blank)).toBe(payload(1, 1, 1500, 4, false, false));
    expect(rebuildhours("RAID 6", 12, 4, 100, blank)).toBe(rebuildhours("RAID 6", 12, 4, 100, 1));
    expect(iops("RAID 6", 12, 100, 0.7, blank, blank)).toBe(iops("RAID 6", 12, 100, 0.7, 0, 0));
    expect(writecost("RAID 6", blank, blank)).toBe(6);
    expect(throughput("RAID 6", 12, 200, blank, blank, blank, blank, blank)).toBe(2400);
    expect(throughput("RAID 6", 12, 200, 1, "rebuilding", 0, blank, blank)).toBe(throughput("RAID 6", 12, 200, 1, "rebuilding", 0, 1e9, "30%"));
    expect(responsetime(1000, 5, 12, 0.3, blank, blank)).toBe(responsetime(1000, 5, 12, 0.3, 0.2, "own"));
  });

  test("an empty cell that arrives as 0 is no ceiling and no size", () => {
    expect(throughput("RAID 6", 12, 200, 1, "healthy", 0, 0)).toBe(2400);
    expect(writecost("RAID 6", 0, 0)).toBe(6);
  });

  test("flags may be TRUE, 1 or text", () => {
    const tagged = payload(1, 1, 1500, 4, false, true);
    for (const yes of [1, "TRUE", "true"]) expect(payload(1, 1, 1500, 4, 0, yes)).toBe(tagged);
  });
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => writecost(10), '#VALUE! scheme is 10, not text. Put the scheme in quotes: "8+2".'],
    [() => writecost("RAID 6 8+2", "256 KiB"), '#VALUE! stripeUnit is blank, though writeSize is given. Write it too, such as "64 KiB", or leave out both for a small write.'],
    [() => writecost("RAID 6 8+2", "256 KiB", 64), '#VALUE! stripeUnit is 64, and a bare number is TB. No stripe unit is that large: write it with its unit, such as "64 KiB".'],
    [() => writecost("RAID 6", "256 KiB", "64 KiB"), "#VALUE! scheme RAID 6 says no width, and a write of several stripe units depends on it. Write a shape, such as RAID 6 8+2."],
    [() => iops("RAID 5", 8, 150, 1, 0, 1), "#N/A cacheHits is 100% of nothing but reads, so the drives set no limit. Write a share below 1, such as 90%."],
    [() => throughput("none", 8, 200, 1, "degraded"), '#N/A state "degraded" has a drive out, and scheme none does not survive that. Give a scheme with redundancy, or "healthy".'],
    [() => throughput("RAID 6", 8, 200, 1, "broken"), '#VALUE! state is "broken". Choose "healthy" or "degraded" or "rebuilding".'],
    [() => responsetime(2000, 10, 12), "#N/A servers 12 cannot keep up with 2000 operations a second: 21 are the least. Write more servers or fewer operations."],
    [() => responsetime(2000, 10, [[12], [13]]), "#VALUE! servers is a range of several cells. Ask for each: =MAP(A2:A9,LAMBDA(x,BAY.RESPONSETIME(2000,10,x)))."],
    [() => responsetime(2000, 10, 30, 30), "#VALUE! cacheHits is 30, which means 3000%. Write 30% or 0.3."],
    [() => responsetime(2000, 10, 30, 0, 0.2, "both"), '#VALUE! queues is "both". Choose "own" or "shared".'],
    [() => movetime(4, 1e-308), "#VALUE! rate is 1e-308, which is nearly 0. Write a number above 0 and at most 1000000000, such as 400."],
    [() => iops("RAID 5", 8, 0, 0.5), "#VALUE! driveRate is 0. Write a number above 0 and at most 1000000000, such as 150."],
    [() => iops("RAID 5", 8, 150, ""), "#VALUE! readShare is blank. Write a number from 0 to 1, such as 0.2."],
    [() => iops("RAID 5", 8, 150, 70), "#VALUE! readShare is 70, which means 7000%. Write 70% or 0.7."],
    [() => payload(1.5, 1), "#VALUE! ports is 1.5. Write a whole number from 1 to 100000, such as 2."],
    [() => payload(1, 1, 1500, 5), "#VALUE! ipVersion is 5. Choose 4 or 6."],
    [() => payload(1, 1, 1500, 4, "maybe"), '#VALUE! timestamps is "maybe". Choose TRUE or FALSE.'],
    [() => payload(1, 1, 1000, 6), "#VALUE! mtu is 1000. IPv6 needs 1280 bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames."],
    [() => movetime(4, "fast"), '#VALUE! rate is the text "fast". Write a number above 0 and at most 1000000000, such as 400.'],
    [() => rebuildhours("RAID 6", 12, 4, 100, 0), "#VALUE! share is 0. Write a number above 0 and at most 1, such as 0.2."],
    [() => rebuildhours("none", 12, 4, 100), '#N/A scheme none has nothing to rebuild a drive from. Write a scheme with redundancy, such as "RAID 6".'],
    [() => serialtime(100, 0), "#VALUE! baud is 0. Write a number above 0 and at most 1000000000, such as 9600."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
