import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Browser } from "playwright-core";
import { launchBrowser } from "./support/launch-browser";
import { readPng } from "./support/read-png";
import { WorkbookPage } from "./support/workbook-page";

let browser: Browser;
let workbook: WorkbookPage;

beforeAll(async () => {
  browser = await launchBrowser();
  workbook = await WorkbookPage.open(browser);
  await workbook.turnTo("Plan");
});

afterAll(async () => {
  await workbook.close();
  await browser.close();
  expect(workbook.faults).toEqual([]);
});

const press = (name: string) => workbook.page.getByRole("button", { name, exact: true }).click();

describe("sheets to hand out", () => {
  test("are made of the plan, and made anew in their own place", async () => {
    await press("Ports by switch");
    await workbook.said("switch by switch");
    expect((await workbook.sheet("Ports by switch")).values[5]!.slice(0, 4)).toEqual(["1", "111", 9000, "rr-array-1 port A/0, rr-data-1, 25 Gbit/s SFP28"]);
    await press("Cable labels");
    await workbook.said("two labels a cable");
    await press("Cable labels");
    await workbook.said("two labels a cable");
    expect((await workbook.sheet("Cable labels")).values[0]!.slice(0, 2)).toEqual(["Cable labels", "rr-array-1 port A/0\nto rr-sw1 port 1"]);
    expect((await workbook.sheetNames()).filter((name) => name.startsWith("Cable labels"))).toEqual(["Cable labels"]);
  });

  test("have the ids of the cables on the labels, once they are written into a table of their own with a preview", async () => {
    await press("Write cables …");
    await workbook.page.getByRole("button", { name: /^Write \d+ cells$/ }).click();
    await workbook.said("Write cables:");
    const cables = (await workbook.sheet("Cables")).values.slice(4).filter((line) => typeof line[0] === "string");
    // 36 cables of ports, 9 links, and two cords for each of six arrays and six switches.
    expect(cables).toHaveLength(69);
    expect(cables[0]!.slice(0, 3)).toEqual(["C0001", "rr-array-1 port A/0", "rr-sw1 port 1"]);
    await press("Cable labels");
    await workbook.said("two labels a cable");
    expect((await workbook.sheet("Cable labels")).values[0]![1]).toBe("C0001\nrr-array-1 port A/0\nto rr-sw1 port 1");
  });

  test("say what to write where the domain of the names is missing, and write nothing", async () => {
    await press("Names");
    await workbook.page.getByText("is no domain name. Write the one of these names, such as example.com.").first().waitFor();
    expect(await workbook.sheetNames()).not.toContain("Names and addresses");
    await workbook.page.getByLabel("Domain of the names").fill("thornmere.example");
    await press("Names");
    await workbook.said("the lines for zone and hosts files");
    const lines = (await workbook.sheet("Names and addresses")).values.flat();
    expect(lines).toContain("rr-array-1-a0 IN A 10.64.11.1");
    expect(lines).toContain("1 IN PTR rr-array-1-a0.thornmere.example.");
  });
});

test("the drawings of a site are shown page by page with what each says in words, and all of them are saved as SVG and as PNG of 300 dots an inch", async () => {
  await workbook.page.getByLabel("Site drawn").selectOption("Cold Store");
  await workbook.page.getByLabel("Page drawn").selectOption("Cabling of Cold Store");
  const sheet = workbook.page.getByRole("region", { name: "The page, to be scrolled" }).getByRole("img");
  expect(await sheet.getAttribute("alt")).toContain("cs-sw1: port 1 cs-array-1 port A/0");
  const saved = async (name: string): Promise<Record<string, Uint8Array>> => {
    const [download] = await Promise.all([workbook.page.waitForEvent("download", { timeout: 60_000 }), press(name)]);
    await workbook.said("is given to the browser to save");
    return unzipSync(readFileSync(await download.path()));
  };
  const drawings = await saved("Save SVG of every page");
  expect(Object.keys(drawings)).toEqual(["01 Capacity to hosts, and what it is made of.svg", "02 Rack CS-R1, front and rear.svg", "03 Feed loads.svg", "04 Cabling of Cold Store.svg"]);
  expect(strFromU8(drawings["04 Cabling of Cold Store.svg"]!)).toMatch(/^<svg [^>]*width="420mm" height="297mm"/);
  const pictures = Object.values(await saved("Save PNG of every page"));
  expect(pictures).toHaveLength(4);
  for (const png of pictures) {
    const { width, height, perMetre } = readPng(Buffer.from(png));
    expect([width, height]).toEqual([Math.round((420 / 25.4) * 300), Math.round((297 / 25.4) * 300)]);
    expect(Math.round(perMetre * 0.0254)).toBe(300);
  }
});
