// `node scripts/run.mjs FILE.ts …` runs a TypeScript file of ours: the one way to do so outside the tests. The file is bundled once, as the
// shipped code is, and again whenever a source has changed: loading the engine file by file takes seconds, the bundle a fraction of one.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, sep } from "node:path";
import { ensureInstalled, root } from "./ensure-installed.mjs";

const [entry, ...args] = process.argv.slice(2);
if (entry === undefined || !existsSync(join(root, entry))) {
  console.error("Say which file to run, such as: node scripts/run.mjs src/headless/calc.ts");
  process.exit(2);
}
ensureInstalled();
const cache = join(root, "node_modules", ".cache", "baywright");
const name = entry.replace(/\.ts$/, "").replaceAll("/", "-");
const bundle = join(cache, `${name}-${sourcesDigest()}.cjs`);
if (!existsSync(bundle)) await build(bundle);
process.argv = [process.execPath, bundle, ...args];
createRequire(import.meta.url)(bundle);

/** What tells one state of the sources from another: names, times and sizes of all that the entry may import. */
function sourcesDigest() {
  const digest = createHash("sha256").update(readFileSync(join(root, "package-lock.json"))).update(readFileSync(import.meta.filename));
  for (const folder of ["src", ...(entry.startsWith("src/") ? [] : ["bench", "scripts", "tests"])]) {
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
    // They find their own files beside themselves, or are to be the same module for the code bundled here and for what it loads.
    external: ["playwright-core", "@sparticuz/chromium", "office-addin-mock", "typescript", "esbuild", "expect", "fast-check", "jest-circus"],
    plugins: [ownFolder()],
    logLevel: "error",
  });
  mkdirSync(cache, { recursive: true });
  for (const old of readdirSync(cache)) if (old.startsWith(`${name}-`) && old.endsWith(".cjs")) rmSync(join(cache, old), { force: true });
  // Renamed at the end, so that a second process never loads half a bundle.
  renameSync(unfinished, target);
}

/** Lets every file of ours know the folder it stands in, not the one of the bundle. */
function ownFolder() {
  return {
    name: "own-folder",
    setup({ onLoad }) {
      onLoad({ filter: /\.m?ts$/ }, ({ path }) => {
        if (path.includes(`${sep}node_modules${sep}`)) return undefined;
        return { loader: "ts", contents: `const __dirname = ${JSON.stringify(dirname(path))};${readFileSync(path, "utf8")}` };
      });
    },
  };
}
