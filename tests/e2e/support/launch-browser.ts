import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

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
  const executablePath = places.find((place) => place !== "" && existsSync(place)) ?? (await packagedBrowser());
  return chromium.launch({ executablePath, headless: true, args: quiet });
}

/** Unpacks the browser of the package, and the system libraries it brings along for machines that lack them. */
async function packagedBrowser(): Promise<string> {
  // Under this name the package takes its libraries out and puts them on the loader's path; it was made for such a bare machine.
  process.env["AWS_EXECUTION_ENV"] ??= "AWS_Lambda_nodejs20.x";
  const { default: packaged } = await import("@sparticuz/chromium");
  return packaged.executablePath();
}
