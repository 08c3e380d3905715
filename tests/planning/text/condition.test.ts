import { conditionHolds, parseCondition } from "../../../src/planning/text";

describe("a condition", () => {
  test.each([
    ["", []],
    ["  ", []],
    ["Cluster act = join", [{ field: "Cluster act", value: "join" }]],
    ["A=b AND C = d", [{ field: "A", value: "b" }, { field: "C", value: "d" }]],
    ["Gateway =", [{ field: "Gateway", value: "" }]],
    ["Value = a=b", [{ field: "Value", value: "a=b" }]],
    ["Brand = x", [{ field: "Brand", value: "x" }]],
  ])("%j is read as its comparisons", (text, comparisons) => {
    expect(parseCondition(text, "Step 1")).toEqual(comparisons);
  });

  test.each(["always", "= join", "A = b and C"])("%j is refused with what to write", (text) => {
    expect(() => parseCondition(text, "Step 1")).toThrow(`Step 1 "${text}" is no condition. Write field = value, joined by and, such as Cluster act = join.`);
  });

  test("holds where every field has its value, without case and blanks at the ends", () => {
    const fields: Readonly<Record<string, string>> = { "Cluster act": " Join ", Site: "North", Gateway: " " };
    const holds = (text: string): boolean => conditionHolds(parseCondition(text, "Step 1"), (field) => fields[field]!);
    expect(holds("")).toBe(true);
    expect(holds("Cluster act = JOIN")).toBe(true);
    expect(holds("Cluster act = join and Site = north")).toBe(true);
    expect(holds("Cluster act = join and Site = south")).toBe(false);
    expect(holds("Cluster act = create and Site = north")).toBe(false);
    expect(holds("Gateway =")).toBe(true);
    expect(holds("Site =")).toBe(false);
  });
});
