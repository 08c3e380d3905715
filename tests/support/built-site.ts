import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

const root = join(__dirname, "..", "..");

/** Folder of the built site. */
export const siteFolder = join(root, "dist");

/** Reads a file of the built site; says how to build it where it is not there. */
export function siteFile(path: string): string {
  const file = join(siteFolder, path);
  if (!existsSync(file)) throw new Error(`dist/${path} is not there. Build first: npm run build`);
  return readFileSync(file, "utf8");
}
