// `node scripts/run-bundled.mjs src/headless/calc.ts …` runs an entry of ours as the shipped code runs: bundled. The bundle is made once and
// again whenever a source has changed: loading the engine file by file, compiled on the way, takes seconds, the bundle a fraction of one.
import { createHash } from "node:crypto";
import { existsSync, readFileSync, readdirSync, renameSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import { ensureInstalled, root } from "./ensure-installed.mjs";

const [entry, ...args] = process.argv.slice(2);
ensureInstalled();
const bundle = join(root, "node_modules", ".cache", "baywright", `${basename(entry, ".ts")}-${sourcesDigest()}.cjs`);
if (!existsSync(bundle)) await build(bundle);
process.argv = [process.execPath, bundle, ...args];
createRequire(import.meta.url)(bundle);

function sourcesDigest() {
  const digest = createHash("sha256").update(readFileSync(join(root, "package-lock.json")));
  for (const folder of ["src", ...(entry.startsWith("src/") ? [] : ["bench", "tests"])]) {
    for (const file of readdirSync(join(root, folder), { recursive: true }).sort()) {
      const { mtimeMs, size } = statSync(join(root, folder, file));
      digest.update(`${file} ${mtimeMs} ${size}\n`);
    }
  }
  return digest.digest("hex").slice(0, 16);
}

async function build(target) {
  const { build: bundleUp } = await import("esbuild");
  const unfinished = `${target}.${process.pid}`;
  await bundleUp({
    entryPoints: [join(root, entry)],
    outfile: unfinished,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    // The engine keeps the text of what it runs: fifteen megabytes with blanks and licences, twelve without.
    minifyWhitespace: true,
    legalComments: "none",
    // They find their own files beside themselves.
    external: ["playwright-core", "@sparticuz/chromium", "office-addin-mock"],
    logLevel: "error",
  });
  // Renamed at the end, so that a second process never loads half a bundle.
  renameSync(unfinished, target);
}
