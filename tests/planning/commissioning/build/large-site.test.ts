import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import { moment } from "../../../support/commissioning-plan";
import { countCells, smallestPoints } from "../../../support/count-cells";
import { largeSite, type LargeSite } from "../../../support/large-site";

function tabOf(site: LargeSite) {
  const source = readCommissioningPlan(largeSite(site));
  const { tab } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  return { model: source.model, tab, steps: readPlannedTab(tab).steps, shown: tab.rows.flatMap((row) => row.map(({ value }) => String(value ?? ""))).join("\n") };
}

describe.each<[string, LargeSite]>([
  ["a new cluster", {}],
  ["a live cluster that joining adds no capacity to", { cluster: "existing", joinAddsCapacity: "no" }],
  ["a live cluster that joining adds capacity to", { cluster: "existing", joinAddsCapacity: "yes" }],
])("the tab of four arrays of 24 drives, two switches and three hosts, for %s", (_, site) => {
  const { model, tab, steps, shown } = tabOf(site);

  test("asks for at most 350 cells besides hold points and the pasted list of drives", () => {
    expect(countCells(tab).typed).toBeLessThanOrEqual(350);
    expect(countCells(tab).pasted).toBe(4 * 24);
  });

  test("has every hold point in a row of its own", () => {
    const holds = steps.filter(({ holdPoint }) => holdPoint);
    expect(holds.length).toBeGreaterThan(40);
    expect(holds.filter(({ slot }) => slot !== null)).toEqual([]);
    expect(new Set(holds.map(({ row }) => row)).size).toBe(holds.length);
  });

  test("holds every planned address of a port, serial number, bay and ping target", () => {
    const addresses = model.rows("ports").map(({ address }) => address);
    expect([addresses.length, addresses.filter((address) => address === "" || !shown.includes(address))]).toEqual([24, []]);
    expect(model.rows("drives").filter(({ serial }) => !shown.includes(serial))).toEqual([]);
    expect(model.rows("arrays").filter(({ serial }) => !shown.includes(serial))).toEqual([]);
    for (const network of ["10.64.81.", "10.64.82."]) {
      const targets = addresses.filter((address) => address.startsWith(network)).join(", ");
      expect(steps.filter(({ expected }) => expected === targets)).toHaveLength(3);
    }
  });

  test("prints at 9 points or more, on paper of its own", () => {
    expect(tab.print).toMatchObject({ orientation: "landscape", fitToWidth: false, paper: "A4", firstPage: 1 });
    expect(smallestPoints(tab)).toBeGreaterThanOrEqual(9);
  });
});

test("no step of a tab for a live cluster has switches, hosts or other members stopped", () => {
  const { steps } = tabOf({ cluster: "existing", joinAddsCapacity: "no" });
  expect(steps.filter(({ stepId }) => stepId.startsWith("INS-"))).toEqual([]);
  expect(steps.filter(({ step }) => /restart (it|switch|the host)|Shut every array/i.test(step))).toEqual([]);
});
