const { createHash } = require("node:crypto");
const { relative, resolve, sep } = require("node:path");
const { constants } = require("node:zlib");
const CompressionPlugin = require("compression-webpack-plugin");
const CopyPlugin = require("copy-webpack-plugin");
const { EsbuildPlugin } = require("esbuild-loader");
const HtmlPlugin = require("html-webpack-plugin");
const MiniCssExtractPlugin = require("mini-css-extract-plugin");
const { IgnorePlugin } = require("webpack");
const { version } = require("./package.json");
const { hostLibrary } = require("./scripts/host-library.js");
const { PageWorkers } = require("./scripts/page-workers.js");
const { ShippedLicences } = require("./scripts/shipped-licences.js");
const { SizeBudget } = require("./scripts/size-budget.js");

const source = (...parts) => resolve(__dirname, "src", ...parts);
const docs = resolve(__dirname, "docs");
const compressed = /\.(js|css|html|json|xml)$/;

/** Where the scripts go that are not found beside index.html by a name of their own. */
const places = { functions: "functions.js", step: "step/[name].[contenthash:10].js", stepWorker: "step/worker.js", deskWorker: "worker.js", help: "help/search.[contenthash:10].js" };

/** Makes the help page of one Markdown page of docs/. */
async function renderHelp(markdown, path) {
  const { helpPage } = await import("./scripts/help-page.mjs");
  return helpPage(markdown.toString(), relative(docs, path).split(sep).length - 1);
}

/** Lists the sections of all Markdown pages, for the search among them. */
async function listSections(assets) {
  const { helpSections } = await import("./scripts/help-page.mjs");
  const pages = assets.map(({ sourceFilename, data }) => [relative("docs", sourceFilename).replace(/\.md$/, "").replaceAll(sep, "/"), data.toString()]);
  return Buffer.from(JSON.stringify(pages.sort(([one], [other]) => (one < other ? -1 : 1)).flatMap(([page, markdown]) => helpSections(page, markdown))));
}

/** Makes the page that searches the help. */
async function searchPage() {
  const { helpPage } = await import("./scripts/help-page.mjs");
  return helpPage("# Search the help\n", 0);
}

/** Gives every function the address of its help page, which the sheet's own help links to. */
function addHelpAddresses(text, baseUrl) {
  const description = JSON.parse(text);
  for (const one of description.functions) one.helpUrl = `${baseUrl}help/functions/${one.id}.html`;
  return JSON.stringify(description);
}

/**
 * Builds dist/: functions.js and functions.json for the host, taskpane.html for its pane, index.html for the browser workbook, step/ for a phone.
 *
 * `--env baseUrl=https://…/` is the address from which the add-in will be served; it goes into the manifest. `--env hostLibrary=carried`
 * copies the host library beside the pane, for closed networks.
 */
module.exports = (env = {}, { mode = "production" } = {}) => {
  const production = mode === "production";
  const baseUrl = (env.baseUrl ?? "https://localhost:3000/").replace(/\/?$/, "/");
  const carried = hostLibrary(env.hostLibrary);
  const fillManifest = (text) => text.toString().replaceAll("{{baseUrl}}", baseUrl).replaceAll("{{version}}", version);
  return {
    mode,
    target: ["web", "es2022"],
    devtool: production ? false : "source-map",
    cache: { type: "filesystem", buildDependencies: { config: [resolve(__dirname, "webpack.config.js")] }, version: createHash("sha1").update(`${mode} ${baseUrl} ${carried.source}`).digest("hex") },
    entry: {
      functions: source("functions", "main.ts"),
      // The pane's page holds the functions too (a shared runtime): what both use stands in functions.js, which runs alone as well.
      taskpane: { import: source("taskpane", "main.ts"), dependOn: "functions" },
      standalone: source("standalone", "main.ts"),
      step: source("step", "main.ts"),
      stepWorker: source("offline", "worker.ts"),
      deskWorker: source("offline", "worker.ts"),
      help: source("help", "main.ts"),
    },
    output: {
      path: resolve(__dirname, "dist"),
      clean: true,
      // functions.js runs where there is neither a window nor a document: no looking for the address of its own script.
      publicPath: "",
      globalObject: "globalThis",
      // The manifest and people's deployments point at functions.js by name; everything else is found through its page.
      filename: ({ chunk }) => places[chunk.name] ?? "[name].[contenthash:10].js",
      chunkFilename: "[name].[contenthash:10].js",
      assetModuleFilename: "[name].[contenthash:10][ext]",
    },
    resolve: {
      extensions: [".ts", ".js"],
      // What the writer of PDFs asks of Node: its streams, its compression by a package that ships already, and no files.
      fallback: { stream: require.resolve("readable-stream"), zlib: source("pdf", "deflate.ts"), fs: false },
      // Pictures in PNG and fonts packed by Brotli: none of either goes into a PDF of ours.
      alias: { "png-js": false, "brotli/decompress.js": false },
    },
    module: {
      rules: [
        { test: /roboto-fontface.*\.woff$/, type: "asset/bytes" },
        { test: /\.ts$/, loader: "esbuild-loader", options: { target: "es2022" } },
        // Rules do nothing by being loaded: of an index only what is asked for need be there.
        { test: /\.ts$/, include: [source("sheet"), source("planning")], sideEffects: false },
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
      ],
    },
    optimization: {
      // The default minifier takes a minute over the browser workbook, this one a second.
      minimizer: [new EsbuildPlugin({ target: "es2022", css: true, legalComments: "none" })],
      // Each of these is whole by itself: one runs in a bare context, the page for a phone has a folder of its own, and workers load nothing.
      splitChunks: { chunks: ({ name }) => !["functions", "step", "stepWorker", "deskWorker", "help"].includes(name) },
    },
    performance: { hints: false },
    stats: { preset: "errors-warnings" },
    plugins: [
      // The engine's hyphenation of text documents in 70 languages beside English: no sheet asks for it.
      new IgnorePlugin({ resourceRegExp: /^\.\/(?!en-)[a-z0-9-]+-[\w-]{8}\.js$/, contextRegExp: /engine-render/ }),
      new MiniCssExtractPlugin({ filename: ({ chunk }) => `${chunk.name === "step" ? "step/" : ""}[name].[contenthash:10].css`, chunkFilename: "[name].[contenthash:10].css" }),
      new HtmlPlugin({ filename: "index.html", template: source("standalone", "index.html"), chunks: ["standalone"], scriptLoading: "module" }),
      new HtmlPlugin({
        filename: "taskpane.html",
        template: source("taskpane", "taskpane.html"),
        chunks: ["functions", "taskpane"],
        scriptLoading: "blocking",
        inject: "body",
        templateParameters: { hostLibrary: carried },
      }),
      new HtmlPlugin({ filename: "step/index.html", template: source("step", "index.html"), chunks: ["step"], scriptLoading: "module", publicPath: "../" }),
      new HtmlPlugin({ filename: "help/search.html", templateContent: searchPage, chunks: ["help"], scriptLoading: "module", publicPath: "../" }),
      new CopyPlugin({
        patterns: [
          { from: source("functions", "functions.json"), to: "functions.json", transform: (text) => addHelpAddresses(text, baseUrl) },
          { context: "docs", from: "**/*.md", to: ({ absoluteFilename }) => `help/${relative(docs, absoluteFilename).replace(/\.md$/, ".html")}`, transform: renderHelp },
          { context: "docs", from: "*.yaml", to: "help" },
          { from: source("help", "help.css"), to: "help" },
          { from: "docs/**/*.md", to: "help/search.json", transformAll: listSections },
          { context: "docs", from: "pictures/*.png", to: "help/[path][name][ext]", noErrorOnMissing: true },
          { from: "manifest/manifest.xml", to: "manifest.xml", transform: fillManifest },
          { from: "manifest/icons", to: "icons" },
          { context: "src/step", from: "*.{svg,webmanifest}", to: "step" },
          ...carried.copies,
          { from: "examples", to: "examples", noErrorOnMissing: true },
        ],
      }),
      new ShippedLicences(),
      new PageWorkers([
        { worker: "step/worker.js", page: "steps", entry: "step", further: /^step\/(index\.html|icon\.svg|manifest\.webmanifest)$/, freshFirst: false },
        { worker: "worker.js", page: "workbook", entry: "standalone", further: /^(index\.html|icons\/baywright-32\.png)$/, freshFirst: true },
      ]),
      // Copies beside the files, for servers that hand them out as they are.
      ...(production
        ? [
            new CompressionPlugin({ test: compressed }),
            new CompressionPlugin({
              test: compressed,
              algorithm: "brotliCompress",
              filename: "[path][base].br",
              compressionOptions: { params: { [constants.BROTLI_PARAM_QUALITY]: 10 } },
            }),
          ]
        : []),
      ...(production
        ? [
            new SizeBudget([
              { entry: "functions", kilobytes: 120 },
              { entry: "taskpane", kilobytes: 120 },
              // What the page loads before the grid.
              { entry: "standalone", kilobytes: 120 },
              // What is loaded once somebody saves a PDF, its fonts with it.
              { chunk: "pdf", kilobytes: 480 },
              { entry: "step", kilobytes: 120 },
            ]),
          ]
        : []),
    ],
  };
};
