import { layoutDrives, parseScheme, writeCost } from "../../../src/planning/capacity";

test.each([
  ["RAID 0", 1],
  ["RAID 1", 2],
  ["RAID 10", 2],
  ["3 copies", 3],
  ["RAID 5", 4],
  ["RAID 6", 6],
  ["triple parity 8+3", 8],
  ["8+2", 6],
])("a small write to %s takes %i operations", (scheme, operations) => {
  expect(writeCost(parseScheme(scheme, "scheme"))).toBe(operations);
});

test("a mirror laid on four drives takes four", () => {
  const mirror = parseScheme("mirror", "scheme");
  expect(writeCost(mirror, layoutDrives(mirror, 4))).toBe(4);
});
