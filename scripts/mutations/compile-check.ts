import { join } from "node:path";
import ts from "typescript";
import { mutated, type SourceTexts } from "./source-texts";
import type { Mutant } from "./find-mutants";

/** Makes a check whether a mutant still compiles, by the types of its own file. The room needs no page and no host, so neither is loaded. */
export function compileCheck(root: string, texts: SourceTexts): (mutant: Mutant) => boolean {
  const { config } = ts.readConfigFile(join(root, "tsconfig.base.json"), (file) => ts.sys.readFile(file)) as { config: { compilerOptions: Record<string, unknown> } };
  const lenient = { lib: ["ES2022"], types: [], noUnusedLocals: false, noUnusedParameters: false, allowUnreachableCode: true };
  const { options } = ts.convertCompilerOptionsFromJson({ ...config.compilerOptions, ...lenient }, root);
  let current: { readonly file: string; readonly text: string; readonly version: string } | undefined;
  let checked = 0;
  const text = (file: string) => (file === current?.file ? current.text : (texts.get(file) ?? ts.sys.readFile(file)));
  const service = ts.createLanguageService({
    getCompilationSettings: () => options,
    getScriptFileNames: () => [...texts.keys()],
    getScriptVersion: (file) => (file === current?.file ? current.version : "original"),
    getScriptSnapshot: (file) => snapshot(text(file)),
    getCurrentDirectory: () => root,
    getDefaultLibFileName: (given) => ts.getDefaultLibFilePath(given),
    fileExists: (file) => ts.sys.fileExists(file),
    readFile: (file) => ts.sys.readFile(file),
    directoryExists: (folder) => ts.sys.directoryExists(folder),
    getDirectories: (folder) => ts.sys.getDirectories(folder),
  });
  return (mutant) => {
    current = { file: mutant.file, text: mutated(mutant, texts), version: String((checked += 1)) };
    return [...service.getSyntacticDiagnostics(mutant.file), ...service.getSemanticDiagnostics(mutant.file)].length === 0;
  };
}

function snapshot(text: string | undefined): ts.IScriptSnapshot | undefined {
  return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
}
