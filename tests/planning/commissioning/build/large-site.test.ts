import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { readPlannedTab } from "../../../../src/planning/commissioning/tab";
import { at, slotsPrefix } from "../../../../src/planning/commissioning/tab/tab-columns";
import { moment } from "../../../support/commissioning-plan";
import { countCells, smallestPoints } from "../../../support/count-cells";
import { largeSite, type LargeSite } from "../../../support/large-site";

function tabOf(site: LargeSite) {
  const source = readCommissioningPlan(largeSite(site));
  const { tab, rows } = buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  return { model: source.model, tab, rows, steps: readPlannedTab(tab).steps, shown: tab.rows.flatMap((row) => row.map(({ value }) => String(value ?? ""))).join("\n") };
}

describe.each<[string, LargeSite]>([
  ["a new cluster", {}],
  ["a live cluster that joining adds no capacity to", { cluster: "existing", joinAddsCapacity: "no" }],
  ["a live cluster that joining adds capacity to", { cluster: "existing", joinAddsCapacity: "yes" }],
])("the tab of four arrays of 24 drives, two switches and three hosts, for %s", (_, site) => {
  const { model, tab, rows, steps, shown } = tabOf(site);

  test("asks for at most 350 cells besides hold points and the pasted list of drives", () => {
    expect(countCells(tab).typed).toBeLessThanOrEqual(350);
    expect(countCells(tab).pasted).toBe(4 * 24);
  });

  test("is told to have as many steps as its numbers count", () => {
    expect(rows).toBe(Math.max(...steps.map(({ no }) => Number(no))));
    expect(rows).toBeLessThan(steps.length);
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

  test("takes at most 16 pages of A4, each of which begins with the labels of the grid that it is in", () => {
    const { breaksBefore } = tab.print!;
    expect(breaksBefore.length + 1).toBeLessThanOrEqual(16);
    const keyOf = (row: number): string => String(tab.rows[row]![at.key]!.value ?? "");
    expect(breaksBefore.filter((row) => keyOf(row).startsWith(slotsPrefix))).toEqual([]);
    expect(breaksBefore.filter((row) => keyOf(row + 1).startsWith(slotsPrefix)).every((row) => tab.rows[row]!.some(({ value }) => value === "Found"))).toBe(true);
  });

  test("has rows of 7 mm wherever people write by hand", () => {
    const written = steps.filter(({ key }) => !key.includes(".bay-")).map(({ row }) => row);
    expect(Math.min(...written.map((row) => tab.rowHeights![row]!)) * 0.82 * (25.4 / 72)).toBeGreaterThanOrEqual(7);
  });

  test("prints at 9 points or more, on paper of its own", () => {
    expect(tab.print).toMatchObject({ orientation: "landscape", fitToWidth: false, paper: "A4", firstPage: 1 });
    expect(smallestPoints(tab)).toBeGreaterThanOrEqual(9);
  });
});

test("no step of a tab for a live cluster has switches, hosts or other members stopped", () => {
  const { steps } = tabOf({ cluster: "existing", joinAddsCapacity: "no" });
  expect(steps.filter(({ stepId }) => stepId.startsWith("INS-"))).toEqual([]);
  expect(steps.filter(({ step }) => /restart (it|switch|the host)|Shut (every|all) array/i.test(step))).toEqual([]);
});

test("a step that is done of several arrays says what it says once, above the first of its rows", () => {
  const { tab, steps } = tabOf({});
  const words = tab.rows.flatMap((row) => row.flatMap(({ value }) => (typeof value === "string" && value.startsWith("INS-357: ") ? [value] : [])));
  expect(words).toHaveLength(1);
  const power = steps.filter(({ stepId }) => stepId === "INS-357");
  expect([power.length, new Set(power.map(({ step }) => step)).size, power[0]!.step]).toEqual([4, 1, words[0]!.slice("INS-357: ".length)]);
});
