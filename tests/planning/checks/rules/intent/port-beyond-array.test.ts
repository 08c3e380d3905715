import { portBeyondArray } from "../../../../../src/planning/checks/rules/intent/port-beyond-array";
import { cells, found, sample } from "../../../../support/plan-rows";

test("stops a port, and a controller, that the array does not have", () => {
  const rows = sample();
  rows.ports[0]!.port = "3";
  rows.ports[4]!.controller = "C";
  expect(found(portBeyondArray, rows)).toEqual([
    "Ports 5 Port: rr-array-1 has no port A/3 by its Controllers and Ports. Write one that it has, or mend those.",
    "Ports 9 Port: rr-array-1 has no port C/1 by its Controllers and Ports. Write one that it has, or mend those.",
  ]);
});

test("stops a row of Model ports about a port that the model does not have", () => {
  const rows = sample();
  rows.modelPorts.push({ model: "Rowan 12", port: "3", role: "data" }, { model: "Rowan 12", controller: "C", port: "0" });
  expect(found(portBeyondArray, rows)).toEqual([
    "Model ports 11 Port: Rowan 12 has no port 3 by its Controllers and Ports in Models. Write one that it has, or mend those.",
    "Model ports 12 Port: Rowan 12 has no port C/0 by its Controllers and Ports in Models. Write one that it has, or mend those.",
  ]);
});

test("takes the last port that there is, any case, and whatever an array has that does not say", () => {
  const rows = sample();
  rows.ports[2]!.controller = "a";
  rows.modelPorts.push({ model: "Rowan 12", controller: "B", port: "2" }, { model: "Sorrel 4", port: "9" });
  rows.arrays.push({ array: "new", site: "Bindery" });
  rows.ports.push({ array: "new", controller: "Q", port: "77" }, { array: "lost", port: "1" });
  expect(cells(portBeyondArray, rows)).toEqual([]);
});
