import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import ts from "typescript";
import { hasIndex, importFault, layerOf, layers, resolveImport } from "../../scripts/lint/layers.mjs";
import { projectRoot, sourceFiles } from "../support/source-files";

const files = sourceFiles("src");

/** What a file imports, types included. */
const importsOf = new Map(
  files.map((file) => [file, ts.preProcessFile(readFileSync(join(projectRoot, file), "utf8"), true, true).importedFiles.map(({ fileName }) => fileName)]),
);

/** Finds one way round every circle of imports: the files from one back to itself. */
function circles(edges: ReadonlyMap<string, readonly string[]>): string[][] {
  const done = new Set<string>();
  const found: string[][] = [];
  const follow = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) found.push([...way.slice(way.indexOf(file)), file]);
    if (done.has(file) || way.includes(file)) return;
    for (const next of edges.get(file) ?? []) follow(next, [...way, file]);
    done.add(file);
  };
  for (const file of edges.keys()) follow(file, []);
  return found;
}

describe("the table of layers", () => {
  test("has a row for every source file, and a file for every row", () => {
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((file) => layerOf(file) === undefined)).toEqual([]);
    expect(layers.filter((layer) => !files.some((file) => layerOf(file) === layer))).toEqual([]);
  });

  test("lets nobody import from a row below its own", () => {
    const up = layers.flatMap(({ folder, mayImport }, at) =>
      mayImport.filter((one) => one.startsWith("src/") && layers.some((other, place) => place > at && `${other.folder}/`.startsWith(`${one}/`))).map((one) => `${folder}: ${one}`),
    );
    expect(up).toEqual([]);
  });

  test("names only folders and files that are there", () => {
    const named = layers.flatMap(({ folder, mayImport }) => [folder, ...mayImport.filter((one) => one !== "all before")]);
    expect(named.filter((one) => !existsSync(join(projectRoot, one)))).toEqual([]);
  });

  test("says what each row is in one line, and no folder twice", () => {
    for (const { folder, is } of layers) expect([folder, is]).toEqual([folder, expect.stringMatching(/^.{10,120}[^.]$/)]);
    expect(new Set(layers.map(({ folder }) => folder)).size).toBe(layers.length);
  });

  test("lets only joining entries import an adapter", () => {
    expect(layers.filter(({ joins }) => joins).map(({ folder }) => folder)).toEqual(["src/taskpane/main.ts", "src/standalone", "src/step", "src/headless"]);
    const adapters = /^src\/workbook\/[a-z-]+\//;
    const choosers = files.filter((file) => !adapters.test(file) && importsOf.get(file)!.some((imported) => adapters.test(resolveImport(file, imported))));
    expect(choosers.filter((file) => layerOf(file)?.joins !== true)).toEqual([]);
    expect(choosers).toContain("src/taskpane/main.ts");
  });
});

describe("imports", () => {
  test.each(layers.map((layer) => [layer.folder, layer] as const))("of %s are those its row allows", (_folder, layer) => {
    const own = files.filter((file) => layerOf(file) === layer);
    expect(own.flatMap((file) => importsOf.get(file)!.flatMap((imported) => importFault(file, imported) ?? []).map((fault) => `${file}: ${fault}`))).toEqual([]);
  });

  test("of files go in no circle, types included", () => {
    const edges = new Map(files.map((file) => [file, importsOf.get(file)!.map((imported) => resolveImport(file, imported))]));
    expect(circles(edges)).toEqual([]);
  });

  test("in a circle would be found", () => {
    expect(circles(new Map([["a", ["b", "c"]], ["b", ["c"]], ["c", ["b"]]]))).toEqual([["b", "c", "b"]]);
  });
});

test("every room that needs no host has one index, and there is no other index", () => {
  const indexes = files.filter((file) => file.endsWith("/index.ts")).map((file) => dirname(file));
  expect(indexes).toEqual(layers.filter(hasIndex).map(({ folder }) => folder).sort());
});

test("only src/workbook/office says Excel.run", () => {
  const sayers = files.filter((file) => readFileSync(join(projectRoot, file), "utf8").includes("Excel.run"));
  expect(sayers.map((file) => layerOf(file)!.folder)).toEqual(["src/workbook/office"]);
});
