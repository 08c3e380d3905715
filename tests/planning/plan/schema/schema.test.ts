import { readFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../../../src/functions/catalogue";
import { parseScheme } from "../../../../src/planning/capacity";
import {
  columnsOf, columnsOfLayer, derivedFieldsOf, forEachOf, inheritedColumns, isFurther, layerTables, nameColumn, recordKinds, schemaVersion, tableKeys, tables,
  type LayerName, type TableKey,
} from "../../../../src/planning/plan/schema";

const layoutOf = (keys: readonly TableKey[]) => keys.map((key) => [tables[key].name, columnsOf(key).map(([, { header }]) => header)]);

describe("the layout of the planning tables", () => {
  test("has a version: whoever adds a table or a column raises it, and adds the layout as a file", () => {
    const layout: unknown = JSON.parse(readFileSync(join(__dirname, `layout-${schemaVersion}.json`), "utf8"));
    expect(layoutOf(tableKeys.filter((key) => !isFurther(key)))).toEqual(Object.entries(layout as object));
  });

  test("has further tables that come when they are asked for: whoever changes one changes this file, and says since when a column is there", () => {
    const layout: unknown = JSON.parse(readFileSync(join(__dirname, "further-tables.json"), "utf8"));
    expect(layoutOf(tableKeys.filter(isFurther))).toEqual(Object.entries(layout as object));
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
    expect(tables.procedures.columns.forEach.choices).toEqual([
      "site", "rack", "switch", "feed", "network", "cluster", "live cluster", "pool", "volume", "host", "host port", "array", "shelf", "controller", "port", "drive", "prompt",
    ]);
    expect([forEachOf(""), forEachOf("drive")]).toEqual(["site", "drive"]);
  });
});

const everyColumn = tableKeys.flatMap((key) => columnsOf(key).map(([name, column]) => [`${tables[key].name}.${column.header}`, { key, name, column }] as const));

describe("every column", () => {
  test.each(everyColumn)("%s says in a sentence what belongs there", (_, { column }) => {
    expect(column.meaning).toMatch(/^[A-Za-z0-9][^.]*.*\.$/);
  });

  test.each(everyColumn.filter(([, { column }]) => column.choices ?? column.suggestions))("%s offers different words, none blank", (_, { column }) => {
    const words = column.choices ?? column.suggestions ?? [];
    expect(words.length).toBeGreaterThan(1);
    expect(new Set(words.map((word) => word.trim()).filter((word) => word !== "")).size).toBe(words.length);
  });

  test.each(everyColumn.filter(([, { column }]) => column.from))("%s names rows of a table that has a sheet", (_, { column }) => {
    expect(tableKeys).toContain(column.from);
  });

  test("that holds the place of something else says whose", () => {
    const from = Object.fromEntries(everyColumn.flatMap(([place, { column }]) => (column.from === undefined ? [] : [[place, column.from]])));
    expect(from).toMatchObject({ "Arrays.Rack": "racks", "Arrays.Feed A": "feeds", "Switches.Feed B": "feeds", "Ports.Network": "networks", "Steps.Procedure": "procedures", "Jobs.Site": "sites" });
  });
});

test.each(tableKeys.map((key) => [tables[key].name, tables[key].note]))("the table %s has a note in sentences", (_, note) => {
  expect(note).toMatch(/^[A-Z].*\.$/);
});

test.each(tables.arrays.columns.scheme.suggestions!)("the scheme %s that is offered can be read", (scheme) => {
  expect(parseScheme(scheme, "Scheme").name).not.toBe("");
});

describe("a formula that a new row begins with", () => {
  const formulas = everyColumn.flatMap(([place, { key, column }]) => (column.kind === "formula" ? [[place, column.formula ?? "", key] as const] : []));

  test("stands in every column of that kind, and there only", () => {
    expect(everyColumn.filter(([, { column }]) => column.formula !== undefined).map(([place]) => place)).toEqual(formulas.map(([place]) => place));
    expect(formulas.length).toBeGreaterThan(0);
  });

  test.each(formulas)("of %s names columns that there are and functions that there are", (_, formula, key) => {
    const named = [...formula.matchAll(/\[([^\]]+)\]/g)].map(([, name]) => name!);
    expect(named.length).toBeGreaterThan(0);
    for (const name of named) expect(everyColumn.map(([place]) => place)).toContain(name.includes(".") ? name : `${tables[key].name}.${name}`);
    for (const [, id] of formula.matchAll(/BAY\.([A-Z]+)/g)) expect(catalogue.map((entry) => entry.id)).toContain(id);
    expect(formula.split("(")).toHaveLength(formula.split(")").length);
    expect(formula).toMatch(/^=/);
  });
});

test("the values that a derived field can have, where those are few", () => {
  const choices = (["Job", "Array", "Controller", "Port"] as const).map((layer) => derivedFieldsOf(layer).flatMap(([name, field]) => (field.choices ? [[name, field.choices]] : [])));
  expect(choices).toEqual([
    [["With spares", ["yes", "no"]], ["With hosts", ["yes", "no"]]],
    [["Cluster act", ["create", "join"]], ["Cluster live", ["yes", "no"]]],
    [["First controller", ["yes", "no"]], ["Is subject", ["yes", "no"]]],
    [["First controller", ["yes", "no"]], ["Own address", ["yes", "no"]]],
  ]);
});

test("a step reaches each table under a name of its own, and finds derived fields there", () => {
  expect(Object.entries(layerTables).filter(([, table]) => table === null).map(([name]) => name)).toEqual(["Controller"]);
  const fields = (layer: LayerName) => derivedFieldsOf(layer).map(([name]) => name);
  expect([fields("Rack"), fields("Drive"), fields("Network")]).toEqual([[], ["Is subject"], ["Prefix length", "Netmask"]]);
});

test("an array takes from its model what a chassis and its controllers are like, and nothing else", () => {
  expect([...inheritedColumns]).toEqual(["units", "depthMm", "weightKg", "liftKg", "liftBy", "watts", "plug", "controllers", "ports", "portSharing"]);
  for (const name of inheritedColumns) expect(Reflect.get(tables.arrays.columns, name)).toBe(Reflect.get(tables.models.columns, name));
});

test("a step finds the further columns of a model at its array, each header once", () => {
  const headers = columnsOfLayer("Array").map(([, { header }]) => header);
  expect(headers).toEqual(expect.arrayContaining(["Serial", "Units", "Guide", "Console line", "Supply switch"]));
  expect(new Set(headers).size).toBe(headers.length);
  expect(columnsOfLayer("Controller")).toEqual([]);
});
