import { cellAnswer } from "../support/cell-answer";
import { broadcast, firstHost, hostCount, lastHost, netmask, network, prefixLength, splitPrefix, subnet, wildcard } from "../../src/functions/addresses";

/** What SUBNET says of one fact. */
function factOf(prefix: string, fact: string): unknown {
  return subnet(prefix).find(([name]) => name === fact)?.[1];
}

const units: Readonly<Record<string, number>> = { K: 2 ** 10, M: 2 ** 20 };

describe("RFC 1878 mask table (page 2): length, mask in hexadecimal and decimal, addresses", () => {
  test.each([
    [1, "80.00.00.00", "128.0.0.0", "2048 M"],
    [2, "C0.00.00.00", "192.0.0.0", "1024 M"],
    [3, "E0.00.00.00", "224.0.0.0", "512 M"],
    [4, "F0.00.00.00", "240.0.0.0", "256 M"],
    [5, "F8.00.00.00", "248.0.0.0", "128 M"],
    [6, "FC.00.00.00", "252.0.0.0", "64 M"],
    [7, "FE.00.00.00", "254.0.0.0", "32 M"],
    [8, "FF.00.00.00", "255.0.0.0", "16 M"],
    [9, "FF.80.00.00", "255.128.0.0", "8 M"],
    [10, "FF.C0.00.00", "255.192.0.0", "4 M"],
    [11, "FF.E0.00.00", "255.224.0.0", "2 M"],
    [12, "FF.F0.00.00", "255.240.0.0", "1024 K"],
    [13, "FF.F8.00.00", "255.248.0.0", "512 K"],
    [14, "FF.FC.00.00", "255.252.0.0", "256 K"],
    [15, "FF.FE.00.00", "255.254.0.0", "128 K"],
    [16, "FF.FF.00.00", "255.255.0.0", "64 K"],
    [17, "FF.FF.80.00", "255.255.128.0", "32 K"],
    [18, "FF.FF.C0.00", "255.255.192.0", "16 K"],
    [19, "FF.FF.E0.00", "255.255.224.0", "8 K"],
    [20, "FF.FF.F0.00", "255.255.240.0", "4 K"],
    [21, "FF.FF.F8.00", "255.255.248.0", "2 K"],
    [22, "FF.FF.FC.00", "255.255.252.0", "1 K"],
    [23, "FF.FF.FE.00", "255.255.254.0", "512"],
    [24, "FF.FF.FF.00", "255.255.255.0", "256"],
    [25, "FF.FF.FF.80", "255.255.255.128", "128"],
    [26, "FF.FF.FF.C0", "255.255.255.192", "64"],
    [27, "FF.FF.FF.E0", "255.255.255.224", "32"],
    [28, "FF.FF.FF.F0", "255.255.255.240", "16"],
    [29, "FF.FF.FF.F8", "255.255.255.248", "8"],
    [30, "FF.FF.FF.FC", "255.255.255.252", "4"],
    [31, "FF.FF.FF.FE", "255.255.255.254", "2"],
  ])("/%i is %s, %s, %s addresses", (length, hexadecimal, mask, size) => {
    const [count, unit] = size.split(" ");
    const octets = hexadecimal.split(".").map((octet) => parseInt(octet, 16));
    expect(netmask(length)).toBe(mask);
    expect(octets.join(".")).toBe(mask);
    expect(wildcard(`0.0.0.0/${length}`)).toBe(octets.map((octet) => 255 - octet).join("."));
    expect(prefixLength(mask)).toBe(length);
    expect(factOf(`0.0.0.0/${length}`, "Addresses")).toBe(Number(count) * (units[unit ?? ""] ?? 1));
  });

  test("/32 is 255.255.255.255, a single host route", () => {
    expect(netmask(32)).toBe("255.255.255.255");
    expect(hostCount("192.0.2.1/32")).toBe(1);
  });
});

describe("RFC 1878 table 1-1: subnets and hosts of a class B network", () => {
  // The last row is printed as 255 subnets of 253 hosts, a misprint; 256 and 254 follow from its own mask table.
  test.each([
    ["255.255.128.0", 2, 32_766],
    ["255.255.192.0", 4, 16_382],
    ["255.255.224.0", 8, 8190],
    ["255.255.240.0", 16, 4094],
    ["255.255.248.0", 32, 2046],
    ["255.255.252.0", 64, 1022],
    ["255.255.254.0", 128, 510],
  ])("%s: %i subnets of %i hosts", (mask, subnets, hosts) => {
    const parts = splitPrefix("172.16.0.0/16", prefixLength(mask));
    expect(parts).toHaveLength(subnets);
    for (const [part] of parts) expect(hostCount(part)).toBe(hosts);
    expect(parts.at(-1)?.[0]?.split(".").slice(0, 2)).toEqual(["172", "16"]);
  });
});

describe("RFC 1878 table 1-2: network, hosts and broadcast of each subnet of a class C network", () => {
  test.each([
    ["255.255.255.128", 2, 126],
    ["255.255.255.192", 4, 62],
    ["255.255.255.224", 8, 30],
    ["255.255.255.240", 16, 14],
    ["255.255.255.248", 32, 6],
    ["255.255.255.252", 64, 2],
  ])("%s: %i subnets of %i hosts, each from .1 past its network to the one before its broadcast", (mask, subnets, hosts) => {
    const length = prefixLength(mask);
    const parts = splitPrefix("192.0.2.0/24", length).map(([part]) => part!);
    expect(parts).toHaveLength(subnets);
    const step = 256 / subnets;
    parts.forEach((part, place) => {
      expect(network(part)).toBe(`192.0.2.${place * step}`);
      expect(firstHost(part)).toBe(`192.0.2.${place * step + 1}`);
      expect(lastHost(part)).toBe(`192.0.2.${(place + 1) * step - 2}`);
      expect(broadcast(part)).toBe(`192.0.2.${(place + 1) * step - 1}`);
      expect(hostCount(part)).toBe(hosts);
    });
  });

  test.each([
    ["192.0.2.0/25", "192.0.2.0", "192.0.2.1", "192.0.2.126", "192.0.2.127"],
    ["192.0.2.128/25", "192.0.2.128", "192.0.2.129", "192.0.2.254", "192.0.2.255"],
    ["192.0.2.64/26", "192.0.2.64", "192.0.2.65", "192.0.2.126", "192.0.2.127"],
    ["192.0.2.192/26", "192.0.2.192", "192.0.2.193", "192.0.2.254", "192.0.2.255"],
    ["192.0.2.224/27", "192.0.2.224", "192.0.2.225", "192.0.2.254", "192.0.2.255"],
    ["192.0.2.240/28", "192.0.2.240", "192.0.2.241", "192.0.2.254", "192.0.2.255"],
    ["192.0.2.248/29", "192.0.2.248", "192.0.2.249", "192.0.2.254", "192.0.2.255"],
    ["192.0.2.252/30", "192.0.2.252", "192.0.2.253", "192.0.2.254", "192.0.2.255"],
  ])("%s as printed: network %s, hosts %s to %s, broadcast %s", (prefix, own, first, last, all) => {
    expect([network(prefix), firstHost(prefix), lastHost(prefix), broadcast(prefix)]).toEqual([own, first, last, all]);
  });
});

describe("RFC 1878 tables 2-1 and 2-2: subnets without the all-zeros and all-ones one, and their hosts", () => {
  test.each([
    [16, [2, 6, 14, 30, 62, 126, 254, 510, 1022, 2046, 4094, 8190, 16_382], [16_382, 8190, 4094, 2046, 1022, 510, 254, 126, 62, 30, 14, 6, 2]],
    [24, [2, 6, 14, 30, 62], [62, 30, 14, 6, 2]],
  ])("from a /%i", (whole, subnets, hosts) => {
    subnets.forEach((count, place) => {
      const parts = splitPrefix(`10.20.0.0/${whole}`, whole + place + 2);
      expect(parts.length - 2).toBe(count);
      expect(hostCount(parts[0]![0])).toBe(hosts[place]);
    });
  });
});

describe("RFC 4632 section 3.1: addresses in a block of each length", () => {
  test.each([
    [32, 1, 4294967296],
    [31, 2, 2147483648],
    [30, 4, 1073741824],
    [29, 8, 536870912],
    [28, 16, 268435456],
    [27, 32, 134217728],
    [26, 64, 67108864],
    [25, 128, 33554432],
    [24, 256, 16777216],
    [23, 512, 8388608],
    [22, 1024, 4194304],
    [21, 2048, 2097152],
    [20, 4096, 1048576],
    [19, 8192, 524288],
    [18, 16384, 262144],
    [17, 32768, 131072],
    [16, 65536, 65536],
    [15, 131072, 32768],
    [14, 262144, 16384],
    [13, 524288, 8192],
    [12, 1048576, 4096],
    [11, 2097152, 2048],
    [10, 4194304, 1024],
    [9, 8388608, 512],
    [8, 16777216, 256],
    [7, 33554432, 128],
    [6, 67108864, 64],
    [5, 134217728, 32],
    [4, 268435456, 16],
    [3, 536870912, 8],
    [2, 1073741824, 4],
    [1, 2147483648, 2],
    [0, 4294967296, 1],
  ])("/%i holds %i addresses; there are %i such blocks", (length, addresses, blocks) => {
    expect(factOf(`0.0.0.0/${length}`, "Addresses")).toBe(addresses);
    expect(addresses * blocks).toBe(2 ** 32);
    if (blocks <= 2 ** 14) expect(splitPrefix("0.0.0.0/0", length)).toHaveLength(blocks);
  });
});

describe("RFC 950 appendix II and section 2.1", () => {
  test("host 36.40.0.123 and gateway 36.40.0.62 lie in one subnet under mask 255.255.0.0", () => {
    expect(network("36.40.0.123 255.255.0.0")).toBe("36.40.0.0");
    expect(network("36.40.0.62 255.255.0.0")).toBe("36.40.0.0");
  });

  test("a class B network with a subnet field of 6 bits has mask 255.255.252.0 and 62 subnets beside all zeros and all ones", () => {
    expect(netmask(16 + 6)).toBe("255.255.252.0");
    expect(splitPrefix("128.9.0.0/16", 22).length - 2).toBe(62);
  });

  test("128.9.255.255 means all hosts on network 128.9", () => {
    expect(broadcast("128.9.0.0/16")).toBe("128.9.255.255");
  });
});

describe("RFC 3021 section 2: 31-bit prefixes", () => {
  test("both addresses are hosts, and there is no network or broadcast address", () => {
    expect([firstHost("192.0.2.6/31"), lastHost("192.0.2.6/31"), hostCount("192.0.2.6/31")]).toEqual(["192.0.2.6", "192.0.2.7", 2]);
    expect(cellAnswer(() => broadcast("192.0.2.6/31"))).toMatch(/^#N\/A .*RFC 3021/);
  });

  test("500 point-to-point links save 1000 addresses against 30-bit prefixes", () => {
    const addresses = (length: number): number => Number(factOf(`192.0.2.0/${length}`, "Addresses"));
    expect(500 * addresses(30) - 500 * addresses(31)).toBe(1000);
  });
});

describe("RFC 1918 section 3: private address space", () => {
  test.each([
    ["10.0.0.0/8", "10.255.255.255", 16_777_216],
    ["172.16.0.0/12", "172.31.255.255", 1_048_576],
    ["192.168.0.0/16", "192.168.255.255", 65_536],
  ])("%s ends at %s and has %i addresses", (prefix, last, count) => {
    expect(broadcast(prefix)).toBe(last);
    expect(factOf(prefix, "Addresses")).toBe(count);
    expect(factOf(prefix, "Purpose")).toBe("Private-Use");
  });
});
