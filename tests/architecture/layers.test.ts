import { existsSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import ts from "typescript";
import { projectRoot, sourceFiles } from "../support/source-files";

/** The only files that may choose an adapter. */
const joining = ["src/taskpane/main.ts", "src/standalone/", "src/headless/"];

/**
 * Who may import whom, the first line that fits a file decides. Files and folders below src are named by how their path begins;
 * packages by their name.
 */
const layers: readonly { readonly files: readonly string[]; readonly mayImport: readonly string[] }[] = [
  { files: joining, mayImport: ["src/", "package.json", "@univerjs/", "@fluentui/", "node:"] },
  { files: ["src/planning/"], mayImport: ["src/planning/", "decimal.js", "ipaddr.js", "mustache", "@noble/hashes", "@scure/base"] },
  { files: ["src/functions/"], mayImport: ["src/functions/", "src/planning/", "src/sheet/", "package.json"] },
  { files: ["src/workbook/office/"], mayImport: ["src/workbook/office/", "src/workbook/port.ts", "src/workbook/check-edits.ts", "src/planning/"] },
  { files: ["src/workbook/engine/"], mayImport: ["src/workbook/engine/", "src/workbook/port.ts", "src/workbook/check-edits.ts", "src/planning/", "src/functions/", "@univerjs/"] },
  { files: ["src/workbook/xlsx/"], mayImport: ["src/workbook/xlsx/", "src/workbook/engine/", "src/workbook/port.ts", "src/planning/", "@univerjs/", "exceljs", "jszip"] },
  { files: ["src/workbook/"], mayImport: ["src/workbook/port.ts", "src/planning/"] },
  { files: ["src/actions/"], mayImport: ["src/actions/", "src/planning/", "src/workbook/port.ts"] },
  {
    files: ["src/taskpane/"],
    mayImport: ["src/taskpane/", "src/actions/", "src/planning/", "src/functions/catalogue.ts", "src/functions/examples.ts", "src/workbook/port.ts", "@fluentui/"],
  },
];

const files = sourceFiles("src");

function importsOf(file: string): string[] {
  return ts.preProcessFile(readFileSync(join(projectRoot, file), "utf8"), true, true).importedFiles.map(({ fileName }) => fileName);
}

/** Turns what stands in an import into a path from the root, or leaves the name of a package. */
function target(file: string, imported: string): string {
  if (!imported.startsWith(".")) return imported;
  const path = posix.join(posix.dirname(file), imported);
  return [path, `${path}.ts`, `${path}/index.ts`].find((one) => /\.[a-z]+$/.test(one) && existsSync(join(projectRoot, one))) ?? path;
}

describe("imports point one way", () => {
  test("every source file belongs to a layer", () => {
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((file) => !layers.some((layer) => layer.files.some((start) => file.startsWith(start))))).toEqual([]);
  });

  test.each(layers.map((layer) => [layer.files.join(" "), layer] as const))("%s", (_files, layer) => {
    const own = files.filter((file) => layers.find((one) => one.files.some((start) => file.startsWith(start))) === layer);
    const wrong = own.flatMap((file) =>
      importsOf(file)
        .map((imported) => target(file, imported))
        .filter((imported) => !layer.mayImport.some((start) => imported === start || (/[/:]$/.test(start) && imported.startsWith(start)) || imported.startsWith(`${start}/`)))
        .map((imported) => `${file} imports ${imported}`),
    );
    expect(wrong).toEqual([]);
  });

  test("only the joining entries import an adapter", () => {
    const adapters = /^src\/workbook\/(office|engine|xlsx)\//;
    const choosers = files.filter((file) => !adapters.test(file) && importsOf(file).some((imported) => adapters.test(target(file, imported))));
    expect(choosers.filter((file) => !joining.some((start) => file.startsWith(start)))).toEqual([]);
    expect(choosers).toContain("src/taskpane/main.ts");
  });

  test("only src/workbook/office says Excel.run", () => {
    expect(files.filter((file) => readFileSync(join(projectRoot, file), "utf8").includes("Excel.run"))).toEqual(["src/workbook/office/host.ts"]);
  });

  test("folders of planning have one index each, and there is no other index", () => {
    const indexes = files.filter((file) => file.endsWith("/index.ts"));
    expect(indexes.filter((file) => !/^src\/planning\/[a-z-]+\/index\.ts$/.test(file))).toEqual([]);
    const folders = new Set(files.flatMap((file) => /^src\/planning\/[a-z-]+\//.exec(file)?.[0] ?? []));
    expect([...folders].map((folder) => `${folder}index.ts`).sort()).toEqual(indexes);
  });

  test("the rule on a table sees a wrong import", () => {
    expect(target("src/planning/capacity/usable.ts", "../../workbook/port")).toBe("src/workbook/port.ts");
    expect(target("src/actions/set-up.ts", "../planning/plan/set-up")).toBe("src/planning/plan/set-up/index.ts");
  });
});
