const { existsSync, readFileSync, readdirSync } = require("node:fs");
const { join } = require("node:path");

const allowed = new Set(["MIT", "BSD-2-Clause", "BSD-3-Clause", "ISC", "Apache-2.0", "0BSD"]);

/**
 * Writes licences.txt into the built site: every package whose code ships, with its licence and the text that must go along.
 *
 * Fails the build where a package ships under a licence that is not allowed, or under none.
 */
module.exports.ShippedLicences = class ShippedLicences {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap("ShippedLicences", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: "ShippedLicences", stage }, () => {
        const texts = [...shippedFolders(compilation)].sort().map((folder) => {
          const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
          const text = licenceText(folder);
          // Some packages name their licence only in the file that goes along.
          const licence = license ?? (/Apache License\s+Version 2\.0/.test(text) ? "Apache-2.0" : "none");
          if (!allowed.has(licence)) compilation.errors.push(new Error(`${name} ${version} ships under ${licence}, which is not among ${[...allowed].join(", ")}`));
          return [`${name} ${version}: ${licence}`, text].filter(Boolean).join("\n\n");
        });
        const title = "Packages whose code is part of this site, with their licences.\n";
        compilation.emitAsset("licences.txt", new compiler.webpack.sources.RawSource([title, ...texts].join(`\n${"-".repeat(80)}\n\n`)));
      });
    });
  }
};

function shippedFolders(compilation) {
  const folders = new Set();
  const visit = (module) => {
    module.modules?.forEach(visit);
    const found = /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(module.resource ?? "");
    // Loaders run here and do not ship, but for the few lines they put in.
    if (found !== null) folders.add(found[0]);
  };
  for (const module of compilation.modules) visit(module);
  return folders;
}

function licenceText(folder) {
  const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name) && existsSync(join(folder, name)));
  return file === undefined ? "" : readFileSync(join(folder, file), "utf8").trim();
}
