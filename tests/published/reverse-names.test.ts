import { reverseName, subnet } from "../../src/functions/addresses";

function zone(prefix: string): readonly unknown[] {
  return subnet(prefix).find(([fact]) => String(fact).startsWith("Reverse zone"))!;
}

describe("RFC 1035 section 3.5: IN-ADDR.ARPA names, in any case", () => {
  test.each([
    ["10.2.0.52", "52.0.2.10.IN-ADDR.ARPA"],
    ["26.0.0.103", "103.0.0.26.IN-ADDR.ARPA"],
    ["10.0.0.77", "77.0.0.10.IN-ADDR.ARPA"],
    ["18.10.0.4", "4.0.10.18.IN-ADDR.ARPA"],
  ])("%s is %s", (address, name) => expect(reverseName(address)).toBe(name.toLowerCase()));
});

describe("RFC 3596 section 2.5: IP6.ARPA names", () => {
  test("4321:0:1:2:3:4:567:89ab", () => {
    const name = "b.a.9.8.7.6.5.0.4.0.0.0.3.0.0.0.2.0.0.0.1.0.0.0.0.0.0.0.1.2.3.4.IP6.ARPA";
    expect(reverseName("4321:0:1:2:3:4:567:89ab")).toBe(name.toLowerCase());
  });
});

describe("RFC 2317 section 4: classless zones of 192.0.2.0/24", () => {
  test.each([
    ["192.0.2.0/25", "0/25.2.0.192.in-addr.arpa"],
    ["192.0.2.128/26", "128/26.2.0.192.in-addr.arpa"],
    ["192.0.2.192/26", "192/26.2.0.192.in-addr.arpa"],
  ])("%s is delegated as %s", (prefix, name) => {
    expect(zone(prefix)[1]).toBe(name);
    expect(zone(prefix)[2]).toContain("RFC 2317");
  });

  test("a /24 and larger ones keep ordinary zones", () => {
    expect(zone("192.0.2.0/24")[1]).toBe("2.0.192.in-addr.arpa");
    expect(zone("10.0.0.0/8")[1]).toBe("10.in-addr.arpa");
  });
});
