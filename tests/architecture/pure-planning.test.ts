import { join } from "node:path";
import ts from "typescript";
import { projectRoot, sourceFiles } from "../support/source-files";

const files = sourceFiles("src/planning");

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  lib: ["lib.es2022.d.ts"],
  types: [],
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  strict: true,
  noUncheckedIndexedAccess: true,
  resolveJsonModule: true,
  esModuleInterop: true,
  skipLibCheck: true,
  noEmit: true,
};

const program = ts.createProgram(files.map((file) => join(projectRoot, file)), options);

/** Calls that make an answer depend on when or where it is asked for. */
function impurities(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const text = ts.isPropertyAccessExpression(node) || ts.isCallExpression(node) ? node.getText(source) : "";
    if (/^(Math\.random|Date\.now|performance\.now|Intl\.DateTimeFormat\(\))$/.test(text)) found.push(text);
    if (ts.isNewExpression(node) && node.expression.getText(source) === "Date" && (node.arguments?.length ?? 0) === 0) found.push("new Date()");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe("planning", () => {
  test("compiles with no page, no host and no Node types", () => {
    const diagnostics = ts
      .getPreEmitDiagnostics(program)
      .filter(({ file }) => file?.fileName.includes("/src/planning/") === true)
      .map(({ file, messageText }) => `${file!.fileName.slice(projectRoot.length + 1)}: ${ts.flattenDiagnosticMessageText(messageText, " ")}`);
    expect(diagnostics).toEqual([]);
  });

  test("has no clock and no chance", () => {
    const found = files.flatMap((file) => impurities(program.getSourceFile(join(projectRoot, file))!).map((one) => `${file}: ${one}`));
    expect(found).toEqual([]);
  });

  test("would be caught with a clock, with chance", () => {
    const source = ts.createSourceFile("x.ts", "const a = Math.random(); const b = new Date(); const c = Date.now(); const d = new Date(2026, 1, 1);", ts.ScriptTarget.ES2022, true);
    expect(impurities(source)).toEqual(["Math.random", "new Date()", "Date.now"]);
  });
});
