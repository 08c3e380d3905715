import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { Server } from "node:http";
import { dirname, join, relative } from "node:path";
import type { Browser, Page } from "playwright-core";
import { excerptAround, searchAmong, type Section } from "../../src/help/search";
import { complaintsOn } from "./support/complaints";
import { launchBrowser } from "./support/launch-browser";
import { serveSite } from "./support/serve-site";

const site = join(__dirname, "..", "..", "dist");
const help = join(site, "help");

describe("the built pages of the help", () => {
  const files = readdirSync(help, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".html"));
  const textOf = (name: string): string => readFileSync(join(help, name), "utf8");

  test("lead with every link to a page, and to a heading that is there", () => {
    const dead = files.flatMap((name) =>
      [...textOf(name).matchAll(/<a href="(?!https?:)([^"#]*)(?:#([^"]*))?"/g)].flatMap(([, page = "", heading]) => {
        const target = page === "" ? name : relative(help, join(help, dirname(name), page));
        const isThere = existsSync(join(help, target)) && (heading === undefined || textOf(target).includes(` id="${heading}"`));
        return isThere ? [] : [`${name}: ${page}#${heading ?? ""}`];
      }),
    );
    expect(files.length).toBeGreaterThan(70);
    expect(dead).toEqual([]);
  });
});

describe("the search of the help", () => {
  const sections = JSON.parse(readFileSync(join(help, "search.json"), "utf8")) as Section[];
  const search = searchAmong(sections);

  test.each([
    ["how long does a rebuild take", "functions/REBUILDHOURS"], ["raid", "functions/USABLE"], ["mirror", "models"], ["price per TB", "pricing"], ["TiB", "quoting"], ["spare drives", "quoting"],
    ["free addresses", "functions/NEXTFREE"], ["gateway", "addresses"], ["single point of failure", "failure-domains"], ["breaker", "functions/CIRCUITUSE"], ["cooling", "functions/HEAT"],
    ["lift", "functions/LIFTLIMIT"], ["hold point", "commissioning"], ["seal", "commissioning"], ["handover", "commissioning"], ["phone", "commissioning"], ["cable labels", "commissioning"],
    ["offer pdf", "pricing"], ["vat", "quoting"], ["price list", "pricing"], ["thirty sites", "programme"], ["crew", "programme"], ["side-load", "install"], ["offline", "install"],
    ["command line", "fleet"], ["merge tabs", "fleet"], ["rebiuld", "functions/REBUILDHOURS"], ["disk", "functions/DRIVESFOR"], ["psu", "failure-domains"], ["growth", "functions/DEMAND"],
  ])("finds for “%s” the page %s among the first five", (query, page) => {
    const pages = [...new Set(search(query).map(({ section }) => section.id.replace(/\.html.*$/, "")))];
    expect(pages.slice(0, 5)).toContain(page);
  });

  test("finds nothing for what is on no page, nor for no words at all", () => {
    expect(search("qqqzzz")).toEqual([]);
    expect(search("")).toEqual([]);
    expect(search("how is the")).toEqual([]);
  });

  test("shows every word that was looked for, in a text cut at blanks", () => {
    const text = `${"before ".repeat(80)}a rebuild (RAID 6) of ${"after ".repeat(80)}`;
    const pieces = excerptAround(text, ["rebuild", "raid"]);
    expect(pieces.filter(({ isTerm }) => isTerm).map((piece) => piece.text)).toEqual(["rebuild", "RAID"]);
    expect(pieces.map((piece) => piece.text).join("")).toMatch(/^… before .* after …$/);
    expect(excerptAround("short", [])).toEqual([{ text: "short", isTerm: false }]);
    expect(excerptAround("a+b stands here", ["a+b"])[0]).toEqual({ text: "a+b", isTerm: true });
  });
});

describe("the page that searches", () => {
  let server: Server;
  let browser: Browser;
  let page: Page;
  let address: string;
  const faults: string[] = [];

  beforeAll(async () => {
    ({ server, url: address } = await serveSite(site));
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
    page.on("pageerror", (fault) => faults.push(fault.message));
  });

  afterAll(async () => {
    await browser.close();
    server.close();
    expect(faults).toEqual([]);
  });

  test("is reached from any page by typing and Enter, finds as one types, and leads to the heading", async () => {
    await page.goto(new URL("help/functions/USABLE.html", address).href);
    await page.getByRole("searchbox", { name: "Search the help" }).fill("hold point");
    await page.keyboard.press("Enter");
    await page.waitForURL(/search\.html\?q=hold\+point$/);
    expect(await page.getByRole("status").textContent()).toMatch(/^\d+ places for “hold point”|^More than/);
    await page.getByRole("searchbox").fill("vault");
    expect(await page.locator("main mark").first().textContent()).toMatch(/vault/i);
    const link = page.locator("main li a").first();
    const target = new URL((await link.getAttribute("href"))!, page.url()).href;
    await link.click();
    await page.waitForURL(target);
    expect(await page.locator("h1").count()).toBe(1);
  });

  test("says what to try where nothing is found, and shows what was typed as text", async () => {
    await page.goto(new URL("help/search.html?q=%3Cimg%20src%3Dx%3Eqqq", address).href);
    await page.getByText("Nothing for “<img src=x>qqq”. Try one word").waitFor();
    expect(await page.locator("main img").count()).toBe(0);
  });

  test("says so where the list of the pages does not come", async () => {
    await page.route("**/search.json", (route) => route.abort());
    await page.goto(new URL("help/search.html?q=raid", address).href);
    await page.getByRole("alert").getByText("nothing can be searched").waitFor();
    await page.unroute("**/search.json");
  });

  test.each(["light", "dark"] as const)("has no fault that a tool for accessibility finds, in %s", async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    await page.goto(new URL("help/search.html?q=raid", address).href);
    await page.locator("main li").first().waitFor();
    expect(await complaintsOn(page, { runOnly: ["wcag2a", "wcag2aa", "wcag21aa"] })).toEqual([]);
  });
});
