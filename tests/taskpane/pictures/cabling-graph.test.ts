import { PlanModel } from "../../../src/planning/plan/model";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import { describeCabling, drawCabling, layoutCabling } from "../../../src/taskpane/pictures/cabling-graph";
import { snapshotOf } from "../../support/plain-workbook";

const site = {
  sites: [{ site: "Mill" }],
  arrays: [{ array: "one", site: "Mill", controllers: "A,B" }],
  hosts: [{ host: "h", site: "Mill" }],
  switches: [{ switch: "s1", site: "Mill" }, { switch: "s2", site: "Mill" }],
} as const satisfies TableRows;

function cablingOf(ports: readonly (readonly [string, string])[], links: readonly (readonly [string, string])[]) {
  const rows: TableRows = { ...site, ports: ports.map(([controller, to], port) => ({ array: "one", controller, port: String(port), switch: to })), links: links.map(([from, to]) => ({ from, to })) };
  return layoutCabling(new PlanModel(snapshotOf(planSetUp({ sheets: [] }, rows))), "Mill");
}

describe("the cabling of a site", () => {
  test("has no single point where two controllers reach two switches and both reach the host", () => {
    const layout = cablingOf([["A", "s1"], ["A", "s2"], ["B", "s1"], ["B", "s2"]], [["s1", "h"], ["s2", "h"]]);
    expect(layout.nodes.filter(({ isSinglePoint }) => isSinglePoint)).toEqual([]);
    expect(layout.runs.filter(({ isSinglePoint }) => isSinglePoint)).toEqual([]);
    expect(describeCabling(layout)).toBe("Mill: 6 cables between 5 devices. No single point parts an array from a host.");
  });

  test("marks the one switch and the one cable on which everything hangs", () => {
    const layout = cablingOf([["A", "s1"], ["B", "s1"]], [["h", "s1"]]);
    expect(layout.nodes.filter(({ isSinglePoint }) => isSinglePoint).map(({ name }) => name)).toEqual(["s1"]);
    expect(layout.runs.filter(({ isSinglePoint }) => isSinglePoint).map(({ from, to }) => `${from}-${to}`)).toEqual(["h-s1"]);
  });

  test("does not call a controller a single point while the other one is cabled too", () => {
    const layout = cablingOf([["A", "s1"], ["B", "s2"]], [["s1", "h"], ["s2", "h"]]);
    expect(layout.nodes.filter(({ isSinglePoint }) => isSinglePoint)).toEqual([]);
  });

  test("counts parallel cables as one run that no single cable parts", () => {
    const layout = cablingOf([["A", "s1"], ["A", "s1"]], [["s1", "h"]]);
    expect(layout.runs[0]).toMatchObject({ count: 2, isSinglePoint: false });
    expect(layout.nodes.find(({ name }) => name === "one A")!.isSinglePoint).toBe(true);
  });

  test("says what is not known instead of that there is no single point", () => {
    const layout = cablingOf([["A", "s1"], ["B", "s2"]], []);
    expect(describeCabling(layout)).toBe("Mill: 2 cables between 5 devices. Not known: how h is cabled. Of the rest no single point is known.");
    expect(drawCabling(layout).shapes.map(({ text }) => text)).toContain("? Not known: how h is cabled");
    expect(describeCabling(cablingOf([], [["s1", "h"]]))).toContain("Not known: how one is cabled.");
  });

  test("says what nothing joins", () => {
    expect(cablingOf([["A", "s1"]], [["s2", "h"]]).parted).toEqual(["one and h"]);
    expect(describeCabling(cablingOf([], []))).toBe("Mill: nothing is cabled yet.");
  });
});

describe("the picture of the cabling", () => {
  test("gives a single point a sign and a second frame, and a single cable dashes", () => {
    const picture = drawCabling(cablingOf([["A", "s1"], ["B", "s1"]], [["h", "s1"]]));
    expect(picture.shapes.filter(({ text }) => text?.startsWith("(1)"))).toHaveLength(1);
    expect(picture.shapes.filter(({ attributes }) => String(attributes["class"]).includes("inner"))).toHaveLength(1);
    expect(picture.shapes.filter(({ attributes }) => attributes["class"] === "cable single")).toHaveLength(1);
  });

  test("keeps every box inside the picture", () => {
    const { width, height, shapes } = drawCabling(cablingOf([["A", "s1"], ["B", "s2"]], [["s1", "h"]]));
    for (const { tag, attributes } of shapes) {
      if (tag !== "rect") continue;
      expect(Number(attributes["x"]) + Number(attributes["width"])).toBeLessThanOrEqual(width);
      expect(Number(attributes["y"]) + Number(attributes["height"])).toBeLessThanOrEqual(height);
    }
  });
});
