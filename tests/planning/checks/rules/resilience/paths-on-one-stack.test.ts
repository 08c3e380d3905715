import { pathsOnOneStack } from "../../../../../src/planning/checks/rules/resilience/paths-on-one-stack";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

function stacked(...stacks: readonly string[]): EditableRows {
  const rows = sample();
  stacks.forEach((stack, at) => void (rows.switches[at]!.stack = stack));
  return rows;
}

// Common practice, no source: switches of one stack fail one by one, but a change of firmware restarts the stack.
test("warns of arrays and hosts whose paths all go to one stack, however it is spelt", () => {
  expect(found(pathsOnOneStack, stacked("core", "Core"))).toEqual([
    "Arrays 5 Array: All data ports of rr-array-1 go to stack core: new firmware restarts all of it at once. Cable some to a switch outside it, or plan for the standstill.",
    "Arrays 6 Array: All data ports of rr-array-2 go to stack core: new firmware restarts all of it at once. Cable some to a switch outside it, or plan for the standstill.",
    "Hosts 5 Host: All paths of scan-1 go to stack core: new firmware restarts all of it at once. Cable some to a switch outside it, or plan for the standstill.",
  ]);
});

test("takes two stacks, a stack and a switch by itself, and leaves one switch alone to its own rule", () => {
  expect(cells(pathsOnOneStack, stacked("left", "right"))).toEqual([]);
  expect(cells(pathsOnOneStack, stacked("core"))).toEqual([]);
  const rows = stacked("core", "core");
  for (const port of rows.ports.slice(0, 12)) port.switch = "rr-sw1";
  rows.links = rows.links.filter(({ from }) => from !== "scan-1");
  expect(cells(pathsOnOneStack, rows)).toEqual([]);
});
