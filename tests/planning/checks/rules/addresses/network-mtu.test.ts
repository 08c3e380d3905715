import { networkMtu } from "../../../../../src/planning/checks/rules/addresses/network-mtu";
import { cells, found, sample } from "../../../../support/plan-rows";

// Least MTU of a link: 68 bytes in IPv4 (RFC 791 section 3.2), 1280 in IPv6 (RFC 8200 section 5); most: a length of 16 bits.
test("finds an MTU that no link of its family has", () => {
  const rows = sample();
  Object.assign(rows.networks[0]!, { mtu: 67 });
  Object.assign(rows.networks[1]!, { mtu: 65_536 });
  Object.assign(rows.networks[9]!, { mtu: 1279 });
  expect(found(networkMtu, rows)).toEqual([
    "Networks 5 MTU: MTU 67 of rr-data-1 is none that IPv4 can have. Write 68 to 65535, such as 1500, or 9000 for jumbo frames.",
    "Networks 6 MTU: MTU 65536 of rr-data-2 is none that IPv4 can have. Write 68 to 65535, such as 1500, or 9000 for jumbo frames.",
    "Networks 14 MTU: MTU 1279 of cs-mgmt-v6 is none that IPv6 can have. Write 1280 to 65535, such as 1500, or 9000 for jumbo frames.",
  ]);
});

test("takes the least and the most, and says nothing of a network of another kind", () => {
  const rows = sample();
  Object.assign(rows.networks[0]!, { mtu: 68 });
  Object.assign(rows.networks[1]!, { mtu: 65_535 });
  Object.assign(rows.networks[2]!, { mtu: 20, kind: "other" });
  Object.assign(rows.networks[9]!, { mtu: 1280 });
  expect(cells(networkMtu, rows)).toEqual([]);
});
