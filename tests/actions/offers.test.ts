import { issueOffer, readCustomersFile, readOffer } from "../../src/actions/offers";
import { sample, workbookWith } from "../support/plan-rows";
import { PlainPort, withCell } from "../support/plain-workbook";

const [number, madeAt] = ["TML-26-014", "2026-06-01 10:00"];
const portOf = (rows = sample()) => new PlainPort(workbookWith(rows));

test("what is shown is what is issued: its sheet is added first, then Quote says its revision", async () => {
  const port = portOf();
  const shown = await readOffer(port, number, madeAt);
  expect(port.applied).toEqual([]);
  expect(await issueOffer(port, shown)).toBe("Offer TML-26-014 r1");
  expect(port.applied[0]!.map(({ kind }) => kind)).toEqual(["add-sheet", "write"]);
  expect((await readCustomersFile(port, number)).printout).toEqual(shown.printout);
});

test("an edit after it was shown stops it, and nothing is written", async () => {
  const port = portOf();
  const shown = await readOffer(port, number, madeAt);
  port.workbook = withCell(port.workbook, "Quote", 4, 3, 21_500);
  await expect(issueOffer(port, shown)).rejects.toThrow("The plan was edited after this was shown, so nothing was issued. Look at the offer again.");
  expect(port.applied).toEqual([]);
});

test("somebody else who issues it in between is not written over: the next revision is asked for anew", async () => {
  const port = portOf();
  const [mine, theirs] = [await readOffer(port, number, madeAt), await readOffer(port, number, madeAt)];
  await issueOffer(port, theirs);
  await expect(issueOffer(port, mine)).rejects.toThrow("nothing was issued");
  const again = await readOffer(port, number, madeAt);
  expect(await issueOffer(port, again)).toBe("Offer TML-26-014 r2");
  expect(port.workbook.sheets.map(({ name }) => name).slice(-2)).toEqual(["Offer TML-26-014 r1", "Offer TML-26-014 r2"]);
});

test("a quote of an earlier layout, which has no revision, is told what to do before anything is shown", async () => {
  const port = portOf();
  port.workbook = withCell(port.workbook, "Quote", 3, 13, "Version");
  await expect(readOffer(port, number, madeAt)).rejects.toThrow("Quote has no column Revision, which numbers what was sent out. Add today's columns to the tables first.");
});
