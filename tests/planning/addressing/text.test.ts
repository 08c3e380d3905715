import fc from "fast-check";
import * as ipaddr from "ipaddr.js";
import { isIP } from "node:net";
import {
  Address,
  addressAt,
  addressValue,
  compareAddresses,
  containsAddress,
  firstHost,
  formatAddress,
  formatPrefix,
  Interface,
  lastAddress,
  lastHost,
  networkOf,
  parseAddress,
  parseBlock,
  parseInterface,
  parsePrefix,
  Prefix,
  readAddress,
  readSubnet,
  sortKey,
} from "../../../src/planning/addressing";
import { containsText } from "../../../src/planning/addressing/block";
import { problemOf } from "../../support/sentence";

const anyAddress = fc.oneof(
  fc.bigInt({ min: 0n, max: 2n ** 32n - 1n }).map((value) => addressAt(4, value)),
  fc.bigInt({ min: 0n, max: 2n ** 128n - 1n }).map((value) => addressAt(6, value)),
  fc.array(fc.constantFrom("0", "0", "1", "ffff", "db8"), { minLength: 8, maxLength: 8 }).map((groups) => parseAddress(groups.join(":"))),
);
const anySubnet = anyAddress.chain((address) => fc.integer({ min: 0, max: address.family === 4 ? 32 : 128 }).map((length) => new Interface(address, length)));

/** The slow twin of reading: split at the signs and look at each piece. */
function readSlowly(text: string): bigint | null {
  const octets = text.split(".");
  if (octets.length === 4 && octets.every((octet) => /^(0|[1-9]\d{0,2})$/.test(octet) && Number(octet) < 256)) {
    return octets.reduce((value, octet) => value * 256n + BigInt(octet), 0n);
  }
  const tail = /^(.*:)([^:]*\.[^:]*)$/.exec(text);
  if (tail !== null) {
    const value = readSlowly(tail[2]!);
    if (value === null || value >= 2n ** 32n || tail[2]!.includes(":")) return null;
    return readSlowly(`${tail[1]}${(value >> 16n).toString(16)}:${(value & 0xffffn).toString(16)}`);
  }
  const halves = text.split("::");
  if (halves.length > 2) return null;
  const [left, right] = halves.map((half) => (half === "" ? [] : half.split(":")));
  const groups = right === undefined ? left! : [...left!, ...Array.from({ length: 8 - left!.length - right.length }, () => "0"), ...right];
  if (right !== undefined && left!.length + right.length > 7) return null;
  if (groups.length !== 8 || !groups.every((group) => /^[0-9a-f]{1,4}$/i.test(group))) return null;
  return groups.reduce((value, group) => value * 65_536n + BigInt(`0x${group}`), 0n);
}

const settings = { seed: 4, numRuns: 1000 };

describe("text", () => {
  test("reading what was written gives the same address, and writing that gives the same text", () => {
    fc.assert(
      fc.property(anyAddress, (address) => {
        const text = formatAddress(address);
        const read = parseAddress(text);
        expect(compareAddresses(read, address)).toBe(0);
        expect(formatAddress(read)).toBe(text);
        expect(isIP(text)).toBe(address.family);
      }),
      settings,
    );
  });

  test("the quick reader reads what the slow one reads, and nothing else", () => {
    const sign = fc.constantFrom("0", "1", "9", "25", "255", "256", "a", "F", "ffff", "db8", ":", ":", "::", ".", ".", "g", " ", "%", "/");
    const text = fc.oneof(
      fc.array(sign, { maxLength: 17 }).map((signs) => signs.join("")),
      fc.array(fc.constantFrom("0", "1", "ab", "ffff", "", "1.2.3.4"), { minLength: 2, maxLength: 9 }).map((groups) => groups.join(":")),
      fc.array(fc.constantFrom("0", "1", "12", "255", "256", "01", ""), { minLength: 3, maxLength: 5 }).map((octets) => octets.join(".")),
    );
    fc.assert(
      fc.property(text, (text) => {
        const read = readAddress(text);
        expect(read === null ? null : addressValue(read)).toEqual(readSlowly(text));
        expect(read === null ? 0 : read.family).toBe(isIP(text.replace("%", " ")));
      }),
      { seed: 4, numRuns: 3000 },
    );
  });

  test("canonical IPv6 text is that of ipaddr.js, but for the dotted tail of IPv4-mapped addresses", () => {
    fc.assert(
      fc.property(anyAddress, (address) => {
        fc.pre(address.family === 6 && addressValue(address) >> 32n !== 0xffffn);
        expect(formatAddress(address)).toBe(ipaddr.IPv6.parse(formatAddress(address)).toRFC5952String());
      }),
      settings,
    );
  });

  test("the quick way from text to text says what the values say", () => {
    fc.assert(
      fc.property(anySubnet, ({ address, length, network }) => {
        const quick = readSubnet(`${formatAddress(address)}/${length}`);
        expect(quick.network).toBe(formatAddress(network.first));
        expect(quick.firstHost).toBe(formatAddress(firstHost(network)));
        expect(quick.lastHost).toBe(formatAddress(lastHost(network)));
      }),
      settings,
    );
  });

  test("the quick way to tell containment says what the values say", () => {
    fc.assert(
      fc.property(anySubnet, anyAddress, fc.integer({ min: 0, max: 128 }), ({ network }, other, length) => {
        const inner = networkOf(other, Math.min(length, other.family === 4 ? 32 : 128));
        fc.pre(inner.family === network.family);
        const inside = containsAddress(network, inner.first) && containsAddress(network, lastAddress(inner));
        expect(containsText(formatPrefix(network), formatPrefix(inner))).toBe(inside);
        expect(containsText(formatPrefix(networkOf(inner.first, Math.min(length, 3))), formatPrefix(inner))).toBe(inner.length >= Math.min(length, 3));
      }),
      settings,
    );
  });

  test("a sort key sorts as addresses do", () => {
    fc.assert(
      fc.property(anyAddress, anyAddress, (a, b) => {
        const keys = [sortKey(a), sortKey(b)];
        expect(Math.sign(keys[0]! < keys[1]! ? -1 : keys[0]! > keys[1]! ? 1 : 0)).toBe(Math.sign(compareAddresses(a, b)));
      }),
      settings,
    );
  });
});

describe("values", () => {
  test("are frozen", () => {
    for (const value of [parseAddress("10.20.0.9"), parseAddress("::1"), parsePrefix("10.20.0.0/24"), parseInterface("10.20.0.9/24")]) {
      expect(Object.isFrozen(value)).toBe(true);
    }
  });

  test("write themselves as canonical text", () => {
    expect(String(new Address(6, 0x2001_0db8, 0, 0, 1))).toBe("2001:db8::1");
    expect(String(new Prefix(parseAddress("10.20.0.0"), 24))).toBe("10.20.0.0/24");
  });

  test("every spelling of a prefix is one value", () => {
    for (const text of ["10.20.0.0/24", "10.20.0.0 255.255.255.0", "10.20.0.0/255.255.255.0", " 10.20.0.0/24 ", "10.20.0.0   255.255.255.0"]) {
      expect(formatPrefix(parsePrefix(text))).toBe("10.20.0.0/24");
    }
  });

  test("no address has a value outside its family", () => {
    expect(() => addressAt(4, 2n ** 32n)).toThrow(RangeError);
    expect(() => addressAt(6, 2n ** 128n)).toThrow(RangeError);
    expect(() => addressAt(4, -1n)).toThrow(RangeError);
  });
});

describe("what is no address is refused with what to write instead", () => {
  test.each([
    ["010.0.0.1", 'address "010.0.0.1" has leading zeros: is it 10.0.0.1 or, as some programs read it, 8.0.0.1? Write it without them.'],
    ["10.0.0.08", 'address "10.0.0.08" has leading zeros. Write 10.0.0.8.'],
    ["10.0.0.256", 'address "10.0.0.256" has an octet 256. Octets go from 0 to 255.'],
    ["1.2.3.4.5", 'address "1.2.3.4.5" has 5 octets. An IPv4 address has four, such as 10.20.0.9.'],
    ["10.1", 'address "10.1" has 2 octets. An IPv4 address has four, such as 10.20.0.9.'],
    ["fe80::1%eth0", 'address "fe80::1%eth0" names a zone. Write fe80::1.'],
    ["10.0.0.1/24", 'address "10.0.0.1/24" has a length. Write 10.0.0.1.'],
    ["1::2::3", 'address "1::2::3" has "::" more than once. Write IPv6 such as 2001:db8::9.'],
    ["1:2:3", 'address "1:2:3" has 3 groups. An IPv6 address has eight, or "::" for a run of zeros.'],
    ["1:2:3:4:5:6:7:8:9", 'address "1:2:3:4:5:6:7:8:9" has 9 groups. An IPv6 address has eight, or "::" for a run of zeros.'],
    ["2001:db8::12345", 'address "2001:db8::12345" has a group "12345". A group is 1 to 4 of the digits 0-9 and a-f. Write IPv6 such as 2001:db8::9.'],
    ["1:2:3:4:5:6:7::8", 'address "1:2:3:4:5:6:7::8" has "::" beside eight groups. Leave it out.'],
    ["switch-1", 'address "switch-1" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.'],
    ["", "address is blank. Write an address, such as 10.20.0.9 or 2001:db8::9."],
    ["[2001:db8::9]", 'address "[2001:db8::9]" has brackets. Write 2001:db8::9.'],
    ["[2001:db8::9]:3260", 'address "[2001:db8::9]:3260" has brackets. Write the address alone, such as 2001:db8::9.'],
    ["[0.0.0.0]", 'address "[0.0.0.0]" has brackets. Write 0.0.0.0.'],
    ["12", 'address "12" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.'],
    ["[switch]", 'address "[switch]" has brackets. Write the address alone, such as 10.20.0.9.'],
    ["10.20.0.9:3260", 'address "10.20.0.9:3260" has a port. Write 10.20.0.9.'],
    ["10,20,0,9", 'address "10,20,0,9" has commas. Write 10.20.0.9.'],
    ["10.20.0.9 10.20.0.10", 'address "10.20.0.9 10.20.0.10" has a blank in it. Write one address, such as 10.20.0.9.'],
    ["2001:db8::9 ::1", 'address "2001:db8::9 ::1" has a blank in it. Write one address, such as 10.20.0.9.'],
    ["my switch", 'address "my switch" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.'],
    ["255.255.255.01", 'address "255.255.255.01" has leading zeros. Write 255.255.255.1.'],
    ["256.0.0.01", 'address "256.0.0.01" has an octet 256. Octets go from 0 to 255.'],
    [`10.0.0.${"9".repeat(40)}`, `address "10.0.0.${"9".repeat(32)}…" has an octet ${"9".repeat(40)}. Octets go from 0 to 255.`],
    [`10.0.0.${"9".repeat(41)}`, `address "10.0.0.${"9".repeat(32)}…" has an octet ${"9".repeat(39)}…. Octets go from 0 to 255.`],
    ["::1.2.3", 'address "::1.2.3" is not an IPv6 address with a dotted tail. Write one such as ::ffff:192.0.2.1.'],
    ["1:2:3:4:5:6:7:8:", 'address "1:2:3:4:5:6:7:8:" begins or ends with a colon. Write IPv6 such as 2001:db8::9.'],
    ["2001:::1", 'address "2001:::1" has "::" more than once. Write IPv6 such as 2001:db8::9.'],
    ["2001:db8::g", 'address "2001:db8::g" has a group "g". A group is 1 to 4 of the digits 0-9 and a-f. Write IPv6 such as 2001:db8::9.'],
  ])("%s", (text, sentence) => expect(problemOf(() => parseAddress(text)).sentence).toBe(sentence));

  test.each([
    ["10.1.2.3/8", 'network "10.1.2.3/8" has bits set after the /8. Write 10.0.0.0/8.'],
    ["10.0.0.0/33", 'network "10.0.0.0/33" has no length from 0 to 32 after the address. Write it like 10.20.0.0/24.'],
    ["2001:db8::/129", 'network "2001:db8::/129" has no length from 0 to 128 after the address. Write it like 2001:db8::/64.'],
    ["10.0.0.0/024", 'network "10.0.0.0/024" has a length with a leading zero. Write 10.0.0.0/24.'],
    ["10.0.0.0 255.0.255.0", 'network "10.0.0.0 255.0.255.0": "255.0.255.0" is not a mask. Its ones must come first, as in 255.255.255.0.'],
    ["2001:db8:: 255.255.255.0", 'network "2001:db8:: 255.255.255.0" has no length from 0 to 128 after the address. Write it like 2001:db8::/64.'],
    ["10.0.0.0", 'network "10.0.0.0" has no length. Write it with one, such as 10.0.0.0/32 for this one address.'],
    ["", 'network a blank has no address before its length. Write one such as 10.20.0.0/24.'],
    ["/24", 'network "/24" has no address before its length. Write one such as 10.20.0.0/24.'],
    ["switch", 'network "switch" is not a prefix. Write IPv4 such as 10.20.0.0/24, or IPv6 such as 2001:db8::/64.'],
    ["2001:db8::", 'network "2001:db8::" has no length. Write it with one, such as 2001:db8::/128 for this one address.'],
    ["[2001:db8::]/64", 'network "[2001:db8::]/64" has brackets. Write 2001:db8::/64.'],
    ["10,20,0,0/24", 'network "10,20,0,0/24" has commas. Write 10.20.0.0/24.'],
    ["10,20,0,0", 'network "10,20,0,0" has commas. Write the prefix alone, such as 10.20.0.0/24.'],
    ["010.020.0.0 255.255.0.0", 'network "010.020.0.0 255.255.0.0" has leading zeros: is it 10.20.0.0 or, as some programs read it, 8.16.0.0? Write it without them.'],
    ["10.20.0.0.0 or 10.20.1.0", 'network "10.20.0.0.0 or 10.20.1.0" has a blank in it. Write one prefix, such as 10.20.0.0/24.'],
    ["10.20.0.9/032", 'network "10.20.0.9/032" has a length with a leading zero. Write 10.20.0.9/32.'],
    ["10.20.0.0/24/", 'network "10.20.0.0/24/" has no length from 0 to 32 after the address. Write it like 10.20.0.0/24.'],
    ["10.0.0.0/", 'network "10.0.0.0/" has no length from 0 to 32 after the address. Write it like 10.20.0.0/24.'],
  ])("prefix %s", (text, sentence) => expect(problemOf(() => parsePrefix(text, "network")).sentence).toBe(sentence));

  test("where nobody says of which argument, it is of the prefix or of the address", () => {
    expect(problemOf(() => parseInterface("switch")).sentence).toMatch(/^prefix "switch" is not a prefix\./);
    expect(problemOf(() => parsePrefix("switch")).argument).toBe("prefix");
    expect(problemOf(() => parseAddress("switch")).argument).toBe("address");
  });

  test("no sign of ASCII but a digit may follow the digit of a length", () => {
    for (let code = 0; code < 128; code++) {
      const sign = String.fromCharCode(code);
      const isDigit = sign >= "0" && sign <= "9";
      for (const [start, most] of [["0.0.0.0/2", 32], ["::/2", 128], ["::/12", 128]] as const) {
        const length = Number(start.split("/")[1]! + sign);
        if (sign.trim() === "") expect(String(parsePrefix(start + sign))).toBe(start);
        else if (isDigit && length <= most) expect(parsePrefix(start + sign).length).toBe(length);
        else expect(problemOf(() => parsePrefix(start + sign)).sentence).toMatch(/^prefix .*(has no length from 0 to |"2\." is not a mask)/);
      }
    }
  });

  test.each([
    ["10.0.0.9-10.0.0.1", 'taken "10.0.0.9-10.0.0.1" runs backwards. Write 10.0.0.1-10.0.0.9.'],
    ["10.0.0.9-::1", 'taken "10.0.0.9-::1" runs from one family to the other. Write two of one family.'],
  ])("range %s", (text, sentence) => expect(problemOf(() => parseBlock(text)).sentence).toBe(sentence));
});
