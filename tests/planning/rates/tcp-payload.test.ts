import { tcpPayload, type Framing } from "../../../src/planning/rates";
import { problemOf } from "../../support/sentence";

const plain: Framing = { mtu: 1500, ipVersion: 4, timestamps: false, vlan: false };

test("ports and speed multiply", () => {
  expect(tcpPayload(4, 25, plain)).toBeCloseTo(100 * tcpPayload(1, 1, plain), 9);
});

test("every header costs: IPv6 (RFC 8200 section 3), timestamps (RFC 7323 section 3.2), a VLAN tag (IEEE 802.1Q), and so does a smaller MTU", () => {
  const full = tcpPayload(1, 10, plain);
  for (const dearer of [{ ipVersion: 6 }, { timestamps: true }, { vlan: true }, { mtu: 1400 }] as Partial<Framing>[]) {
    expect(tcpPayload(1, 10, { ...plain, ...dearer })).toBeLessThan(full);
  }
});

test("the smallest IPv4 packet, 68 bytes (RFC 791 section 3.2), still carries 16 behind headers of 20, 20 (RFC 9293 section 3.1) and 12 (RFC 7323)", () => {
  expect(tcpPayload(1, 1, { ...plain, mtu: 68, timestamps: true })).toBeCloseTo((125 * 16) / 106, 10);
});

test.each<[number, 4 | 6, string]>([
  [67, 4, "mtu is 67. IPv4 needs 68 bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames."],
  [1279, 6, "mtu is 1279. IPv6 needs 1280 bytes or more. Write a larger one, such as 1500, or 9000 for jumbo frames."],
])("an MTU of %i is refused for IPv%i (RFC 791 section 3.2, RFC 8200 section 5)", (mtu, ipVersion, sentence) => {
  expect(problemOf(() => tcpPayload(1, 1, { ...plain, mtu, ipVersion })).sentence).toBe(sentence);
});
