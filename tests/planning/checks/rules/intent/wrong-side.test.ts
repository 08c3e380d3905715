import { wrongSide } from "../../../../../src/planning/checks/rules/intent/wrong-side";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a port of side A on a switch of side B", () => {
  const rows = sample();
  Object.assign(rows.ports[24]!, { switch: "cs-sw2", switchPort: "9" });
  expect(found(wrongSide, rows)).toEqual(["Ports 29 Switch: cs-array-1 port A/0 is in cs-data-1 (side A), cs-sw2 is of side B. Cable it to one of side A."]);
});

test("takes a management port, which has no side, and a switch without one", () => {
  const rows = sample();
  expect(cells(wrongSide, rows)).toEqual([]);
  rows.switches[5]!.side = null;
  Object.assign(rows.ports[24]!, { switch: "cs-sw2", switchPort: "9" });
  expect(cells(wrongSide, rows)).toEqual([]);
});

test("finds a port of side B by its model that is in a data network of side A, and takes a management port whatever its model says", () => {
  const rows = sample();
  rows.modelPorts[0]!.side = "B";
  rows.modelPorts[2]!.side = "B";
  rows.arrays[5]!.model = "Sorrel";
  for (const port of rows.ports.slice(24, 36)) if (port.network === "mgmt") Object.assign(port, { switch: "cs-sw2" });
  const said = (row: number, port: string, network: string) => `Ports ${row} Network: cs-array-1 port ${port} is of side B by its model, ${network} of side A. Name a network of side B.`;
  expect(found(wrongSide, rows).filter((text) => text.includes("Network:"))).toEqual([
    said(29, "A/0", "cs-data-1"), said(30, "A/0", "cs-data-1-v6"), said(35, "B/0", "cs-data-1"), said(36, "B/0", "cs-data-1-v6"),
  ]);
});
