// Serves dist/ by docs/nginx.conf.example on this machine and looks whether headers, compressed copies and both pages are as they
// should be. Wants nginx, openssl and Chromium installed. For the pane build first with: npm run build -- --env hostLibrary=carried
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { chromium } from "playwright-core";

const root = join(import.meta.dirname, "..");
const dist = resolve(process.argv[2] ?? join(root, "dist"));
const folder = mkdtempSync(join(tmpdir(), "baywright-nginx-"));
const port = 8443;
const base = `https://127.0.0.1:${port}`;
const faults = [];
const expect = (what, found, wanted) => {
  const fits = wanted instanceof RegExp ? wanted.test(found ?? "") : found === wanted;
  console.log(`${fits ? "ok  " : "FAIL"} ${what}: ${found}`);
  if (!fits) faults.push(what);
};

const certificate = ["req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "1", "-subj", "/CN=127.0.0.1"];
execFileSync("openssl", [...certificate, "-keyout", join(folder, "key.pem"), "-out", join(folder, "cert.pem")], { stdio: "ignore" });
const example = readFileSync(join(root, "docs", "nginx.conf.example"), "utf8")
  .replace("listen 443", `listen 127.0.0.1:${port}`)
  .replace("baywright.example.com", "127.0.0.1")
  .replace("/etc/ssl/certs/baywright.pem", join(folder, "cert.pem"))
  .replace("/etc/ssl/private/baywright.key", join(folder, "key.pem"))
  .replace("/srv/baywright/dist", dist);
const types = "types { text/html html; text/css css; application/javascript js; application/json json; image/png png; text/xml xml; text/plain txt; }";
// Started by root it would hand the work to a user who may not read this folder.
const user = process.getuid?.() === 0 ? "user root;" : "";
const passing = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"].map((one) => `${one}_temp_path ${folder};`).join(" ");
writeFileSync(
  join(folder, "nginx.conf"),
  `${user} daemon off; pid ${folder}/pid; error_log ${folder}/error.log; events {} http { ${types} access_log off; ${passing}\n${example}\n}`,
);

const nginx = spawn(process.env.NGINX ?? "/usr/sbin/nginx", ["-c", join(folder, "nginx.conf"), "-p", folder], { stdio: "inherit" });
try {
  await answered();
  const page = await ask("/taskpane.html");
  expect("pane", page.status, 200);
  expect("pane may be framed by the spreadsheet program", page.headers["content-security-policy"], /^frame-ancestors 'self' https:\/\/\*\.officeapps\.live\.com/);
  expect("pane is asked for again", page.headers["cache-control"], "no-cache");
  for (const [name, wanted] of [["strict-transport-security", "max-age=31536000"], ["x-content-type-options", "nosniff"], ["referrer-policy", "no-referrer"]]) expect(name, page.headers[name], wanted);
  expect("server names no version", page.headers.server, "nginx");
  expect("start page may not be framed", (await ask("/")).headers["content-security-policy"], "frame-ancestors 'self'");
  const functions = await ask("/functions.json", { "Accept-Encoding": "gzip" });
  expect("functions.json is readable from the host's address", functions.headers["access-control-allow-origin"], "*");
  expect("functions.json comes compressed", functions.headers["content-encoding"], "gzip");
  const hashed = readdirSync(dist).find((name) => /^taskpane\.\w+\.js$/.test(name));
  expect("hashed file is kept for good", (await ask(`/${hashed}`)).headers["cache-control"], /immutable/);
  expect("hashed file has no open door", (await ask(`/${hashed}`)).headers["access-control-allow-origin"], undefined);
  const steps = readdirSync(join(dist, "step")).find((name) => /^step\.\w+\.js$/.test(name));
  expect("hashed file of the page for a phone is kept for good", (await ask(`/step/${steps}`)).headers["cache-control"], /immutable/);
  for (const worker of ["/worker.js", "/step/worker.js"]) expect(`${worker} is asked for again`, (await ask(worker)).headers["cache-control"], "no-cache");
  expect("that page may ask for the camera", (await ask("/step/")).headers["permissions-policy"], /^camera=\(self\),/);
  expect("no other page may", page.headers["permissions-policy"], /^camera=\(\),/);
  expect("what is not there", (await ask("/nowhere")).status, 404);
  expect("posting", (await ask("/functions.json", {}, "POST")).status, 403);
  expect("help", (await ask("/help/")).status, 200);
  await look("/taskpane.html", "This page is the pane of the add-in");
  await look("/", undefined);
  await look("/step/", "One step at a time");
} finally {
  nginx.kill("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
}
console.log(faults.length === 0 ? "All is as it should be." : `${faults.length} faults`);
process.exitCode = faults.length === 0 ? 0 : 1;

/** Opens a page in Chromium and listens for errors and for requests elsewhere. */
async function look(path, text) {
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
  const errors = [];
  const elsewhere = [];
  const page = await browser.newPage({ ignoreHTTPSErrors: true });
  page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("request", (one) => !one.url().startsWith(base) && !/^(data|blob):/.test(one.url()) && elsewhere.push(one.url()));
  await page.goto(`${base}${path}`, { waitUntil: "networkidle" });
  if (text !== undefined) expect(`${path} says`, (await page.locator("body").innerText()).trim(), new RegExp(text));
  expect(`${path} errors on the console`, errors.join(" | "), "");
  expect(`${path} requests elsewhere`, elsewhere.join(" "), "");
  await browser.close();
}

function ask(path, headers = {}, method = "GET") {
  return new Promise((resolve, reject) => {
    const sent = request(`${base}${path}`, { method, headers, rejectUnauthorized: false }, (response) => {
      response.resume();
      response.on("end", () => resolve({ status: response.statusCode, headers: response.headers }));
    });
    sent.on("error", reject);
    sent.end();
  });
}

async function answered() {
  for (let turn = 0; turn < 50; turn += 1) {
    try {
      return await ask("/");
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  throw new Error("nginx does not answer");
}
