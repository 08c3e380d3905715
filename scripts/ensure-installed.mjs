// Installs the packages of the lock file where a fresh clone has none yet, or where they are those of another lock file.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

export const root = join(import.meta.dirname, "..");
const npm = process.platform === "win32" ? "npm.cmd" : "npm";

/** Runs `npm ci` when node_modules is missing or belongs to another lock file; ends the process where that fails. */
export function ensureInstalled() {
  const stamp = join(root, "node_modules", ".cache", "baywright", "installed");
  const wanted = createHash("sha256").update(readFileSync(join(root, "package-lock.json"))).digest("hex");
  const packages = existsSync(join(root, "node_modules", ".package-lock.json"));
  if (packages && (!existsSync(stamp) || readFileSync(stamp, "utf8") === wanted)) return;
  console.log("Installing packages (once, a minute or two) …");
  const { status } = spawnSync(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], { cwd: root, stdio: "inherit", shell: process.platform === "win32" });
  if (status !== 0) {
    console.error("The packages could not be installed. Check the connection to the package registry, then run the same command again.");
    process.exit(status ?? 1);
  }
  mkdirSync(join(stamp, ".."), { recursive: true });
  writeFileSync(stamp, wanted);
}

/** Runs a program of node_modules/.bin with its output shown, and returns its exit code. */
export function runPackage(script, args) {
  return spawnSync(process.execPath, [join(root, "node_modules", script), ...args], { cwd: root, stdio: "inherit" }).status ?? 1;
}
