const { createHash } = require("node:crypto");

/**
 * Writes in front of the worker of dist/step which files it keeps, and a name made of what is in them: whatever changes in the page makes another
 * worker, and each keeps the files of its own build alone.
 */
class StepWorker {
  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("StepWorker", (compilation) => {
      // Once names have their hashes, and before files are compressed.
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_HASH + 1;
      compilation.hooks.processAssets.tap({ name: "StepWorker", stage }, () => {
        const own = compilation.getAssets().filter(({ name }) => /^step\/(?!worker\.js)[^/]+\.(html|js|css|svg|webmanifest)$/.test(name)).sort((a, b) => (a.name < b.name ? -1 : 1));
        const digest = createHash("sha256");
        for (const { name, source } of own) digest.update(name).update(source.buffer());
        const files = own.map(({ name }) => name.slice("step/".length).replace(/^index\.html$/, "./"));
        const build = { name: digest.digest("hex").slice(0, 16), files };
        compilation.updateAsset("step/worker.js", (worker) => new sources.ConcatSource(`self.stepBuild=${JSON.stringify(build)};\n`, worker));
      });
    });
  }
}

module.exports = { StepWorker };
