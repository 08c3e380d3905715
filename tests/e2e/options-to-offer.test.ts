import { readFileSync, writeFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { readPdf, textOf } from "../support/read-pdf";
import { beginStory, closeWhole } from "./support/story";

jest.setTimeout(240_000);
const story = beginStory("baywright-offers");

/** What no customer may read: what the firm pays, and what it makes of it. */
const secrets = /cost|margin|21400|21,400|15900|15,900|22150|22,150|1850|4200|0\.22\b/i;

test("sales issues an offer, gives it to the customer, brings a price list in, and issues it again", async () => {
  const workbook = await story.open();
  await workbook.turnTo("Plan");
  const { page } = workbook;
  const press = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" }).click();
  const download = async (button: string, file: string) => {
    const saved = page.waitForEvent("download");
    await press(button);
    await (await saved).saveAs(story.at(file));
    return new Uint8Array(readFileSync(story.at(file)));
  };

  await press("Issue … TML-26-014");
  await page.getByRole("heading", { name: "Offer TML-26-014, revision 1, as it would be sent out" }).waitFor();
  await page.getByText("190,069.04").first().waitFor();
  expect(await workbook.sheetNames()).not.toContain("Offer TML-26-014 r1");
  await press("Issue revision 1");
  await workbook.said("stands on the sheet Offer TML-26-014 r1");

  const file = unzipSync(await download("Customer's workbook TML-26-014", "offer.xlsx"));
  expect(Object.keys(file).filter((name) => name.includes("worksheets/"))).toEqual(["xl/worksheets/sheet1.xml"]);
  for (const [name, bytes] of Object.entries(file)) expect([name, secrets.exec(strFromU8(bytes))]).toEqual([name, null]);
  const { title, pages } = await readPdf(await download("Customer's PDF TML-26-014", "offer.pdf"));
  expect(title).toBe("Offer TML-26-014, revision 1");
  const text = pages.map(textOf).join("");
  expect(text).toContain("158,390.87");
  expect(text).not.toMatch(secrets);

  await press("Add the table Price list");
  await page.getByLabel("Table into which the list goes").selectOption("prices");
  writeFileSync(story.at("Spring 2026.csv"), "Article;Text;Net price;Currency\r\nInstallation and handover;Work;1.900,00;EUR\r\nAL-24;Alder 24;21.400,50;EUR\r\n");
  const chosen = page.waitForEvent("filechooser");
  await press("Choose a file …");
  await (await chosen).setFiles(story.at("Spring 2026.csv"));
  await page.getByRole("heading", { name: "2 rows of Spring 2026.csv" }).waitFor();
  await page.getByLabel("Day of the price list").fill("2026-03-01");
  await press("Show what would be written");
  await page.getByText("2 rows new, 0 rows changed.").waitFor();
  await press(/^Write \d+ cells$/);
  await workbook.said("Bring the list into Price list:");

  await press("Take costs from the price list …");
  await page.getByRole("heading", { name: "Take costs from the price list: 3 cells would change" }).waitFor();
  await press("Write 3 cells");
  await workbook.said("Take costs from the price list: 3 cells written.");
  const quote = (await workbook.sheet("Quote")).values;
  const at = (header: string) => quote[3]!.indexOf(header);
  expect(["Cost", "Price list", "Price day", "Revision"].map((header) => quote[8]![at(header)])).toEqual([1900, "Spring 2026.csv", 46_082, 1]);
  // What the sheet computes of it: 1,900 / 0.7, three times that, and what is left of it.
  expect(["Unit price", "Net"].map((header) => quote[8]![at(header)])).toEqual([2714.29, 8142.87]);

  // What was sent out stays; the customer's file is not made of a quote that says something else.
  await press("Customer's PDF TML-26-014");
  await workbook.said("Issue it again");
  await press("Issue … TML-26-014");
  await press("Issue revision 2");
  await workbook.said("stands on the sheet Offer TML-26-014 r2");
  expect(await workbook.sheetNames()).toEqual(expect.arrayContaining(["Offer TML-26-014 r1", "Offer TML-26-014 r2"]));
  expect((await workbook.sheet("Offer TML-26-014 r1")).values.flat()).toContain(7928.58);
  expect((await workbook.sheet("Offer TML-26-014 r2")).values.flat()).toContain(8142.87);
  await closeWhole(workbook);
});
