import { reservedOutside } from "../../../../../src/planning/checks/rules/addresses/reserved-outside";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a reserved range of another network, and of another family", () => {
  const rows = sample();
  rows.networks[0]!.reserved = "10.64.19.64/26";
  rows.networks[1]!.reserved = "10.64.12.64/26, fd6b:41c2:9e07:31::40/122";
  expect(found(reservedOutside, rows)).toEqual([
    "Networks 5 Reserved: Reserved of rr-data-1 names addresses outside 10.64.11.0/24, which keeps nothing back. Write some of it.",
    "Networks 6 Reserved: Reserved of rr-data-2 names addresses outside 10.64.12.0/24, which keeps nothing back. Write some of it.",
  ]);
});

test("takes a range that reaches beyond the network, and a network that keeps nothing back", () => {
  const rows = sample();
  rows.networks[0]!.reserved = "10.64.11.250-10.64.12.5";
  rows.networks[1]!.reserved = null;
  expect(cells(reservedOutside, rows)).toEqual([]);
});
