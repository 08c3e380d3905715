import { formatAddress, parseAddress, parsePrefix } from "../../../../src/planning/addressing";
import { gatewayAddress, isHostOf, isReserved } from "../../../../src/planning/plan/model";
import { modelOf } from "../../../support/plan-model";

const { networks } = modelOf({
  networks: [
    { network: "Mill data", site: "Mill", prefix: "10.1.0.0/24", gateway: "none", mtu: 9000, routing: " Blue ", reserved: "10.1.0.8-10.1.0.9, fd00::1" },
    { network: "mill DATA", site: "Mill", prefix: "10.2.0.0/24", gateway: "10.2.0.1" },
    { network: "everywhere", prefix: "10.1.0.0/16", gateway: null },
    { network: "unreadable", site: "Yard", prefix: "10.3.0.1/24", gateway: "10.3", reserved: "10.3.0.9-10.3.0.1" },
    { network: "open", site: "Yard", prefix: null, gateway: "NONE" },
  ],
});
const named = (name: string) => networks.named(name)!;

describe("the networks of a plan", () => {
  test("are found by name, the first of two, and by no blank", () => {
    expect(networks.all()).toHaveLength(5);
    expect(networks.named("MILL data")?.row.prefix).toBe("10.1.0.0/24");
    expect(networks.named("")).toBeNull();
    expect(networks.named("nowhere")).toBeNull();
    expect(networks.named("open")).toBe(networks.all()[4]);
  });

  test("say what could be read of them", () => {
    expect(named("Mill data")).toMatchObject({ gateway: "none", routing: "blue", mtu: 9000, prefix: { length: 24 } });
    expect(named("everywhere")).toMatchObject({ gateway: "blank", routing: "", mtu: 1500, reserved: [] });
    expect(named("unreadable")).toMatchObject({ gateway: null, prefix: null, reserved: null });
    expect(named("open")).toMatchObject({ gateway: "none", prefix: null });
  });

  test("have the address of a gateway only where one is written that can be read", () => {
    expect(networks.all().map((one) => gatewayAddress(one)).map((one) => (one === null ? null : formatAddress(one)))).toEqual([null, "10.2.0.1", null, null, null]);
  });

  test("reach a site by its name without case, or every site where they name none", () => {
    expect(networks.ofSite(" mill ").map(({ row }) => row.network)).toEqual(["Mill data", "mill DATA", "everywhere"]);
    expect(networks.ofSite("Yard").map(({ row }) => row.network)).toEqual(["everywhere", "unreadable", "open"]);
    expect(networks.ofSite("elsewhere").map(({ row }) => row.network)).toEqual(["everywhere"]);
  });

  test("hold an address: of those that reach the site the first in which it lies", () => {
    expect(networks.holding("Mill", parseAddress("10.1.0.7"))?.row.network).toBe("Mill data");
    expect(networks.holding("Yard", parseAddress("10.1.0.7"))?.row.network).toBe("everywhere");
    expect(networks.holding("Mill", parseAddress("10.3.0.7"))).toBeNull();
  });

  test.each([
    ["10.1.0.7", false], ["10.1.0.8", true], ["10.1.0.9", true], ["10.1.0.10", false], ["fd00::1", true], ["fd00::2", false],
  ])("keep %s back: %s", (address, kept) => {
    expect(isReserved(named("Mill data"), parseAddress(address))).toBe(kept);
  });

  test("keep nothing back where that cannot be read", () => {
    expect(isReserved(named("unreadable"), parseAddress("10.3.0.5"))).toBe(false);
  });

  test.each([
    ["10.1.0.0/24", "10.1.0.0", false], ["10.1.0.0/24", "10.1.0.1", true], ["10.1.0.0/24", "10.1.0.254", true], ["10.1.0.0/24", "10.1.0.255", false],
    ["10.1.0.0/24", "10.1.1.1", false], ["10.1.0.0/31", "10.1.0.0", true], ["10.1.0.0/31", "10.1.0.1", true], ["fd00::/64", "fd00::", false],
    ["fd00::/64", "fd00::1", true], ["fd00::/64", "10.1.0.1", false],
  ])("have hosts: %s may have one at %s: %s (RFC 950, RFC 3021, RFC 4291)", (prefix, address, may) => {
    expect(isHostOf(parsePrefix(prefix), parseAddress(address))).toBe(may);
  });
});
