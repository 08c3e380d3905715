import { parseAddress, parsePrefix, reversePlace } from "../../src/planning/addressing";
import { namesOfPlan } from "../../src/planning/handouts";
import { modelOf } from "../support/plan-model";

/** Places the PTR record of an address of a network. */
function placed(address: string, prefix: string): string {
  const { zone, name, parent } = reversePlace(parseAddress(address, "address"), parsePrefix(prefix, "prefix"));
  return parent === null ? `${name} in ${zone}` : `${name} in ${zone}, from ${parent.name} in ${parent.zone}`;
}

describe("records of addresses stand where the RFCs have them", () => {
  test.each([
    ["192.0.2.1", "192.0.2.0/25", "1 in 0/25.2.0.192.in-addr.arpa, from 1 in 2.0.192.in-addr.arpa"],
    ["192.0.2.129", "192.0.2.128/26", "129 in 128/26.2.0.192.in-addr.arpa, from 129 in 2.0.192.in-addr.arpa"],
    ["192.0.2.193", "192.0.2.192/26", "193 in 192/26.2.0.192.in-addr.arpa, from 193 in 2.0.192.in-addr.arpa"],
  ])("RFC 2317 section 4: %s of %s", (address, prefix, place) => {
    expect(placed(address, prefix)).toBe(place);
  });

  test("RFC 1035 section 3.5: 10.2.0.52 is 52.0.2.10.in-addr.arpa, whichever part of it is the zone", () => {
    expect(placed("10.2.0.52", "10.2.0.0/24")).toBe("52 in 0.2.10.in-addr.arpa");
    expect(placed("10.2.0.52", "10.2.0.0/16")).toBe("52.0 in 2.10.in-addr.arpa");
    expect(placed("10.2.0.52", "10.2.0.0/20")).toBe("52 in 0.2.10.in-addr.arpa");
    expect(placed("10.2.0.52", "10.0.0.0/8")).toBe("52.0.2 in 10.in-addr.arpa");
    expect(placed("10.2.0.52", "10.2.0.52/32")).toBe("52 in 0.2.10.in-addr.arpa");
  });

  test("RFC 3596 section 2.5: 4321:0:1:2:3:4:567:89ab", () => {
    const whole = "b.a.9.8.7.6.5.0.4.0.0.0.3.0.0.0.2.0.0.0.1.0.0.0.0.0.0.0.1.2.3.4.ip6.arpa";
    const place = reversePlace(parseAddress("4321:0:1:2:3:4:567:89ab", "address"), parsePrefix("4321:0:1:2::/64", "prefix"));
    expect(`${place.name}.${place.zone}`).toBe(whole);
    expect(place.zone).toBe("2.0.0.0.1.0.0.0.0.0.0.0.1.2.3.4.ip6.arpa");
  });

  test("RFC 2317 section 4, the zone of the first customer: PTR records relative to it, CNAME records for the zone above", () => {
    const model = modelOf({
      networks: [{ network: "a", site: "Mill", prefix: "192.0.2.0/25" }],
      hosts: [{ host: "host1", site: "Mill" }, { host: "host2", site: "Mill" }],
      hostPorts: [{ host: "host1", card: "c1", network: "a", address: "192.0.2.1" }, { host: "host2", card: "c1", network: "a", address: "192.0.2.2" }],
    });
    expect(namesOfPlan(model, "A.domain.")).toEqual({
      refused: [],
      blocks: [
        { title: "Zone A.domain", lines: ["$ORIGIN A.domain.", "host1-c1 IN A 192.0.2.1", "host2-c1 IN A 192.0.2.2"] },
        { title: "Zone 0/25.2.0.192.in-addr.arpa", lines: ["$ORIGIN 0/25.2.0.192.in-addr.arpa.", "1 IN PTR host1-c1.A.domain.", "2 IN PTR host2-c1.A.domain."] },
        {
          title: "For the owner of 2.0.192.in-addr.arpa (RFC 2317)",
          lines: ["$ORIGIN 2.0.192.in-addr.arpa.", "1 IN CNAME 1.0/25.2.0.192.in-addr.arpa.", "2 IN CNAME 2.0/25.2.0.192.in-addr.arpa."],
        },
        { title: "Hosts file", lines: ["192.0.2.1 host1-c1.A.domain host1-c1", "192.0.2.2 host2-c1.A.domain host2-c1"] },
      ],
    });
  });
});
