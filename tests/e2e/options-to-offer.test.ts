import { readFileSync, writeFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { readPdf, textOf } from "../support/read-pdf";
import { Hands } from "./support/hands";
import { beginStory, closeWhole } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

jest.setTimeout(400_000);
// One story in the order in which it happens: every test goes on where the one before it left off.
const { at, open } = beginStory("baywright-options-to-offer");

/** What is typed, line by line of the sheet: the needs, and then the designs in three columns. */
const needs = ["60", "20%", "5", "2026-06-01", "", "2000", "70%", "0.1%", "1.5%", "1E-15", "3%", "0.25", "1%", "0.5", "EUR", "23%"];
const designs = [
  ["One large array", "Elm 24", "24", "12", "RAID 60 8+2", "2", "", "", "24", "150", "450", "4", "42000", "3000"],
  ["Mirrored pair", "Elm 24", "24", "12", "RAID 60 8+2", "2", "2 copies", "", "24", "150", "450", "4", "39000", "2800"],
  ["Single parity", "Oak 12", "12", "16", "RAID 5", "", "", "1", "36", "150", "300", "2", "18000", "900"],
];

/** What no customer may read: what the firm pays, and what it makes of it. */
const secrets = /cost|margin|39000|39,000|40100|40,100|14000|14,000|14500|14,500|0\.23\b/i;

/** A day that is not past, a month from now. */
const untilDay = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);

let workbook: WorkbookPage;
let page: Page;
let hands: Hands;

beforeAll(async () => {
  workbook = await open();
  ({ page } = workbook);
  hands = new Hands(workbook);
});
afterAll(() => closeWhole(workbook));

/** Where a line of the sheet of options stands, by its text. */
const rowOf = async (label: string): Promise<number> => (await workbook.sheet("Options")).values.findIndex((line) => line[0] === label);
const line = async (label: string) => (await workbook.sheet("Options")).values[await rowOf(label)]!.slice(1, 4);

/** The cells of a table by their headers, row by row. */
async function rowsOf(table: string): Promise<Readonly<Record<string, unknown>>[]> {
  const { values } = await workbook.sheet(table);
  return values.slice(4).map((cells) => Object.fromEntries(values[3]!.map((header, column) => [typeof header === "string" ? header : "", cells[column] ?? null])));
}

async function columnOf(table: string, header: string): Promise<number> {
  return (await workbook.sheet(table)).values[3]!.indexOf(header);
}

async function download(button: string, file: string): Promise<Uint8Array> {
  const saved = page.waitForEvent("download");
  await hands.press(button);
  await (await saved).saveAs(at(file));
  return new Uint8Array(readFileSync(at(file)));
}

test("sales compares three designs from one set of needs, and types no formula", async () => {
  await hands.press("New");
  await hands.press("Set up tables");
  await workbook.said("Begin with Sites");
  await hands.press("Options sheet");
  await workbook.said("No formula is to be typed");
  await hands.typeFrom("Options", await rowOf("Data now"), 1, needs, "Enter");
  for (const [index, design] of designs.entries()) await hands.typeFrom("Options", await rowOf("Design"), 1 + index, design, "Enter");
  expect(hands.typed.filter((text) => text.startsWith("="))).toEqual([]);
  expect(hands.seconds).toBeLessThan(200);
  await workbook.until(async () => {
    const { sheets } = await globalThis.baywright.port.read(["Options"]);
    return sheets.find(({ name }) => name === "Options")!.values.some((cells) => cells[0] === "Cost a TB to hosts" && typeof cells[3] === "number");
  }, null);
  expect(await line("Usable to hosts")).toEqual([192, 192, 176]);
  expect(await line("Against that accepted")).toEqual(["within", "within", "above"]);
  // 42,000, 39,000 and 18,000 over 0.77, in cents; two arrays of the second.
  expect((await line("Price")).map(Number)).toEqual([54_545.45, 101_298.7, 23_376.62]);

  await hands.press("Picture of the options");
  const picture = page.getByRole("region", { name: "The picture of the options" }).getByRole("img");
  expect(await picture.getAttribute("alt")).toContain("Mirrored pair: 2 arrays, 192 TB to hosts, full after 5.2 years, in 2031.");
});

test("one of them becomes rows of the plan by a button, shown before they are written", async () => {
  await hands.press("Make plan rows …");
  await hands.choose("Design", "Mirrored pair");
  await hands.press("Show what would be written");
  await page.getByText("Site is empty. Write the site to which the arrays go: one of the plan, or a new one.").first().waitFor();
  await hands.fill(page.getByRole("textbox", { name: "Site", exact: true }), "Bindery");
  await hands.press("Show what would be written");
  await page.getByRole("heading", { name: /^Make plan rows: \d+ cells would change$/ }).waitFor();
  await hands.press(/^Write \d+ cells$/);
  await workbook.said("Make plan rows:");
  const arrays = await rowsOf("Arrays");
  expect(arrays.slice(0, 3).map(({ Array: name }) => name)).toEqual(["Bindery Mirrored pair 1", "Bindery Mirrored pair 2", null]);
  expect(arrays[0]!["To hosts"]).toBe(96);
});

test("and rows of the quote, with nothing typed again that the sheet of options knows", async () => {
  await hands.press("Make quote rows …");
  await hands.fill(page.getByRole("textbox", { name: "Offer", exact: true }), "BI-26-031");
  await hands.fill(page.getByRole("textbox", { name: "Tax rate", exact: true }), "20%");
  await hands.fill(page.getByLabel("Valid until", { exact: true }), untilDay);
  await hands.press("Show what would be written");
  await page.getByRole("heading", { name: /^Make quote rows: \d+ cells would change$/ }).waitFor();
  await hands.press(/^Write \d+ cells$/);
  await workbook.said("Make quote rows:");
  await workbook.settle();
  const [arrays, support] = await rowsOf("Quote");
  expect(arrays).toMatchObject({ Item: "Elm 24 with 24 drives of 12 TB", Kind: "array", For: "Bindery", Quantity: 2, Cost: 39_000, Margin: 0.23, Currency: "EUR", "Unit price": 50_649.35 });
  expect(support).toMatchObject({ Item: "Support for Elm 24", Kind: "support", Quantity: 2, Cost: 14_000, Years: 5 });
});

test("the offer goes out as a sheet, a workbook and a PDF, in which nobody reads what it costs", async () => {
  await hands.typeFrom("Settings", (await workbook.sheet("Settings")).values.findIndex((cells) => cells[0] === "Firm"), await columnOf("Settings", "Value"), ["Larkfield Storage"]);
  await hands.typeFrom("Sites", 4, await columnOf("Sites", "Customer"), ["Thornmere Map Library"]);
  await hands.press("Issue … BI-26-031");
  await page.getByRole("heading", { name: "Offer BI-26-031, revision 1, as it would be sent out" }).waitFor();
  // 137,662.34 and a fifth of it, which is 27,532.468.
  await page.getByText("165,194.81").first().waitFor();
  expect(await workbook.sheetNames()).not.toContain("Offer BI-26-031 r1");
  await hands.press("Issue revision 1");
  await workbook.said("stands on the sheet Offer BI-26-031 r1");

  const file = unzipSync(await download("Customer's workbook BI-26-031", "offer.xlsx"));
  expect(Object.keys(file).filter((name) => name.includes("worksheets/"))).toEqual(["xl/worksheets/sheet1.xml"]);
  for (const [name, bytes] of Object.entries(file)) expect([name, secrets.exec(strFromU8(bytes))]).toEqual([name, null]);
  const { title, pages } = await readPdf(await download("Customer's PDF BI-26-031", "offer.pdf"));
  expect(title).toBe("Offer BI-26-031, revision 1");
  const text = pages.map(textOf).join("");
  expect(text).toContain("137,662.34");
  expect(text).toContain("FromLarkfieldStorage,forThornmereMapLibrary");
  expect(text).not.toMatch(secrets);
});

test("the firm's price list is brought in, what changes of it is shown, and Quote takes its costs", async () => {
  await hands.press("Add the table Price list");
  await hands.choose("Table into which the list goes", "prices");
  writeFileSync(at("Spring 2026.csv"), "Article;Text;Net price;Currency\r\nSupport for Elm 24;Five years;14.500,00;EUR\r\nElm 24;With 24 drives of 12 TB;40.100,50;EUR\r\n");
  hands.clicks += 3;
  await workbook.chooseFile(page.getByRole("button", { name: "Choose a file …" }), at("Spring 2026.csv"));
  await page.getByRole("heading", { name: "2 rows of Spring 2026.csv" }).waitFor();
  await hands.fill(page.getByLabel("Day of the price list", { exact: true }), "2026-03-01");
  await hands.press("Show what would be written");
  await page.getByText("2 rows new, 0 rows changed.").waitFor();
  await hands.press(/^Write \d+ cells$/);
  await workbook.said("Bring the list into Price list:");

  await hands.press("Take costs from the price list …");
  await page.getByRole("heading", { name: "Take costs from the price list: 6 cells would change" }).waitFor();
  await hands.press("Write 6 cells");
  await workbook.said("Take costs from the price list: 6 cells written.");
  await workbook.settle();
  // 40,100.50 / 0.77, and two of them.
  expect((await rowsOf("Quote"))[0]).toMatchObject({ Cost: 40_100.5, "Price list": "Spring 2026.csv", "Price day": 46_082, Revision: 1, "Unit price": 52_078.57, Net: 104_157.14 });
});

test("it is issued again as revision 2, and what was sent out stays", async () => {
  // The customer's file is not made of a quote that says something else.
  await hands.press("Customer's PDF BI-26-031");
  await workbook.said("Issue it again");
  await hands.press("Issue … BI-26-031");
  await hands.press("Issue revision 2");
  await workbook.said("stands on the sheet Offer BI-26-031 r2");
  expect((await workbook.sheet("Offer BI-26-031 r1")).values.flat()).toContain(101_298.7);
  expect((await workbook.sheet("Offer BI-26-031 r2")).values.flat()).toContain(104_157.14);
});

test("parts come, and their serials are what the tab expects", async () => {
  await hands.press("List parts …");
  await hands.press(/^Write \d+ cells$/);
  await workbook.said("List parts:");
  expect((await rowsOf("Parts")).filter(({ Part: part }) => typeof part === "string" && part !== "")).toHaveLength(2 + 48);
  const [came, arrays] = [await columnOf("Parts", "Came"), (await rowsOf("Parts")).flatMap(({ Kind: kind }, index) => (kind === "array" ? [4 + index] : []))];
  for (const [index, row] of arrays.entries()) await hands.typeFrom("Parts", row, came, ["2026-07-01", `EL-471${index + 1}`, String(index + 1)]);
  await workbook.turnTo("Plan");
  await hands.press("Take serials …");
  await hands.press("Write 2 cells");
  await workbook.said("Take serials: 2 cells written.");
  expect((await rowsOf("Arrays")).slice(0, 2).map(({ Serial: serial }) => serial)).toEqual(["EL-4711", "EL-4712"]);
  await hands.press("Parts sheet");
  await workbook.said("each box on a page of its own");
  expect((await workbook.sheet("Parts list")).values.flat()).toContain("Missing: 48 pieces in 48 rows");
});

test("hands alone take six to seven minutes over all of it, and three of those over the designs", () => {
  // By the Keystroke-Level Model; nobody reads, looks up or waits.
  expect(hands).toMatchObject({ clicks: 56, cells: 65 });
  expect(hands.seconds).toBeLessThan(400);
});
