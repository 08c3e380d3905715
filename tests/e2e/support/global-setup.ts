import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import type { Server } from "node:http";
import { join } from "node:path";
import { serveSite } from "./serve-site";

const root = join(__dirname, "..", "..", "..");

/** Builds the site where it is older than its sources, and serves it for the tests, which find its address in BAYWRIGHT_URL. */
export default async function setUp(): Promise<void> {
  if (isStale()) {
    console.log("\nBuilding the site for the end-to-end tests …");
    const { status } = spawnSync(process.execPath, [join(root, "node_modules", "webpack", "bin", "webpack.js"), "--mode", "production"], { cwd: root, stdio: "inherit" });
    if (status !== 0) throw new Error("The site could not be built: what is wrong stands above.");
  }
  const { server, url } = await serveSite(join(root, "dist"));
  process.env["BAYWRIGHT_URL"] = url;
  (globalThis as { site?: Server }).site = server;
}

function isStale(): boolean {
  const page = join(root, "dist", "index.html");
  if (!existsSync(page)) return true;
  const built = statSync(page).mtimeMs;
  const sources = readdirSync(join(root, "src"), { recursive: true }).map((name) => join(root, "src", String(name)));
  return [...sources, join(root, "webpack.config.js"), join(root, "package-lock.json")].some((file) => statSync(file).mtimeMs > built);
}
