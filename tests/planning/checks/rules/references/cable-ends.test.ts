import { cableEnds } from "../../../../../src/planning/checks/rules/references/cable-ends";
import { cells, found, mends, sample, type EditableRows } from "../../../../support/plan-rows";

function withCables(...cables: EditableRows["cables"]): EditableRows {
  return { ...sample(), cables };
}

test("finds a cable that the plan has laid to another port since, by the end that stayed, and mends it", () => {
  const rows = withCables(
    { id: "C0001", from: "rr-array-1 port A/0", to: "rr-sw1 port 9", colour: "blue" },
    { id: "C0002", from: "the old array port A/2", to: "rr-sw1 port 2" },
  );
  expect(found(cableEnds, rows)).toEqual([
    "Cables 5 From: C0001 runs from rr-array-1 port A/0 to rr-sw1 port 1 by the plan. Write those ends, and label it anew.",
    "Cables 6 From: C0002 runs from rr-array-1 port A/2 to rr-sw1 port 2 by the plan. Write those ends, and label it anew.",
  ]);
  expect(mends(cableEnds, rows)).toEqual(["Cables 5 From: rr-array-1 port A/0", "Cables 5 To: rr-sw1 port 1", "Cables 6 From: rr-array-1 port A/2", "Cables 6 To: rr-sw1 port 2"]);
});

test("finds a cable that the plan does not have, and the second row of one", () => {
  const rows = withCables(
    { id: "C0001", from: "rr-array-1 port A/0", to: "rr-sw1 port 1" }, { id: "C0002", from: "RR-array-1 port a/0", to: "rr-sw1 port 1" },
    { id: "C0003", from: "somewhere", to: "elsewhere" }, { id: "C0004", to: "feed RR-A" },
  );
  expect(found(cableEnds, rows)).toEqual([
    "Cables 6 From: No other cable of the plan runs from RR-array-1 port a/0 to rr-sw1 port 1. Mend its ends, or empty both once it is taken out.",
    "Cables 7 From: No other cable of the plan runs from somewhere to elsewhere. Mend its ends, or empty both once it is taken out.",
    "Cables 8 From: No other cable of the plan runs from a blank end to feed RR-A. Mend its ends, or empty both once it is taken out.",
  ]);
});

test("takes both ends in either order, links, cords, and a cable that lies in store", () => {
  const rows = withCables(
    { id: "C0001", from: "rr-sw1 port 1", to: "rr-array-1 port A/0" }, { id: "C0002", from: "rr-sw2", to: "RR-SW1" }, { id: "C0003", from: "cs-array-1 supply B", to: "feed CS-B/L2" },
    { id: "C0004", from: "rr-sw1 supply A", to: "feed RR-A" }, { id: "C0005", colour: "red", lengthM: 2 },
  );
  expect(cells(cableEnds, rows)).toEqual([]);
});
