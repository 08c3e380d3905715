import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer, request, type IncomingHttpHeaders, type Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { seededRandom } from "../support/seeded-random";
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
function start(preferred = 0, folder = makeSite()): Promise<string> {
  const script = `import { serve } from ${JSON.stringify(serveModule)}; console.log((await serve(${JSON.stringify(folder)}, ${preferred})).url);`;
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

/** Sends text as it is and answers with the status that comes back, or "closed" where the line was only closed; "silent" where neither comes in ten seconds. */
function send(url: string, text: string): Promise<string> {
  const { hostname, port } = new URL(url);
  return new Promise((resolve) => {
    let answer = "";
    const line = connect(Number(port), hostname, () => line.write(text, "latin1"));
    const limit = setTimeout(() => { end("silent"); }, 10_000);
    const end = (what: string) => {
      clearTimeout(limit);
      resolve(what);
      line.destroy();
    };
    line.on("data", (part: Buffer) => {
      answer += part.toString("latin1");
      // What only says to go on is no answer yet.
      const status = /HTTP\/1\.1 ((?!100)\d{3}) [^]*?\r\n\r\n/.exec(answer)?.[1];
      if (status !== undefined) end(status);
    });
    line.on("error", () => undefined).on("close", () => { end("closed"); });
  });
}

describe("a thousand hostile requests", () => {
  const ranges = [
    ...["bytes=0-9007199254740993", "bytes=5-1", "bytes=-1", "bytes=99-", "bytes=a-b", "bytes=0-0,2-1", "lines=1-2", "=", "bytes=1e309-"],
    `bytes=${"0-1,".repeat(900)}`,
  ];
  const paths = [
    ...["/", "//", "/%", "/%00", "/%2e%2e/%2e%2e/", "/\\..\\..", "/step", `/${"a".repeat(5_000)}`, `/${"../".repeat(500)}`, "/?%"],
    ...["/index.html%2f", "*", "/%c0%ae%c0%ae/", "/linked.txt", "/dangling.txt", "/up/dist/index.html", "//elsewhere.example/", "/step/..%5c..%5csecret.txt"],
    ...["http://elsewhere.example/", "/index.html;a=b", "/index.html\u00ff", "/con", "/%ff%fe", "/.%00.html", "/index.html#x", "?", "/ /x"],
  ];
  const methods = ["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "TRACE", "CONNECT", "PROPFIND", "PRI", "get", "G\0T"];
  const hosts = (own: string) => [
    ...[own, own.replace("127.0.0.1", "localhost"), "elsewhere.example", "", "127.0.0.1", "127.0.0.1:0", "[::1]"],
    ...[`${own}\r\nHost: ${own}`, "a".repeat(3_000), `${own}@elsewhere.example`],
  ];
  const extras = [
    ...["", "Expect: 100-continue\r\n", "Expect: more\r\n", "Upgrade: websocket\r\nConnection: Upgrade\r\n", "Transfer-Encoding: chunked\r\n"],
    ...["Transfer-Encoding: chunked\r\nContent-Length: 4\r\n", "Content-Length: -1\r\n", "Content-Length: 99999999999999999999\r\n"],
    ...["If-Modified-Since: never\r\n", "X: \0\r\n", " folded: x\r\n", `X: ${"y".repeat(20_000)}\r\n`, "X: y\r\n".repeat(5_000)],
    ...["Connection: close\r\nConnection: keep-alive\r\n", "Accept-Encoding: \u00ff\r\n"],
  ];

  test("are all answered or closed, whatever their method, path, range, host and headers are, and the page is served after them", async () => {
    const url = await start();
    const own = new URL(url).host;
    const random = seededRandom(21);
    const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!;
    const answers = new Map<string, number>();
    for (let sent = 0; sent < 1_000; sent += 50) {
      const head = () => `Host: ${one(hosts(own))}\r\nRange: ${one(ranges)}\r\n${one(extras)}\r\n`;
      const hostile = Array.from({ length: 50 }, () => `${one(methods)} ${one(paths)} HTTP/${one(["1.1", "1.1", "1.1", "1.0", "9.9"])}\r\n${head()}`);
      for (const answer of await Promise.all(hostile.map((text) => send(url, text)))) answers.set(answer, (answers.get(answer) ?? 0) + 1);
    }
    expect([...answers.keys()].sort().filter((answer) => !["200", "308", "400", "403", "404", "405", "417", "431", "closed"].includes(answer))).toEqual([]);
    expect([...answers.values()].reduce((sum, count) => sum + count)).toBe(1_000);
    const { status, body } = await answerOf(url, { headers: { Range: "bytes=0-9007199254740993" } });
    expect([status, body]).toEqual([200, "<p>page</p>"]);
  });

  test("lines that say nothing, half of a request, or are torn off do not keep others waiting", async () => {
    const url = await start();
    const { hostname, port, host } = new URL(url);
    const half = ["", "GET", "GET / HTTP/1.1\r\n", `GET / HTTP/1.1\r\nHost: ${host}\r\nX: `, `POST / HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 1000000\r\n\r\nx`, "\0\0\0", "\u0016\u0003\u0001"];
    const open = Array.from({ length: 210 }, (_, number) => {
      const line = connect(Number(port), hostname, () => line.write(half[number % half.length]!, "latin1"));
      return line.on("error", () => undefined).resume();
    });
    const many = connect(Number(port), hostname, () => line(many));
    const line = (to: typeof many) => to.write(`GET / HTTP/1.1\r\nHost: ${host}\r\n\r\n`.repeat(200), () => to.resetAndDestroy());
    many.on("error", () => undefined);
    expect(await Promise.all(Array.from({ length: 20 }, () => ask(url)))).toEqual(Array.from({ length: 20 }, () => 200));
    for (const one of open) one.resetAndDestroy();
    expect(await ask(url)).toBe(200);
  });
});

test("a file that changes is handed out as it is now", async () => {
  const folder = makeSite();
  const url = await start(0, folder);
  expect((await answerOf(url)).body).toBe("<p>page</p>");
  writeFileSync(join(folder, "index.html"), "<p>another page</p>");
  expect((await answerOf(url)).body).toBe("<p>another page</p>");
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
