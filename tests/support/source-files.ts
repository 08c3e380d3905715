import { readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";

/** Root folder of the project. */
export const projectRoot = join(__dirname, "..", "..");

/** Lists the TypeScript files below a folder, as paths from the root with forward slashes. */
export function sourceFiles(folder: string): string[] {
  return readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(projectRoot, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .sort();
}
