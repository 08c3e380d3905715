import { notFilled } from "../../../../../src/planning/checks/rules/references/not-filled";
import { cells, found, sample } from "../../../../support/plan-rows";

test("names once a table what is blank there, as much as fits, at the first such cell", () => {
  const rows = sample();
  rows.switches[1]!.ports = null;
  expect(found(notFilled, rows)).toEqual(["Switches 6 Ports: Blank in Switches: Ports of rr-sw2. What needs it is not checked."]);
  for (const row of rows.racks) for (const column of ["units", "depthMm", "limitKg", "coolingW", "outlets"]) row[column] = null;
  expect(found(notFilled, rows)[0]).toBe("Racks 5 Units: Blank in Racks: Units, Depth mm, Limit kg, Cooling W, Outlets. What needs it is not checked.");
  rows.arrays[0] = { array: "bare", site: "Reading Room" };
  expect(found(notFilled, rows).find((one) => one.startsWith("Arrays"))).toBe(
    "Arrays 5 Model: Blank in Arrays: Model of bare, Serial of bare, Rack of bare, Bottom unit of bare, Units of bare and 14 more. What needs it is not checked.",
  );
});

test("asks a switch for frame bytes under MTU 9000, and not where its packets are of 1500", () => {
  const rows = sample();
  rows.switches[0]!.frameBytes = null;
  expect(cells(notFilled, rows)).toEqual(["Switches 5 Frame bytes"]);
  for (const network of rows.networks) network.mtu = 1500;
  expect(cells(notFilled, rows)).toEqual([]);
});

test("asks no host for what its ports say, and no service what it is for", () => {
  const rows = sample();
  rows.hostPorts = [{ host: "scan-1", card: "1", network: "rr-data-1", initiatorName: "iqn.2024-05.example.thornmere:scan-1" }];
  Object.assign(rows.hosts[0]!, { address: null, initiatorName: null });
  expect(cells(notFilled, rows)).toEqual([]);
  rows.quote[2]!.for = null;
  expect(cells(notFilled, rows)).toEqual(["Quote 7 For"]);
});

test("the sample leaves nothing blank", () => expect(cells(notFilled, sample())).toEqual([]));
