// `npm run side-load`: builds dist/, serves it over https on this machine and opens the spreadsheet program with the add-in, for a trial.
// What follows `--` goes to the vendor's tool, such as `web --document ADDRESS`; `--no-build` takes dist/ as it is. The vendor's tools are
// fetched here and not with the other packages, as they only serve somebody who has the program.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { ensureInstalled, root, runPackage } from "./ensure-installed.mjs";

const certificateTool = "office-addin-dev-certs@3.0.0";
const loadingTool = "office-addin-debugging@7.0.0";
/** The manifest names it, so the site is built for it. */
const port = Number(process.env.PORT || 3000);
const manifest = join(root, "dist", "manifest.xml");
const given = process.argv.slice(2);
const forTool = given.filter((one) => one !== "--no-build");

ensureInstalled();
if (!given.includes("--no-build")) {
  console.log("Building …");
  if (runPackage("webpack/bin/webpack.js", ["--mode", "production", "--env", `baseUrl=https://localhost:${port}/`]) !== 0) refuse("The build failed: what is wrong stands above.");
}
console.log("Making a certificate that this machine trusts …");
if ((await runTool(certificateTool, ["install"])) !== 0) refuse("There is no certificate, and the program loads nothing without one. What is wrong stands above.");
const { server, url } = await startServing();
console.log(`The add-in is served on ${url}`);
if ((await runTool(loadingTool, ["start", manifest, ...(forTool.length > 0 ? forTool : ["desktop"]), "--no-debug"])) !== 0) {
  refuse("The program could not be opened with the add-in. What is wrong stands above; docs/install.md tells how it is done by hand.");
}
console.log("The add-in is loaded. Press Ctrl+C here to take it away and to stop.");
process.once("SIGINT", () => {
  void runTool(loadingTool, ["stop", manifest]).then((status) => {
    server.close();
    server.closeAllConnections();
    process.exit(status);
  });
});

/** Serves the built site with the certificate that the vendor's tool keeps in the home folder. */
async function startServing() {
  // Not at the top: on a fresh clone its packages are there only now.
  const { serve } = await import("./serve.mjs");
  const file = (name) => readFileSync(join(homedir(), ".office-addin-dev-certs", name), "utf8");
  return serve(join(root, "dist"), port, { cert: file("localhost.crt"), key: file("localhost.key") }).catch((fault) => refuse(fault.message));
}

/** Runs a tool of the vendor in the version named, with its output shown; answers with its exit code. */
function runTool(tool, args) {
  const child = spawn(process.platform === "win32" ? "npx.cmd" : "npx", ["--yes", tool, ...args], { cwd: root, stdio: "inherit", shell: process.platform === "win32" });
  return new Promise((resolve) => {
    child.once("error", () => resolve(1));
    child.once("exit", (code) => resolve(code ?? 1));
  });
}

function refuse(sentence) {
  console.error(sentence);
  process.exit(1);
}
