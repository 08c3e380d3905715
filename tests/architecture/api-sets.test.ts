import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { missingMembers, unguardedMembers, usedMembers } from "../support/api-sets";
import { clientBuilds, loadClient, type ClientBuild } from "../support/host-workbook/client-build";
import { projectRoot, sourceFiles } from "../support/source-files";

const manifest = readFileSync(join(projectRoot, "manifest", "manifest.xml"), "utf8");
const declared = Object.fromEntries([...manifest.matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"\/>/g)].map(([, name, version]) => [name!, version!]));

const files = [...sourceFiles("src/workbook/office"), "src/taskpane/main.ts", "src/functions/main.ts"].map((file) => join(projectRoot, file));
const invented = join(projectRoot, "src", "workbook", "office", "invented.ts");
const inventedText = `
export function use(host: { supports(set: string): boolean }, sheet: Excel.Worksheet, table: Excel.Table): void {
  sheet.tabColor = "";
  sheet.showOutlineLevels(1, 1);
  table.resize("A1");
  if (host.supports("1.13")) table.resize("A2");
  if ("resize" in table) table.resize("A3");
  if (host.supports("1.12") && "resize" in table) table.resize("A4");
  if (host.supports("1.13") && "resize" in table) table.resize("A5");
  else table.resize("A6");
  const { notes } = sheet;
  void notes;
}
`;

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  lib: ["lib.es2022.d.ts", "lib.dom.d.ts"],
  types: ["office-js", "office-runtime", "custom-functions-runtime"],
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  strict: true,
  resolveJsonModule: true,
  esModuleInterop: true,
  skipLibCheck: true,
  // The files are given; what the pane draws need not be read.
  noResolve: true,
  noEmit: true,
};
const host = ts.createCompilerHost(options);
const { getSourceFile, fileExists } = host;
host.getSourceFile = (name, ...rest) => (name === invented ? ts.createSourceFile(name, inventedText, ts.ScriptTarget.ES2022, true) : getSourceFile.call(host, name, ...rest));
host.fileExists = (name) => name === invented || fileExists.call(host, name);
const program = ts.createProgram([...files, invented], options, host);

describe("members of the host's library", () => {
  test("the manifest declares the sets they are held against", () => {
    expect(declared).toEqual({ ExcelApi: "1.12", CustomFunctionsRuntime: "1.3", SharedRuntime: "1.1" });
  });

  test("are of a declared set, or stand behind a guard that asks for the set and looks for the member", () => {
    expect(unguardedMembers(program, files, declared)).toEqual([]);
  });

  test("are found: the adapter uses old ones, and new ones behind guards", () => {
    const members = usedMembers(program, files).map(({ member }) => member);
    expect(members).toEqual(expect.arrayContaining(["Range.formulas", "Range.numberFormat", "Worksheet.freezePanes", "Range.getSpillingToRangeOrNullObject", "Table.resize", "Worksheet.notes"]));
    expect(new Set(members).size).toBeGreaterThan(50);
  });

  test("are refused in invented code where the guard is missing, half or of too old a set", () => {
    expect(unguardedMembers(program, [invented], declared).map(({ line, member, version }) => `${line} ${member} ${version}`)).toEqual([
      "5 Table.resize 1.13",
      "6 Table.resize 1.13",
      "7 Table.resize 1.13",
      "8 Table.resize 1.13",
      "10 Table.resize 1.13",
      "11 Worksheet.notes 1.18",
    ]);
  });

  test.each(Object.keys(clientBuilds) as ClientBuild[])("are in the vendor's client for %s, or looked for first", (build) => {
    const classes = loadClient(build, 12).Excel as unknown as Readonly<Record<string, { readonly prototype?: object } | undefined>>;
    // What is no class of the client is a value that is handed over, such as the rule of a validation.
    const has = (owner: string, member: string) => classes[owner]?.prototype === undefined || member in classes[owner].prototype;
    expect(missingMembers(program, files, has)).toEqual([]);
    expect(missingMembers(program, [invented], has).map(({ line, member }) => `${line} ${member}`)).toEqual(["11 Worksheet.notes"]);
    const known = usedMembers(program, files).filter(({ member }) => classes[member.split(".")[0]!]?.prototype !== undefined);
    expect(new Set(known.map(({ member }) => member)).size).toBeGreaterThan(40);
  });

  test("are used in no other folder", () => {
    const elsewhere = sourceFiles("src").filter((file) => !file.startsWith("src/workbook/office/") && file !== "src/taskpane/main.ts");
    const speaking = elsewhere.filter((file) => /\b(Excel|Office|OfficeExtension)\.[A-Za-z]/.test(withoutComments(file)));
    expect(speaking).toEqual([]);
  });
});

function withoutComments(file: string): string {
  const text = readFileSync(join(projectRoot, file), "utf8");
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "");
}
