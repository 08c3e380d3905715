const { gzipSync } = require("node:zlib");

/** Prints the minified and gzip size of what each named entry loads at once, and of each named chunk that is loaded when it is asked for, and fails the build where one is over its budget. */
class SizeBudget {
  constructor(budgets) {
    this.budgets = budgets;
  }

  apply(compiler) {
    compiler.hooks.afterEmit.tap("SizeBudget", (compilation) => {
      for (const { entry, chunk, kilobytes } of this.budgets) {
        const name = entry ?? chunk;
        const files = (entry === undefined ? filesOfGroup(compilation, chunk) : compilation.entrypoints.get(entry).getFiles()).filter((file) => /\.(js|css)$/.test(file));
        const contents = files.map((file) => compilation.outputOptions.path && compiler.outputFileSystem.readFileSync(`${compilation.outputOptions.path}/${file}`));
        const minified = contents.reduce((sum, content) => sum + content.length, 0) / 1000;
        const gzipped = contents.reduce((sum, content) => sum + gzipSync(content).length, 0) / 1000;
        console.log(`${name.padEnd(12)} ${minified.toFixed(1).padStart(8)} kB minified ${gzipped.toFixed(1).padStart(7)} kB gzip (budget ${kilobytes} kB)`);
        if (gzipped > kilobytes) compilation.errors.push(new Error(`${name} is ${gzipped.toFixed(1)} kB gzip, over its budget of ${kilobytes} kB`));
      }
    });
  }
}

/** Lists the files that are loaded for what is imported under the name of a chunk. */
function filesOfGroup(compilation, name) {
  const group = compilation.namedChunkGroups.get(name);
  if (group === undefined) throw new Error(`No import is named ${name}`);
  return group.getFiles();
}

module.exports = { SizeBudget };
