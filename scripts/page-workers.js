const { createHash } = require("node:crypto");
const { posix } = require("node:path");

/**
 * Writes in front of the worker of each of `pages` which files it keeps, and a name made of what is in them: whatever changes in the page makes another
 * worker, and each keeps the files of its own build alone.
 *
 * Of a page these are all scripts and styles of its `entry`, those that are loaded later included, and the files that `further` matches.
 */
class PageWorkers {
  constructor(pages) {
    this.pages = pages;
  }

  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("PageWorkers", (compilation) => {
      // Once names have their hashes, and before files are compressed.
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_HASH + 1;
      compilation.hooks.processAssets.tap({ name: "PageWorkers", stage }, () => {
        for (const { worker, page, entry, further, freshFirst } of this.pages) {
          const chunks = compilation.entrypoints.get(entry).chunks.flatMap((chunk) => [chunk, ...chunk.getAllAsyncChunks()]);
          const scripts = new Set(chunks.flatMap(({ files }) => [...files]));
          const own = compilation.getAssets().filter(({ name }) => scripts.has(name) || further.test(name)).sort((a, b) => (a.name < b.name ? -1 : 1));
          const digest = createHash("sha256");
          for (const { name, source } of own) digest.update(name).update(source.buffer());
          const files = own.map(({ name }) => posix.relative(posix.dirname(worker), name).replace(/^index\.html$/, "./"));
          const build = { page, name: digest.digest("hex").slice(0, 16), files, freshFirst };
          compilation.updateAsset(worker, (source) => new sources.ConcatSource(`self.pageBuild=${JSON.stringify(build)};\n`, source));
        }
      });
    });
  }
}

module.exports = { PageWorkers };
