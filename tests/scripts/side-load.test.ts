import { spawn, type ChildProcess } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:https";
import { createServer, type AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { projectRoot } from "../support/source-files";

/** A home folder and a stand-in for npx, which notes what it is asked for and makes a certificate as the vendor's tool does. */
let home: string;
let running: ChildProcess | null = null;
/** A port that nothing else uses. */
let port: number;

beforeEach(async () => {
  const free = createServer();
  await new Promise<void>((resolve) => free.listen(0, "127.0.0.1", resolve));
  port = (free.address() as AddressInfo).port;
  await new Promise((resolve) => free.close(resolve));
  home = mkdtempSync(join(tmpdir(), "side-load-"));
  const keys = join(home, ".office-addin-dev-certs");
  const npx = join(home, "npx");
  writeFileSync(
    npx,
    `#!/bin/sh
echo "$@" >> "${join(home, "asked")}"
if [ "$3" = install ]; then
  mkdir -p "${keys}"
  openssl req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=localhost -keyout "${join(keys, "localhost.key")}" -out "${join(keys, "localhost.crt")}" 2> /dev/null
fi
[ ! -e "${join(home, "fails")}-$3" ]
`,
  );
  chmodSync(npx, 0o755);
  mkdirSync(join(projectRoot, "dist"), { recursive: true });
});

afterEach(() => {
  running?.kill("SIGKILL");
  running = null;
  rmSync(home, { recursive: true });
});

const asked = () => (existsSync(join(home, "asked")) ? readFileSync(join(home, "asked"), "utf8").trim().split("\n") : []);

/** Starts the script; answers with all it has said once it says `words`, or once it ends. */
function sideLoad(words: string, ...args: string[]): Promise<{ readonly said: string; readonly code: number | null }> {
  const env = { ...process.env, PORT: String(port), HOME: home, PATH: `${home}:${process.env["PATH"]!}` };
  const child = spawn(process.execPath, ["scripts/side-load.mjs", "--no-build", ...args], { cwd: projectRoot, env });
  running = child;
  let said = "";
  return new Promise((resolve) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.on("data", (text: Buffer) => {
        said += text.toString();
        if (said.includes(words)) resolve({ said, code: null });
      });
    }
    child.once("exit", (code) => { resolve({ said, code }); });
  });
}

test("makes a certificate, serves over https, loads the add-in, and takes it away on Ctrl+C", async () => {
  const manifest = join(projectRoot, "dist", "manifest.xml");
  await sideLoad("Press Ctrl+C");
  expect(asked()).toEqual(["--yes office-addin-dev-certs@3.0.0 install", `--yes office-addin-debugging@7.0.0 start ${manifest} desktop --no-debug`]);
  const status = await new Promise<number | undefined>((resolve, reject) => {
    const ca = readFileSync(join(home, ".office-addin-dev-certs", "localhost.crt"));
    request(`https://localhost:${port}/nowhere`, { ca, agent: false }, (response) => { resolve(response.resume().statusCode); }).on("error", reject).end();
  });
  expect(status).toBe(404);
  const ended = new Promise((resolve) => running!.once("exit", resolve));
  running!.kill("SIGINT");
  expect(await ended).toBe(0);
  expect(asked().at(-1)).toBe(`--yes office-addin-debugging@7.0.0 stop ${manifest}`);
});

test("hands what follows to the tool", async () => {
  await sideLoad("Press Ctrl+C", "web", "--document", "https://files.example.com/plan.xlsx");
  expect(asked().at(-1)).toContain("web --document https://files.example.com/plan.xlsx --no-debug");
});

test("says what to do where the port is taken, and loads nothing", async () => {
  const other = createServer().listen(port, "127.0.0.1");
  try {
    const { said, code } = await sideLoad("nothing else");
    expect([said.includes(`Port ${port} is in use`), code]).toEqual([true, 1]);
    expect(asked()).toHaveLength(1);
  } finally {
    other.close();
  }
});

test.each([["install", "There is no certificate"], ["start", "could not be opened with the add-in"]])("ends with a sentence where %s fails", async (step, words) => {
  writeFileSync(`${join(home, "fails")}-${step}`, "");
  const { said, code } = await sideLoad("nothing else");
  expect([said.includes(words), code]).toEqual([true, 1]);
});
