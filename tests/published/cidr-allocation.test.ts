import { carve, contains, merge, subnet } from "../../src/functions/addresses";

describe("RFC 1519 section 4: the allocation plan of one provider, cut by CARVE", () => {
  const carved = carve("192.24.0.0/13", [
    ["C1", 2046],
    ["C2", 4094],
    ["C3", 1022],
    ["C4", 1022],
    ["C5", 510],
    ["C6", 510],
  ]);

  test.each([
    ["C1", "192.24.0.0/21", "255.255.248.0"],
    ["C2", "192.24.16.0/20", "255.255.240.0"],
    ["C3", "192.24.8.0/22", "255.255.252.0"],
    ["C4", "192.24.12.0/22", "255.255.252.0"],
    ["C5", "192.24.32.0/23", "255.255.254.0"],
    ["C6", "192.24.34.0/23", "255.255.254.0"],
  ])("%s gets %s, mask %s", (client, prefix, mask) => {
    expect(carved.find(([need]) => need === client)?.[2]).toBe(prefix);
    expect(subnet(prefix).find(([fact]) => fact === "Netmask")?.[1]).toBe(mask);
  });

  test("the aggregate 192.24.0.0/255.248.0.0 holds them all", () => {
    for (const [, , prefix] of carved.slice(1)) expect(contains("192.24.0.0 255.248.0.0", prefix)).toBe(true);
  });

  test("C3 and C4 come together as one prefix of twice the size", () => {
    expect(merge([["192.24.8.0/22"], ["192.24.12.0/22"]])).toEqual([["192.24.8.0/21"]]);
  });
});

describe("RFC 1519: 10.10.64.0 with mask 255.255.192.0 is the range 10.10.64.0 to 10.10.127.255", () => {
  test("as addresses and as 64 reverse zones", () => {
    const facts = new Map(subnet("10.10.64.0 255.255.192.0").map(([fact, value, note]) => [fact, `${String(value)} (${String(note)})`]));
    expect(facts.get("Broadcast")).toMatch(/^10\.10\.127\.255 /);
    expect(facts.get("Reverse zones")).toBe("64.10.10.in-addr.arpa to 127.10.10.in-addr.arpa (64 zones (RFC 1035))");
  });
});

describe("RFC 4632 section 5.1: longest match", () => {
  test("192.168.64.0/19 is inside 192.168.0.0/16 and holds 192.168.65.0/24", () => {
    expect(contains("192.168.0.0/16", "192.168.64.0/19")).toBe(true);
    expect(contains("192.168.64.0/19", "192.168.65.0/24")).toBe(true);
    expect(contains("192.168.65.0/24", "192.168.64.0/19")).toBe(false);
  });
});
