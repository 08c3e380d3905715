import { frameBytes } from "../../../../../src/planning/checks/rules/intent/frame-bytes";
import { cells, found, mends, sample } from "../../../../support/plan-rows";

// 14 bytes of header, 4 of tag, 4 of check sequence: IEEE 802.3 clause 3.1.1, IEEE 802.1Q clause 9.6.
test("finds a switch whose frames are one byte short of MTU 9000 and 22, and mends it", () => {
  const rows = sample();
  rows.switches[0]!.frameBytes = 9021;
  expect(found(frameBytes, rows)).toEqual(["Switches 5 Frame bytes: rr-sw1 forwards frames of 9021 bytes; rr-data-1 (MTU 9000) needs 9022. Set it there and write it, or lower the MTU."]);
  expect(mends(frameBytes, rows)).toEqual(["Switches 5 Frame bytes: 9022"]);
});

test("takes one that just fits, one that does not say, and one that carries small packets alone", () => {
  const rows = sample();
  rows.switches[0]!.frameBytes = 9022;
  rows.switches[1]!.frameBytes = null;
  Object.assign(rows.switches[2]!, { networks: "mgmt", frameBytes: 1522 });
  expect(cells(frameBytes, rows)).toEqual([]);
});
