import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { version } from "../../package.json";
import { tables, type TableKey } from "../../src/planning/plan/schema";
import type { WorkbookSnapshot } from "../../src/sheet";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { beginStory, closeWhole } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

// One story in the order in which it happens: each person works from the file that the one before handed on.
const { at, open } = beginStory("people");

let workbook: WorkbookPage;
let page: Page;

beforeEach(async () => {
  workbook = await open();
  ({ page } = workbook);
});

afterEach(() => closeWhole(workbook));

async function startNew(): Promise<void> {
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
}

/** Brings rows into a planning table out of a list of the firm's, by the clipboard, from its first row on. */
async function fillTable(key: TableKey, rows: readonly Readonly<Record<string, string>>[]): Promise<void> {
  const columns = Object.keys(tables[key].columns);
  const last = Math.max(...rows.flatMap((row) => Object.keys(row).map((name) => columns.indexOf(name))));
  await workbook.paste(tables[key].name, 4, 0, rows.map((row) => columns.slice(0, last + 1).map((name) => row[name] ?? "")));
}

function readFileSnapshot(name: string): WorkbookSnapshot {
  return readSnapshot(new Uint8Array(readFileSync(at(name))));
}

const quoteSheet: readonly (readonly string[])[] = [
  ["Alternative", "Usable TB", "Cost", "Price", "Price per TB"],
  ["Twelve large", '=BAY.USABLE("RAID 6",12,16,1)', "9000", '=BAY.SELLPRICE(C2,"25%")', "=BAY.UNITPRICE(D2,B2)"],
  ["Two groups", '=BAY.USABLE("RAID 60 9+2",24,8,2)', "10800", '=BAY.SELLPRICE(C3,"25%")', "=BAY.UNITPRICE(D3,B3)"],
  ["Spread", '=BAY.USABLE("8+3",24,8,1)', "10800", '=BAY.SELLPRICE(C4,"25%")', "=BAY.UNITPRICE(D4,B4)"],
  ["Release", "=BAY.VERSION()"],
];

/** By hand: 9 of 11 drives of 16 TB; 18 of 22 of 8 TB; 8/11 of 23 of 8 TB. A margin of a quarter divides the cost by 0.75. */
const quoteFigures = [
  [(12 - 1 - 2) * 16, 12_000, 12_000 / 144],
  [2 * 9 * 8, 14_400, 14_400 / 144],
  [(23 * 8 * 8) / 11, 14_400, 14_400 / ((23 * 8 * 8) / 11)],
];

function expectQuote(values: readonly (readonly unknown[])[]): void {
  quoteFigures.forEach((figures, index) => {
    figures.forEach((figure, column) => expect(values[1 + index]![[1, 3, 4][column]!]).toBeCloseTo(figure, 6));
  });
  expect(values[4]![1]).toContain(version);
}

test("an engineer quotes three alternatives, and the file has the figures where it is opened without the add-in", async () => {
  await startNew();
  for (const [row, texts] of quoteSheet.entries()) await workbook.typeFrom("Sheet1", row, 0, texts);
  await workbook.save(at("quote.xlsx"));
  const { sheets } = readFileSnapshot("quote.xlsx");
  expectQuote(sheets[0]!.values);
  expect(sheets[0]!.formulas[1]![1]).toBe(quoteSheet[1]![1]);
});

test("finance opens the quote a year later: the figures stand, and the release is told", async () => {
  await page.addInitScript(() => {
    const year = 365 * 86_400_000;
    const { now } = Date;
    globalThis.Date = class extends Date {
      constructor(...parts: readonly unknown[]) {
        super(...((parts.length === 0 ? [now() + year] : parts) as [number]));
      }
      static override now = () => now() + year;
    } as DateConstructor;
  });
  await page.reload();
  await workbook.ready();
  await workbook.openFile(at("quote.xlsx"));
  expectQuote((await workbook.sheet("Sheet1")).values);
  await workbook.typeFrom("Sheet1", 6, 0, ["=E2*2"]);
  expect((await workbook.sheet("Sheet1")).values[6]![0]).toBeCloseTo(12_000 / 72, 6);
});

const job = "Mill survey";

test("a manager fills a site from nothing, mends what the checks find, assigns addresses, sees pictures and builds the tab", async () => {
  await startNew();
  await workbook.button("Set up tables").click();
  await workbook.said("Begin with Sites.");
  await fillTable("sites", [{ site: "Mill", room: "0.1", contact: "Desk", timeServers: "10.1.0.5", access: "Ramp" }]);
  await fillTable("racks", [{ rack: "M-R1", site: "Nowhere", units: "42", numberedFrom: "bottom", depthMm: "1000", limitKg: "800", coolingW: "4000", outlets: "12 x C13" }]);
  await workbook.turnTo("Check");
  const counts = page.locator(".bay-weights");
  await page.getByRole("button", { name: /"Nowhere"/ }).first().waitFor();
  await workbook.typeFrom("Racks", 4, 1, ["Mill"]);
  await page.getByRole("button", { name: /"Nowhere"/ }).first().waitFor({ state: "detached" });

  await fillTable("feeds", ["A", "B"].map((feed) => ({ feed: `M-${feed}`, site: "Mill", source: `Board ${feed}`, volts: "230", phases: "1", breakerA: "16" })));
  await fillTable("networks", ["1", "2"].map((no) => ({ network: `data-${no}`, site: "Mill", prefix: `10.1.${no}.0/24`, gateway: "none", mtu: "9000" })));
  const fed = { site: "Mill", rack: "M-R1", feedA: "M-A", feedB: "M-B" };
  await fillTable("switches", ["1", "2"].map((no) => ({ ...fed, switch: `sw${no}`, bottomUnit: `${38 + Number(no)}`, units: "1", watts: "100", networks: "data-1, data-2" })));
  await fillTable("clusters", [{ cluster: "Mill", network: "data-1", state: "new" }]);
  await fillTable("pools", [{ pool: "Mill", cluster: "Mill", fillLimit: "80%", acrossArrays: "none" }]);
  await fillTable("arrays", [
    {
      ...fed, array: "mill-1", model: "Elm 6", serial: "M-0001", bottomUnit: "4", units: "2", depthMm: "700", weightKg: "25", liftKg: "12", liftBy: "two", watts: "300", plug: "C14",
      controllers: "A,B", ports: "0,1", portSharing: "controller", drives: "12", driveSize: "4 TB", scheme: "RAID 6", spares: "1", reserve: "10%", cluster: "Mill", clusterOrder: "1", pool: "Mill",
    },
  ]);
  const ports = [["A", "0", "1"], ["A", "1", "2"], ["B", "0", "2"], ["B", "1", "1"]] as const;
  await fillTable(
    "ports",
    ports.map(([controller, port, to], index) => ({ array: "mill-1", controller, port, network: `data-${Number(port) + 1}`, switch: `sw${to}`, switchPort: String(index + 1) })),
  );
  await fillTable("jobs", [{ job, site: "Mill", procedure: "Site survey" }]);

  await workbook.turnTo("Plan");
  await workbook.button(/^Assign addresses/).click();
  await workbook.button("Write 9 cells").click();
  await workbook.said("9 cells written");
  await page.getByLabel("Picture").selectOption("Rack elevation");
  await page.locator("svg.bay-picture text", { hasText: "mill-1" }).first().waitFor();
  await page.getByLabel("Picture").selectOption("Capacity by pool");
  await page.locator("svg.bay-picture > desc").waitFor({ state: "attached" });

  await workbook.turnTo("Check");
  await workbook.button(/Mend all/).click();
  await workbook.button(/^Write/).click();
  await workbook.said("written");
  await counts.getByText("Stop 0").waitFor();
  // 9 of 12 drives of 4 TB, a tenth kept free; the Id was written by the mend.
  const arrays = await workbook.sheet("Arrays");
  expect(arrays.values[4]![0]).toBe("A0001");
  expect(arrays.values[4]![arrays.values[3]!.indexOf("Usable")]).toBeCloseTo(9 * 4 * 0.9, 9);

  await workbook.turnTo("Commission");
  await workbook.button("Build 1 tab").click();
  await workbook.said("1 tab built");
  expect(await workbook.sheetNames()).toContain(job);
});
