// `npm start`: installs what is missing, builds dist/ and serves the browser workbook on this machine.
import { join } from "node:path";
import { ensureInstalled, root, runPackage } from "./ensure-installed.mjs";

ensureInstalled();
console.log("Building …");
const failed = runPackage("webpack/bin/webpack.js", ["--mode", "production"]);
if (failed !== 0) {
  console.error("The build failed: what is wrong stands above.");
  process.exit(failed);
}
// Not at the top: on a fresh clone its packages are there only now.
const { serve } = await import("./serve.mjs");
const served = await serve(join(root, "dist"), Number(process.env.PORT || 3000)).catch((fault) => {
  console.error(fault.message);
  process.exit(1);
});
console.log(`
Baywright is ready: ${served.url}

  Open that address in a browser. In cell C1 type  =BAY.USABLE("RAID 6",12,4)  and press Enter: it shows 40.
  The pane on the right checks the plan and builds the tab of a site.
  Press Ctrl+C here to stop.
`);
