const { gzipSync } = require("node:zlib");

/** Prints the minified and gzip size of what each named entry loads at once, and fails the build where one is over its budget. */
class SizeBudget {
  constructor(budgets) {
    this.budgets = budgets;
  }

  apply(compiler) {
    compiler.hooks.afterEmit.tap("SizeBudget", (compilation) => {
      for (const { entry, kilobytes } of this.budgets) {
        const files = compilation.entrypoints.get(entry).getFiles().filter((file) => /\.(js|css)$/.test(file));
        const contents = files.map((file) => compilation.outputOptions.path && compiler.outputFileSystem.readFileSync(`${compilation.outputOptions.path}/${file}`));
        const minified = contents.reduce((sum, content) => sum + content.length, 0) / 1000;
        const gzipped = contents.reduce((sum, content) => sum + gzipSync(content).length, 0) / 1000;
        console.log(`${entry.padEnd(12)} ${minified.toFixed(1).padStart(8)} kB minified ${gzipped.toFixed(1).padStart(7)} kB gzip (budget ${kilobytes} kB)`);
        if (gzipped > kilobytes) compilation.errors.push(new Error(`${entry} is ${gzipped.toFixed(1)} kB gzip, over its budget of ${kilobytes} kB`));
      }
    });
  }
}

module.exports = { SizeBudget };
