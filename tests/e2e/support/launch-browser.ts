import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { once } from "node:events";
import { type Browser, type BrowserContext, chromium } from "playwright-core";

/** Where systems keep a browser of the Chromium family. */
const places = [
  process.env["CHROME_PATH"] ?? "",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/usr/bin/microsoft-edge",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

const quiet = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

/** Starts a browser without a window: an installed one, else the one that comes as a package. */
export async function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: await browserPath(), headless: true, args: quiet });
}

/** A browser that keeps its storage in a folder, and that can be killed. */
export interface MortalBrowser {
  readonly context: BrowserContext;
  /** Ends every process of it at once, as a machine that loses power would. */
  kill(): Promise<void>;
}

/** Starts a browser without a window over what an earlier one left in `profile`. */
export async function launchMortal(profile: string): Promise<MortalBrowser> {
  const args = ["--headless=new", "--remote-debugging-port=0", `--user-data-dir=${profile}`, ...quiet, "about:blank"];
  const child = spawn(await browserPath(), args, { detached: true, stdio: ["ignore", "ignore", "pipe"] });
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    child.stderr.on("data", (part: Buffer) => {
      said += part.toString();
      const found = /DevTools listening on (\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.once("exit", () => { reject(new Error(`The browser ended at once: ${said}`)); });
  });
  const browser = await chromium.connectOverCDP(address);
  return {
    context: browser.contexts()[0]!,
    async kill() {
      const ended = once(child, "exit");
      process.kill(-child.pid!, "SIGKILL");
      await ended;
    },
  };
}

async function browserPath(): Promise<string> {
  return places.find((place) => place !== "" && existsSync(place)) ?? (await packagedBrowser());
}

/** Unpacks the browser of the package, and the system libraries it brings along for machines that lack them. */
async function packagedBrowser(): Promise<string> {
  // Under this name the package takes its libraries out and puts them on the loader's path; it was made for such a bare machine.
  process.env["AWS_EXECUTION_ENV"] ??= "AWS_Lambda_nodejs20.x";
  const { default: packaged } = await import("@sparticuz/chromium");
  return packaged.executablePath();
}
