import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer, request, type IncomingHttpHeaders, type Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { projectRoot } from "../support/source-files";

const serveModule = pathToFileURL(join(__dirname, "..", "..", "scripts", "serve.mjs")).href;
const started: ChildProcess[] = [];

/** Makes a folder of a few pages, with links that lead out of it and nowhere. */
function makeSite(): string {
  const outside = mkdtempSync(join(tmpdir(), "baywright-outside-"));
  const folder = join(outside, "dist");
  for (const path of ["step", "icons"]) mkdirSync(join(folder, path), { recursive: true });
  for (const name of ["index.html", "taskpane.html", "functions.json", "step/index.html", "step/step.0123456789.js", "icons/one.png"]) writeFileSync(join(folder, name), "<p>page</p>");
  mkdirSync(join(outside, "dist-beside"));
  for (const path of ["secret.txt", "dist-beside/secret.txt"]) writeFileSync(join(outside, path), "secret");
  symlinkSync(join(outside, "secret.txt"), join(folder, "linked.txt"));
  symlinkSync(outside, join(folder, "up"));
  symlinkSync(join(outside, "gone.txt"), join(folder, "dangling.txt"));
  return folder;
}

/** Serves the folder in a process of its own, and answers with the address. */
function start(preferred = 0): Promise<string> {
  const script = `import { serve } from ${JSON.stringify(serveModule)}; console.log((await serve(${JSON.stringify(makeSite())}, ${preferred})).url);`;
  const child = spawn(process.execPath, ["--input-type=module", "-e", script]);
  started.push(child);
  return new Promise((resolve, reject) => {
    child.stdout.once("data", (line: Buffer) => { resolve(line.toString().trim()); });
    child.stderr.once("data", (line: Buffer) => { reject(new Error(line.toString())); });
  });
}

interface Asked {
  readonly host?: string;
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Record<string, string>;
}

function answerOf(url: string, { host, method = "GET", path = "/", headers = {} }: Asked = {}): Promise<{ status: number; headers: IncomingHttpHeaders; body: string }> {
  const { hostname, port } = new URL(url);
  return new Promise((resolve, reject) => {
    const asked = request({ hostname, port, path, method, headers: { ...headers, ...(host !== undefined && { host }) } }, (response) => {
      let body = "";
      response.on("data", (part: Buffer) => { body += part.toString(); });
      response.on("end", () => { resolve({ status: response.statusCode ?? 0, headers: response.headers, body }); });
    });
    asked.on("error", reject);
    asked.end();
  });
}

const ask = async (url: string, asked?: Asked) => (await answerOf(url, asked)).status;

afterEach(() => {
  for (const child of started.splice(0)) child.kill();
});

test("a page is served on this machine's own address, to which its other name leads; others are refused", async () => {
  const url = await start();
  const { port, hostname } = new URL(url);
  expect(hostname).toBe("127.0.0.1");
  expect(await ask(url)).toBe(200);
  const { status, headers } = await answerOf(url, { host: `localhost:${port}`, path: "/step/?at=3" });
  expect([status, headers.location]).toEqual([308, `${url}step/?at=3`]);
  expect(await ask(url, { host: `elsewhere.example:${port}` })).toBe(403);
  expect(await ask(url, { host: "127.0.0.1:1" })).toBe(403);
});

test("nothing but files of the folder is handed out, no link is followed, and nothing is taken in", async () => {
  const url = await start();
  expect(await ask(url, { path: "/step/" })).toBe(200);
  const nothing = ["/gone.html", "/..%2f..%2fetc%2fpasswd", "/../secret.txt", "/..%2fdist-beside%2fsecret.txt", "/linked.txt", "/up/dist/index.html", "/dangling.txt", "/index.html/"];
  for (const path of nothing) expect([path, await ask(url, { path })]).toEqual([path, 404]);
  expect(await ask(url, { method: "POST" })).toBe(405);
});

test("a file that did not change since it was asked for is not sent again", async () => {
  const url = await start();
  const { headers } = await answerOf(url);
  expect(await ask(url, { headers: { "If-Modified-Since": headers["last-modified"]! } })).toBe(304);
});

test("no request ends the server, a thousand with ranges and paths out of order among them", async () => {
  const url = await start();
  const ranges = ["bytes=0-9007199254740993", "bytes=5-1", "bytes=-1", "bytes=99-", "bytes=a-b", "bytes=0-0,2-1", "lines=1-2", "=", "bytes=1e309-"];
  const paths = ["/", "//", "/%", "/%00", "/%2e%2e/%2e%2e/", "/\\..\\..", "/step", `/${"a".repeat(5_000)}`, `/${"../".repeat(500)}`, "/?%", "/index.html%2f", "*", "/%c0%ae%c0%ae/", "/linked.txt"];
  const hostile = Array.from({ length: 1_000 }, (_, number) => {
    const [path, Range] = [paths[number % paths.length]!, ranges[number % ranges.length]!];
    return { path, method: number % 3 === 0 ? "HEAD" : "GET", headers: { Range } };
  });
  const answers = await Promise.all(hostile.map((one) => ask(url, one)));
  expect(new Set(answers)).toEqual(new Set([200, 400, 404]));
  const { hostname, port } = new URL(url);
  const broken = ["GET\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "\0\0\0", "GET / HTTP/1.1\r\nContent-Length: -1\r\n\r\n", "GET http:// HTTP/1.1\r\n\r\n"];
  for (const text of broken) {
    await new Promise<void>((resolve) => {
      const line = connect(Number(port), hostname, () => line.end(text));
      line.on("error", () => undefined).on("close", () => { resolve(); }).resume();
    });
  }
  const { status, body } = await answerOf(url, { headers: { Range: "bytes=0-9007199254740993" } });
  expect([status, body]).toEqual([200, "<p>page</p>"]);
});

test("pages carry the headers that the example for a server of the firm's sends", async () => {
  const url = await start();
  const example = readFileSync(join(projectRoot, "docs", "nginx.conf.example"), "utf8");
  const casesOf = (lines: string) => [...lines.matchAll(/^\s*(?:"(.*?)"|(default)) "(.*)";$/gm)];
  const maps = new Map([...example.matchAll(/map \$uri \$(\w+) \{\n([^]*?)\n\}/g)].map(([, name, lines]) => [name!, casesOf(lines!)]));
  const filled = (value: string, path: string) =>
    value.replace(/\$(\w+)/g, (_, name: string) => {
      const cases = maps.get(name)!;
      const found = cases.find(([, on]) => on !== undefined && (on.startsWith("~") ? new RegExp(on.slice(1)).test(path) : on === path)) ?? cases.find(([, , fallback]) => fallback !== undefined)!;
      return found[3]!;
    });
  const wanted = [...example.matchAll(/add_header (\S+) (?:"(.*)"|(\S+)) always;/g)].map(([, name, quoted, bare]) => [name!, quoted ?? bare!] as const);
  expect(wanted).toHaveLength(7);
  for (const path of ["/", "/taskpane.html", "/functions.json", "/step/", "/step/step.0123456789.js", "/icons/one.png"]) {
    const { status, headers } = await answerOf(url, { path });
    expect([path, status]).toEqual([path, 200]);
    for (const [name, value] of wanted) {
      // Asks for https, which this machine does not speak with itself.
      if (name === "Strict-Transport-Security") continue;
      expect([path, name, headers[name.toLowerCase()] ?? ""]).toEqual([path, name, filled(value, path)]);
    }
  }
});

test("where the port is taken a sentence says so, and no other port is used in its place", async () => {
  const other: Server = createServer();
  await new Promise<void>((resolve) => { other.listen(0, "127.0.0.1", resolve); });
  const taken = (other.address() as AddressInfo).port;
  await expect(start(taken)).rejects.toThrow(`Port ${taken} is in use. Stop what uses it, or set PORT to another, such as ${taken + 1}.`);
  other.close();
  await expect(start(70_000)).rejects.toThrow("PORT is no port. Set it to a whole number from 1 to 65535, such as 3000.");
});
