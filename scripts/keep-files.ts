import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/**
 * Writes generated files, or with `--check` on the command line only says which of them are stale, and fails the process.
 *
 * @param texts Text by path from the root of the project.
 * @param command What writes them anew, such as "npm run rules".
 */
export function keepFiles(texts: Readonly<Record<string, string>>, command: string): void {
  const root = join(__dirname, "..");
  const check = process.argv.includes("--check");
  const stale = Object.entries(texts).filter(([path, text]) => !existsSync(join(root, path)) || readFileSync(join(root, path), "utf8") !== text);
  if (check && stale.length > 0) {
    reportStale(stale.map(([path]) => path), command);
    return;
  }
  for (const [path, text] of stale) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  console.log(`${Object.keys(texts).join(", ")}: ${check || stale.length === 0 ? "up to date" : "written"}`);
}

/** Says which generated files are stale, and what to run; the process fails. */
export function reportStale(paths: readonly string[], command: string): void {
  console.error(`Stale: ${paths.join(", ")}. Run: ${command}`);
  process.exitCode = 1;
}
