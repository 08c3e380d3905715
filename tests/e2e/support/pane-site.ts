import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

const folder = join(__dirname, "..");

/** Makes a site of the pane alone, beside a workbook of plain cells (pane-page.ts). */
export function buildPaneSite(target: string): void {
  // The writer of PDFs needs what only the build of the site gives it: it is tried there.
  const external = ["*/pdf/write-printout"];
  const options = { entryPoints: [join(folder, "pane-page.ts")], external, bundle: true, splitting: true, format: "esm", target: "es2022", outdir: target, logLevel: "error" };
  // In a process of its own: the builder does not run inside the test runner's realm.
  execFileSync(process.execPath, ["-e", `require("esbuild").buildSync(${JSON.stringify(options)})`], { cwd: folder, stdio: "inherit" });
  writeFileSync(
    join(target, "index.html"),
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Pane</title><link rel="icon" href="data:,"><link rel="stylesheet" href="pane-page.css">
<style>html,body{height:100%;margin:0}main{height:100%}</style><main id="pane"></main><script type="module" src="pane-page.js"></script>`,
  );
}
