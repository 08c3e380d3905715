import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { layers } from "../../scripts/lint/layers.mjs";
import { projectRoot, sourceFiles } from "../support/source-files";

/** Calls that make an answer depend on when or where it is asked for. */
function impurities(text: string): string[] {
  const source = ts.createSourceFile("read.ts", text, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const written = ts.isPropertyAccessExpression(node) || ts.isCallExpression(node) ? node.getText(source) : "";
    if (/^(Math\.random|Date\.now|performance\.now|Intl\.DateTimeFormat\(\))$/.test(written)) found.push(written);
    if (ts.isNewExpression(node) && node.expression.getText(source) === "Date" && (node.arguments?.length ?? 0) === 0) found.push("new Date()");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

// That they need no page, no host and no Node is held by tsconfig.pure.json.
describe("the rooms that need no host", () => {
  test("have no clock and no chance", () => {
    const files = ["src/sheet", "src/planning"].flatMap(sourceFiles);
    expect(files.length).toBeGreaterThan(100);
    expect(files.flatMap((file) => impurities(readFileSync(join(projectRoot, file), "utf8")).map((one) => `${file}: ${one}`))).toEqual([]);
  });

  test("would be caught with a clock, with chance", () => {
    const text = "const a = Math.random(); const b = new Date(); const c = Date.now(); const d = new Date(2026, 1, 1);";
    expect(impurities(text)).toEqual(["Math.random", "new Date()", "Date.now"]);
  });
});

describe("the four environments of the type checker", () => {
  /** What a tsconfig says, the comments of it left out. */
  const config = (name: string) => ts.readConfigFile(join(projectRoot, name), (path) => readFileSync(path, "utf8")).config as Record<string, unknown>;

  test("hold every row of the table of layers, each in the one it names", () => {
    for (const { folder, environment } of layers) {
      const included = config(`tsconfig.${environment}.json`)["include"] as string[];
      expect([folder, included.some((one) => folder === one || folder.startsWith(`${one}/`))]).toEqual([folder, true]);
    }
  });

  test("are what tsc -b builds, the poorest first, so that an editor holds a file to it", () => {
    const references = config("tsconfig.json")["references"] as { path: string }[];
    expect(references.map(({ path }) => path)).toEqual(["pure", "functions", "page", "node"].map((name) => `./tsconfig.${name}.json`));
  });

  test("know nothing of a page, a host or Node where the code runs without", () => {
    const given = (name: string) => (config(`tsconfig.${name}.json`)["compilerOptions"] as { lib: string[]; types: string[] });
    expect(given("pure")).toMatchObject({ lib: ["ES2022"], types: [] });
    expect(given("functions")).toMatchObject({ lib: ["ES2022"], types: ["custom-functions-runtime"] });
    expect(given("page").types).not.toContain("node");
  });
});
