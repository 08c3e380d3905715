const { dirname, join } = require("node:path");

const vendor = "https://appsforoffice.microsoft.com";

/** Files of the host library that the spreadsheet host on each platform asks for, and the licence they come under. */
const files = [
  "office.js",
  "excel-web-16.00.js",
  "excel-win32-16.01.js",
  "excel-mac-16.00.js",
  "en-us/office_strings.js",
  "telemetry/oteljs_agave.js",
  "o15apptofilemappingtable.js",
];

/**
 * Tells where the pane takes the host library from.
 *
 * By default from the vendor's own address, as its licence and the store ask. "carried", for closed networks, copies the files of the
 * package beside the page, byte for byte, with their licence.
 */
module.exports.hostLibrary = function hostLibrary(choice = "vendor") {
  if (choice === "vendor") return { source: `${vendor}/lib/1/hosted/office.js`, origin: ` ${vendor}`, copies: [] };
  if (choice !== "carried") throw new Error(`--env hostLibrary=${choice}: write "vendor" or "carried".`);
  const root = dirname(require.resolve("@microsoft/office-js/package.json"));
  const copies = files.map((file) => ({ from: join(root, "dist", file), to: `host-library/${file}`, info: { minimized: true } }));
  return { source: "host-library/office.js", origin: "", copies: [...copies, { from: join(root, "LICENSE.md"), to: "host-library/LICENSE.md" }] };
};
