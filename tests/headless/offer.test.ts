import { readdir, readFile } from "node:fs/promises";
import { strFromU8, unzipSync } from "fflate";
import { planSetUp } from "../../src/planning/plan/set-up";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { sample } from "../support/plan-rows";
import { readPdf, textOf } from "../support/read-pdf";
import { runCommand as run } from "../support/run-command";
import { workbookFolder } from "../support/workbook-folder";

const { at, change } = workbookFolder();
const number = "TML-26-014";

/** What no customer may read: what the firm pays, and what it makes of it. */
const secrets = /cost|margin|21400|21,400|15900|15,900|22150|22,150|1850|4200|0\.22\b/i;

test("an offer is issued revision by revision, and the customer's file holds that sheet alone", async () => {
  await change(null, "plan.xlsx", ({ port }) => port.apply(planSetUp({ sheets: [] }, sample()).map((plan) => ({ kind: "add-sheet", plan }))));
  expect(await run("offer", at("plan.xlsx"), "--offer", "tml-26-014", "-o", at("one.xlsx"))).toMatchObject({ code: 0, lines: [{ offer: number, revision: 1, sheet: `Offer ${number} r1` }] });
  expect(await run("offer", at("one.xlsx"), "--offer", number, "-o", at("two.xlsx"))).toMatchObject({ code: 0, lines: [{ revision: 2, sheet: `Offer ${number} r2` }] });
  const { sheets } = readSnapshot(new Uint8Array(await readFile(at("two.xlsx"))));
  expect(sheets.map(({ name }) => name).slice(-2)).toEqual([`Offer ${number} r1`, `Offer ${number} r2`]);
  const quote = sheets.find(({ name }) => name === "Quote")!.values;
  expect(quote.slice(4, 11).map((line) => line[quote[3]!.indexOf("Revision")] ?? null)).toEqual([2, 2, 2, 2, 2, 2, null]);

  const given = await run("offer", at("two.xlsx"), "--offer", number, "--for-customer", "-o", at("customer.xlsx"));
  expect(given).toMatchObject({ code: 0, lines: [{ offer: `Offer ${number}, revision 2`, sheets: [`Offer ${number} r2`] }] });
  const parts = unzipSync(new Uint8Array(await readFile(at("customer.xlsx"))));
  // No further sheet, name, comment, shared text, property or kept calculation: each would be a part or an element of its own.
  expect(Object.keys(parts).sort()).toEqual(
    ["[Content_Types].xml", "_rels/.rels", "xl/_rels/workbook.xml.rels", "xl/styles.xml", "xl/theme/theme1.xml", "xl/workbook.xml", "xl/worksheets/sheet1.xml"],
  );
  for (const [name, bytes] of Object.entries(parts)) {
    expect([name, secrets.exec(strFromU8(bytes))]).toEqual([name, null]);
    expect([name, /<(?:\w+:)?(?:f|definedName|externalReference)\b/.exec(strFromU8(bytes))]).toEqual([name, null]);
  }
  await run("offer", at("two.xlsx"), "--offer", number, "--for-customer", "-o", at("customer.pdf"));
  const { title, pages } = await readPdf(await readFile(at("customer.pdf")));
  const text = pages.map(textOf).join("");
  expect(title).toBe(`Offer ${number}, revision 2`);
  expect(text).toContain("190,069.04");
  expect(text).not.toMatch(secrets);
  // The words that are looked for do stand in the plan: were they let through they would be found.
  expect(JSON.stringify(sheets)).toMatch(secrets);
});

test("an offer that is not there, or was not issued, ends with 2 and a sentence, and no file", async () => {
  await change(null, "plan.xlsx", ({ port }) => port.apply(planSetUp({ sheets: [] }, sample()).map((plan) => ({ kind: "add-sheet", plan }))));
  expect(await run("offer", at("plan.xlsx"), "--offer", "X-1", "-o", at("none.xlsx"))).toMatchObject({ code: 2, lines: [], complaint: expect.stringContaining("The quote has TML-26-014") as string });
  expect(await run("offer", at("plan.xlsx"), "--offer", number, "--for-customer", "-o", at("none.pdf"))).toMatchObject({ code: 2, complaint: expect.stringContaining("Issue it first") as string });
  expect(await run("offer", at("plan.xlsx"), "--offer", number, "--for-customer", "-o", at("none.docx"))).toMatchObject({ code: 2, complaint: expect.stringContaining(".xlsx or .pdf") as string });
  expect((await readdir(at(""))).filter((file) => file.includes("none"))).toEqual([]);
});
