import { writeCables } from "../../../src/planning/assignment";
import { cableLabels } from "../../../src/planning/handouts";
import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import type { WorkbookSnapshot } from "../../../src/sheet";
import { planTables } from "../../../src/planning/plan/set-up";
import { carryOut } from "../../support/plan-changes";
import { snapshotOf } from "../../support/plain-workbook";
import { problemOf } from "../../support/sentence";

const site = "Mill";
const rows = {
  settings: [{ setting: "Last cable id" }],
  feeds: [{ feed: "F1", site }],
  switches: [{ switch: "s1", site, feedA: "F1", feedB: "no such feed" }, { switch: "s2", site }],
  hosts: [{ host: "h", site }, { host: "g", site }],
  hostPorts: [{ host: "h", card: "c1", switch: "s1", switchPort: "5" }],
  links: [{ from: "s1", to: "s2" }, { from: "s1", to: "s2" }, { from: "h", to: "s1" }, { from: "g", to: "s2" }, { from: "g", to: "nowhere" }],
  arrays: [{ array: "a", site, feedA: "f1/L2" }],
  ports: [
    { array: "a", controller: "A", port: "0", network: "v4", switch: "s1", switchPort: "1" }, { array: "a", controller: "A", port: "0", network: "v6", switch: "s1", switchPort: "1" },
    { array: "a", controller: "B", port: "0", switch: "s2" },
  ],
} satisfies TableRows;

function book(more: TableRows = {}): WorkbookSnapshot {
  return snapshotOf(planTables({ sheets: [] }, ["settings", "feeds", "switches", "hosts", "hostPorts", "links", "arrays", "ports", "cables"], { ...rows, ...more }));
}

function cablesOf(workbook: WorkbookSnapshot): string[] {
  return new PlanModel(workbook).rows("cables").map(({ id, from, to, kind, colour }) => [id, from, to, kind, colour].join(" | "));
}

const lastId = (workbook: WorkbookSnapshot): string | undefined => new PlanModel(workbook).find("settings", "Last cable id")?.value;

describe("writing cables", () => {
  test("gives each that is known from end to end a row: ports, host ports, links that count, cords to feeds that there are", () => {
    const written = carryOut(book(), writeCables(book()));
    expect(cablesOf(written)).toEqual([
      "C0001 | a port A/0 | s1 port 1 |  | ", "C0002 | h port c1 | s1 port 5 |  | ", "C0003 | s1 | s2 |  | ", "C0004 | s1 | s2 |  | ", "C0005 | g | s2 |  | ",
      "C0006 | a supply A | feed f1/L2 | power | ", "C0007 | s1 supply A | feed F1 | power | ",
    ]);
    expect(lastId(written)).toBe("C0007");
    expect(writeCables(written)).toEqual({ writes: [], growths: [] });
  });

  test("keeps what people added, writes the ends of today, and gives no id again", () => {
    const cables = [{ id: "C0004", from: "a port A/0", to: "s9 port 9", kind: "fibre", colour: "aqua", lengthM: 3 }, { id: "spare", colour: "red" }, { id: "C0002", from: "gone", to: "away" }];
    const start = book({ cables, settings: [{ setting: "Last cable id", value: "C0011" }] });
    const written = carryOut(start, writeCables(start));
    expect(cablesOf(written).slice(0, 4)).toEqual(["C0004 | a port A/0 | s1 port 1 | fibre | aqua", "spare |  |  |  | red", "C0002 | gone | away |  | ", "C0012 | h port c1 | s1 port 5 |  | "]);
    expect(lastId(written)).toBe("C0017");
  });

  test("follows a device that got another name by the end that stayed", () => {
    const start = carryOut(book(), writeCables(book()));
    const cables = new PlanModel(start).rows("cables").map(({ id, from, to }) => ({ id, from: from.replace("a port", "old name port"), to }));
    const renamed = book({ cables });
    expect(cablesOf(carryOut(renamed, writeCables(renamed)))[0]).toBe("C0001 | a port A/0 | s1 port 1 |  | ");
  });

  test("remembers the last id in a row of its own where the settings have none for it", () => {
    const start = book({ settings: [] });
    const written = carryOut(start, writeCables(start));
    expect(lastId(written)).toBe("C0007");
  });

  test("refuses a workbook without the table, and says where it is", () => {
    expect(problemOf(() => writeCables({ sheets: [] })).sentence).toBe("The workbook has no table Cables. Choose Cables under Add a table, or name the table BayCables.");
  });
});

test("labels say id, colour and length above the ends; links and cords have one once they have a row", () => {
  const written = carryOut(book(), writeCables(book()));
  const cables = new PlanModel(written).rows("cables").map(({ id, from, to }, at) => ({ id, from, to, ...(at === 0 ? { colour: "aqua", lengthM: 2.5 } : {}) }));
  const labels = cableLabels(new PlanModel(book({ cables })));
  expect(labels.slice(0, 2)).toEqual([{ head: "C0001 aqua 2.5 m", near: "a port A/0", far: "s1 port 1" }, { head: "C0001 aqua 2.5 m", near: "s1 port 1", far: "a port A/0" }]);
  expect(labels).toHaveLength(14);
  expect(new Set(labels.map((label) => Object.values(label).join("\n"))).size).toBe(14);
  expect(cableLabels(new PlanModel(book()))).toHaveLength(4);
});
