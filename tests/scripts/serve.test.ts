import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { createServer, request, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const serveModule = pathToFileURL(join(__dirname, "..", "..", "scripts", "serve.mjs")).href;
const started: ChildProcess[] = [];

/** Serves a folder of one page in a process of its own, and answers with the address. */
function start(preferred: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "baywright-"));
  writeFileSync(join(folder, "index.html"), "<p>page</p>");
  const script = `import { serve } from ${JSON.stringify(serveModule)}; console.log((await serve(${JSON.stringify(folder)}, ${preferred})).url);`;
  const child = spawn(process.execPath, ["--input-type=module", "-e", script]);
  started.push(child);
  return new Promise((resolve, reject) => {
    child.stdout.once("data", (line: Buffer) => { resolve(line.toString().trim()); });
    child.stderr.once("data", (line: Buffer) => { reject(new Error(line.toString())); });
  });
}

function ask(url: string, { host, method = "GET", path = "" }: { host?: string; method?: string; path?: string } = {}): Promise<number> {
  return new Promise((resolve, reject) => {
    const asked = request(url + path, { method, ...(host !== undefined && { headers: { host } }) }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    asked.on("error", reject);
    asked.end();
  });
}

afterEach(() => {
  for (const child of started.splice(0)) child.kill();
});

test("a page is served on this machine's own address, and to its own names only", async () => {
  const url = await start(0);
  const { port, hostname } = new URL(url);
  expect(hostname).toBe("127.0.0.1");
  expect(await ask(url)).toBe(200);
  expect(await ask(url, { host: `localhost:${port}` })).toBe(200);
  expect(await ask(url, { host: `elsewhere.example:${port}` })).toBe(403);
  expect(await ask(url, { host: "127.0.0.1:1" })).toBe(403);
});

test("nothing but files of the folder is handed out, and nothing is taken in", async () => {
  const url = await start(0);
  expect(await ask(url, { path: "gone.html" })).toBe(404);
  expect(await ask(url, { path: "..%2f..%2fetc%2fpasswd" })).toBe(404);
  expect(await ask(url, { method: "POST" })).toBe(405);
});

test("where the port is taken another one is used", async () => {
  const other: Server = createServer();
  await new Promise<void>((resolve) => { other.listen(0, "127.0.0.1", resolve); });
  const taken = (other.address() as AddressInfo).port;
  const url = await start(taken);
  expect(Number(new URL(url).port)).not.toBe(taken);
  expect(await ask(url)).toBe(200);
  other.close();
});
