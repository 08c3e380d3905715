import * as functions from "../../src/functions/addresses";
import { catalogue } from "../../src/functions/catalogue";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";

/** What a cell shows for a formula. */
function shown(formula: string): unknown {
  const { id, args } = parseCall(formula);
  const { call } = catalogue.find((one) => one.id === id)!;
  return cellAnswer(() => call(...args));
}

describe("answers", () => {
  test.each<[string, unknown]>([
    ['=BAY.NETWORK("10.20.0.9/24")', "10.20.0.0"],
    ['=BAY.NETWORK("10.20.0.9 255.255.255.0")', "10.20.0.0"],
    ['=BAY.FIRSTHOST("2001:db8::/64")', "2001:db8::1"],
    ['=BAY.LASTHOST("10.20.0.0/24")', "10.20.0.254"],
    ['=BAY.HOSTCOUNT("192.0.2.0/26")', 62],
    ['=BAY.BROADCAST("192.0.2.0/26")', "192.0.2.63"],
    ["=BAY.NETMASK(22)", "255.255.252.0"],
    ['=BAY.NETMASK("/22")', "255.255.252.0"],
    ["=BAY.NETMASK(0)", "0.0.0.0"],
    ['=BAY.WILDCARD("192.0.2.0/26")', "0.0.0.63"],
    ['=BAY.PREFIXLENGTH("255.255.252.0")', 22],
    ['=BAY.HOST("10.20.0.0/24",10)', "10.20.0.10"],
    ['=BAY.HOST("10.20.0.0/24",-1)', "10.20.0.254"],
    ['=BAY.HOST("2001:db8::/64",-1)', "2001:db8::ffff:ffff:ffff:ffff"],
    ['=BAY.CONTAINS("10.20.0.0/16","10.20.3.0/24")', true],
    ['=BAY.CONTAINS("10.20.0.0/16","10.20.3.7")', true],
    ['=BAY.CONTAINS("10.20.0.0/16","10.20.255.0-10.21.0.0")', false],
    ['=BAY.OVERLAPS("10.20.3.0/24","10.20.0.0/16")', true],
    ['=BAY.OVERLAPS("10.20.3.0/24","10.20.4.0/24")', false],
    ['=BAY.SPLITPREFIX("192.0.2.0/24",26)', [["192.0.2.0/26"], ["192.0.2.64/26"], ["192.0.2.128/26"], ["192.0.2.192/26"]]],
    ['=BAY.SPLITPREFIX("2001:db8::/32",72,2)', [["2001:db8::/72"], ["2001:db8:0:0:100::/72"]]],
    ['=BAY.NEXTSUBNET("10.20.0.0/16",24,{"10.20.0.0/24";"10.20.1.0/24"})', "10.20.2.0/24"],
    ['=BAY.GAPS("10.20.0.0/24",{"10.20.0.0/26";"10.20.0.128/27"})', [["10.20.0.64/26"], ["10.20.0.160/27"], ["10.20.0.192/26"]]],
    ['=BAY.MERGE({"Prefix";"10.20.0.0/24";"";"10.20.1.0/24"})', [["10.20.0.0/23"]]],
    ['=BAY.NEXTFREE("10.20.0.0/24",{"10.20.0.1";"10.20.0.2-10.20.0.9"},2)', [["10.20.0.10"], ["10.20.0.11"]]],
    ['=BAY.ASSIGN("10.20.0.0/24",{"a";"b"},{"b","10.20.0.1"})', [["Name", "Address"], ["a", "10.20.0.2"], ["b", "10.20.0.1"]]],
    ['=BAY.ASSIGN("10.20.0.0/24",{"a";"b"},{"b",""},"10.20.0.1, 10.20.0.3-10.20.0.9")', [["Name", "Address"], ["a", "10.20.0.2"], ["b", "10.20.0.10"]]],
    ['=BAY.CANONICAL("2001:DB8:0:0:1:0:0:1")', "2001:db8::1:0:0:1"],
    ['=BAY.PURPOSE("8.8.8.8")', "global"],
    ['=BAY.SORTKEY("10.20.0.9")', "v4.0a140009"],
    ['=BAY.REPEATS({"2001:db8::1";"10.20.0.1";"2001:0DB8::0001"})', [["Address", "Times", "Rows"], ["2001:db8::1", 2, "1, 3"]]],
    ['=BAY.REPEATS({"10.20.0.1";"10.20.0.2"})', [["Address", "Times", "Rows"]]],
    ["=BAY.PINGSIZE(9000)", 8972],
    ["=BAY.PINGSIZE(1500,6)", 1452],
    ['=BAY.ISCSINAME("2024-05","storage.example","array1")', "iqn.2024-05.example.storage:array1"],
    // The day number of 2024-05-01, into which a sheet turns 2024-05.
    ['=BAY.ISCSINAME(45413,"storage.example")', "iqn.2024-05.example.storage"],
  ])("%s", (formula, expected) => expect(shown(formula)).toEqual(expected));

  test("CARVE names its columns and keeps the order of the needs", () => {
    expect(shown('=BAY.CARVE("10.20.0.0/16",{"Need","Hosts";"Management",40;"Data",120},"20%")')).toEqual([
      ["Need", "Hosts", "Prefix", "First host", "Last host"],
      ["Management", 40, "10.20.0.0/26", "10.20.0.1", "10.20.0.62"],
      ["Data", 120, "10.20.1.0/24", "10.20.1.1", "10.20.1.254"],
    ]);
  });

  test("CLASHES names the rows, and says in a last row how many pairs it left out", () => {
    const list = '{"Prefix";"10.0.0.0/8";"";"10.1.0.0/16";"10.1.0.0/16"}';
    expect(shown(`=BAY.CLASHES(${list})`)).toEqual([
      ["First", "Second", "First row", "Second row"],
      ["10.0.0.0/8", "10.1.0.0/16", 2, 4],
      ["10.0.0.0/8", "10.1.0.0/16", 2, 5],
      ["10.1.0.0/16", "10.1.0.0/16", 4, 5],
    ]);
    expect((shown(`=BAY.CLASHES(${list},2)`) as unknown[]).at(-1)).toEqual(["and 1 more", "", "", ""]);
  });

  test("PORTPLAN gives a row a controller port, with mask and gateway", () => {
    expect(shown('=BAY.PORTPLAN({"x",2,2},{"left","10.20.1.0/24","10.20.1.1";"right","10.20.2.0/24","none"},{"x","B",0,"10.20.1.50"})')).toEqual([
      ["Array", "Controller", "Port", "Network", "Address", "Mask", "Gateway"],
      ["x", "A", "0", "left", "10.20.1.2", "255.255.255.0", "10.20.1.1"],
      ["x", "A", "1", "right", "10.20.2.1", "255.255.255.0", "none"],
      ["x", "B", "0", "left", "10.20.1.50", "255.255.255.0", "10.20.1.1"],
      ["x", "B", "1", "right", "10.20.2.2", "255.255.255.0", "none"],
    ]);
  });
});

describe("what a cell cannot answer it says in a sentence", () => {
  test.each([
    ['=BAY.NETWORK("010.0.0.1/8")', /^#VALUE! prefix "010\.0\.0\.1\/8" has leading zeros/],
    ['=BAY.NETWORK("10.0.0.256/8")', /^#VALUE! prefix .*octet 256/],
    ['=BAY.NETWORK("1.2.3.4.5/8")', /^#VALUE! prefix .*5 octets/],
    ['=BAY.NETWORK("10.0.0.0/33")', /^#VALUE! prefix .*from 0 to 32/],
    ['=BAY.NETWORK("fe80::1%1/64")', /^#VALUE! prefix .*zone/],
    ['=BAY.NETWORK("10.0.0.1")', /^#VALUE! prefix .*has no length/],
    ["=BAY.NETWORK()", /^#VALUE! prefix is blank/],
    ['=BAY.BROADCAST("2001:db8::/64")', /^#VALUE! prefix .*IPv6, which has no broadcast/],
    ['=BAY.NETMASK("2001:db8::/64")', /^#VALUE! prefix .*IPv6, which has no dotted mask/],
    ['=BAY.WILDCARD("2001:db8::/64")', /^#VALUE! prefix .*IPv6, which has no wildcard/],
    ["=BAY.NETMASK(33)", /^#VALUE! prefix "33" is not a prefix length/],
    ['=BAY.PREFIXLENGTH("255.0.255.0")', /^#VALUE! mask "255\.0\.255\.0" has holes/],
    ['=BAY.PREFIXLENGTH("0.0.0.255")', /^#VALUE! mask .* is a wildcard.*Write 255\.255\.255\.0/],
    ['=BAY.HOST("10.20.0.0/24",0)', /^#VALUE! position is 0/],
    ['=BAY.HOST("10.20.0.0/24",255)', /^#N\/A position 255 is past the 254 hosts/],
    ['=BAY.CONTAINS("10.20.0.9/16","10.20.3.0/24")', /^#VALUE! prefix .*bits set after the \/16\. Write 10\.20\.0\.0\/16/],
    ['=BAY.CONTAINS("10.20.0.0/16","2001:db8::1")', /^#VALUE! inner "2001:db8::1" is IPv6 among IPv4/],
    ['=BAY.OVERLAPS("2001:db8::/32","10.0.0.0/8")', /^#VALUE! b .*IPv4 among IPv6/],
    ['=BAY.CLASHES({"10.0.0.0/8";"10.0.0.1/8"})', /^#VALUE! prefixes row 2 "10\.0\.0\.1\/8" has bits set/],
    ['=BAY.MERGE({"10.0.0.0/8";"2001:db8::/32"})', /^#VALUE! prefixes row 2 .*IPv6 among IPv4/],
    ['=BAY.MERGE({"";""})', /^#N\/A prefixes has nothing to merge/],
    ['=BAY.SPLITPREFIX("2001:db8::/32",72)', /^#VALUE! prefix .* has 1099511627776 subnets of \/72\. Say in most/],
    ['=BAY.SPLITPREFIX("10.0.0.0/24",16)', /^#VALUE! length 16 is larger than prefix/],
    ['=BAY.CARVE("10.0.0.0/24",{"a",300})', /^#N\/A prefix 10\.0\.0\.0\/24 has no room left for 300 hosts of "a" in needs row 1/],
    ['=BAY.CARVE("10.0.0.0/24",{"a",0})', /^#VALUE! needs row 1 hosts is 0/],
    ['=BAY.CARVE("10.0.0.0/24",{"a",""})', /^#VALUE! needs row 1 hosts is blank/],
    ['=BAY.CARVE("10.0.0.0/24",{"a",5},20)', /^#VALUE! growth is 20.*Write 20% or 0\.2/],
    ['=BAY.GAPS("10.0.0.0/24",{"10.0.0.0/16"})', /^#N\/A prefix 10\.0\.0\.0\/24 has no gap left/],
    ['=BAY.NEXTFREE("10.0.0.0/30",{"10.0.0.1"},3)', /^#N\/A prefix 10\.0\.0\.0\/30 has only 1 free address, not 3\./],
    ['=BAY.NEXTFREE("10.0.0.0/29",{"10.0.0.1"},6)', /^#N\/A prefix 10\.0\.0\.0\/29 has only 5 free addresses, not 6\./],
    ['=BAY.NEXTSUBNET("10.0.0.0/24",25,{"10.0.0.1";"10.0.0.200"})', /^#N\/A prefix 10\.0\.0\.0\/24 has no free \/25/],
    ['=BAY.ASSIGN("10.0.0.0/24",{"a";"a"})', /^#VALUE! names row 2 "a" stands in row 1 already/],
    ['=BAY.ASSIGN("10.0.0.0/24",{"a"},{"","10.0.0.1"})', /^#VALUE! kept row 1 name is blank/],
    ['=BAY.PORTPLAN({"x",2,2},{"left","10.20.1.0/24","10.20.2.1"})', /^#VALUE! networks row 1: gateway/],
    ['=BAY.PORTPLAN({"x",2,2},{"left","10.20.1.0/24","none"},,"both")', /^#VALUE! sharing is "both"\. Choose "controller" or "array"/],
    ['=BAY.PINGSIZE(1000,6)', /^#VALUE! mtu is 1000\. Write a whole number from 1280/],
    ['=BAY.ISCSINAME("2024-13","storage.example")', /^#VALUE! yearMonth "2024-13"/],
    ['=BAY.ISCSINAME("2024-05","storage")', /^#VALUE! domain "storage"/],
  ])("%s", (formula, sentence) => {
    const answer = String(shown(formula));
    expect(answer).toMatch(sentence);
    expect(answer.replace(/^#\S+ /, "").length).toBeLessThanOrEqual(160);
  });

  test("one bad row in a hundred thousand is named", () => {
    const rows = Array.from({ length: 100_000 }, (_, place) => [place === 77_776 ? "10.0.0.0/33" : `10.${place & 255}.${(place >> 8) & 255}.0/24`]);
    expect(cellAnswer(() => functions.merge(rows))).toMatch(/^#VALUE! prefixes row 77777 "10\.0\.0\.0\/33"/);
    expect(cellAnswer(() => functions.clashes(rows))).toMatch(/^#VALUE! prefixes row 77777 /);
  });

  test("ranges that would keep the sheet waiting are refused before they are read", () => {
    const rows = (cell: string, count = 200_001): unknown[][] => Array.from({ length: count }, () => [cell]);
    expect(cellAnswer(() => functions.repeats(rows("10.0.0.1", 500_001)))).toBe("#VALUE! addresses has 500001 rows. Give at most 500000.");
    expect(cellAnswer(() => functions.merge(rows("10.0.0.1")))).toBe("#VALUE! prefixes has 200001 rows. Give at most 200000.");
    expect(cellAnswer(() => functions.gaps("10.0.0.0/8", rows("10.0.0.1")))).toBe("#VALUE! taken has 200001 rows. Give at most 200000.");
    expect(cellAnswer(() => functions.assign("10.0.0.0/8", rows("ctl")))).toBe("#VALUE! names has 200001 rows. Give at most 200000.");
  });

  test("a hundred thousand equal prefixes list only what was asked for", () => {
    const answer = functions.clashes(Array.from({ length: 100_000 }, () => ["10.0.0.0/8"]), 3);
    expect(answer).toHaveLength(5);
    expect(answer.at(-1)?.[0]).toBe("and 4999949997 more");
  });

  test("an error cell is named with its row", () => {
    expect(cellAnswer(() => functions.gaps("10.0.0.0/24", [["10.0.0.1"], ["#REF!"]]))).toMatch(/^#VALUE! taken row 2 holds "#REF!"/);
  });
});
