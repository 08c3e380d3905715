import { readFileSync } from "node:fs";
import { join } from "node:path";
import { columnsOf, derivedFieldsOf, forEachOf, layerTables, nameColumn, recordKinds, schemaVersion, tableKeys, tables, type LayerName } from "../../../../src/planning/plan/schema";

describe("the layout of the planning tables", () => {
  test("has a version: whoever adds a table or a column raises it, and adds the layout as a file", () => {
    const layout: unknown = JSON.parse(readFileSync(join(__dirname, `layout-${schemaVersion}.json`), "utf8"));
    expect(tableKeys.map((key) => [tables[key].name, columnsOf(key).map(([, { header }]) => header)])).toEqual(Object.entries(layout as object));
  });

  test("has a table for every key, in the order of the sheets, none of one name", () => {
    expect(Object.keys(tables)).toEqual([...tableKeys]);
    expect(new Set(tableKeys.map((key) => tables[key].name)).size).toBe(tableKeys.length);
  });

  test.each(tableKeys)("gives the columns of %s different headers, and its rows a name", (key) => {
    const headers = columnsOf(key).map(([, { header }]) => header.toLowerCase());
    expect(new Set(headers).size).toBe(headers.length);
    expect(columnsOf(key).find(([name]) => name === nameColumn(key))?.[1]).toMatchObject({ kind: "text", required: true });
  });

  test("names rows by their first required column", () => {
    expect(["settings", "ports", "steps", "prompts", "arrays", "jobs"].map((key) => nameColumn(key as (typeof tableKeys)[number]))).toEqual(["setting", "array", "stepId", "model", "array", "job"]);
  });

  test("offers every kind of record but the choice, which needs words of its own", () => {
    expect(tables.steps.columns.record.suggestions).toEqual(["tick", "text", "number", "size", "address", "serial", "date"]);
    expect(recordKinds).toEqual(["tick", "text", "number", "size", "address", "serial", "date", "choice"]);
  });

  test("offers the kinds of sections as they are repeated; one that says nothing is about the site", () => {
    expect(tables.procedures.columns.forEach.choices).toEqual(["site", "cluster", "pool", "array", "controller", "port", "drive", "prompt"]);
    expect([forEachOf(""), forEachOf("drive")]).toEqual(["site", "drive"]);
  });
});

test("a step reaches each table under a name of its own, and finds derived fields there", () => {
  expect(Object.entries(layerTables).filter(([, table]) => table === null).map(([name]) => name)).toEqual(["Controller", "Drive"]);
  const fields = (layer: LayerName) => derivedFieldsOf(layer).map(([name]) => name);
  expect([fields("Rack"), fields("Drive"), fields("Network")]).toEqual([[], ["Bay"], ["Prefix length", "Netmask"]]);
});
