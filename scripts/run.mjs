// `node scripts/run.mjs FILE.ts …` runs a TypeScript file of ours: the one way to do so outside the tests. The file is bundled once, as the
// shipped code is, and again whenever a source has changed: loading the engine file by file takes seconds, the bundle a fraction of one. What is
// imported only when it is asked for is a piece of its own: most commands never load the engine.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { dirname, join, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureInstalled, root } from "./ensure-installed.mjs";

const [entry, ...args] = process.argv.slice(2);
if (entry === undefined || !existsSync(join(root, entry))) {
  console.error("Say which file to run, such as: node scripts/run.mjs src/headless/calc.ts");
  process.exit(2);
}
ensureInstalled();
const cache = join(root, "node_modules", ".cache", "baywright");
const name = entry.replace(/\.ts$/, "").replaceAll("/", "-");
const bundle = join(cache, `${name}-${sourcesDigest()}`);
const main = join(bundle, "main.mjs");
if (!existsSync(bundle)) await build(bundle);
process.argv = [process.execPath, main, ...args];
await import(pathToFileURL(main).href);

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
    entryPoints: { main: join(root, entry) },
    outdir: unfinished,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    platform: "node",
    format: "esm",
    target: "node20",
    // Packages of the older kind ask for modules of Node by `require`, which a module has to make for itself.
    banner: { js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);' },
    // The engine keeps the text of what it runs: fifteen megabytes with blanks and licences, twelve without.
    minifyWhitespace: true,
    loader: { ".woff": "binary" },
    legalComments: "none",
    // They find their own files beside themselves, or are to be the same module for the code bundled here and for what it loads.
    external: ["playwright-core", "@sparticuz/chromium", "office-addin-mock", "typescript", "esbuild", "expect", "fast-check", "jest-circus"],
    plugins: [ownFolder()],
    logLevel: "error",
  });
  mkdirSync(cache, { recursive: true });
  const isOlder = (folder) => folder.startsWith(`${name}-`) && /^[0-9a-f]{16}$/.test(folder.slice(name.length + 1)) && join(cache, folder) !== target;
  for (const folder of readdirSync(cache)) if (isOlder(folder)) rmSync(join(cache, folder), { recursive: true, force: true });
  // Renamed at the end, so that a second process never loads half a bundle.
  try {
    renameSync(unfinished, target);
  } catch (thrown) {
    // A second process was faster.
    if (!existsSync(target)) throw thrown;
    rmSync(unfinished, { recursive: true });
  }
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
