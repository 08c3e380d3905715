import { sheetNameWith } from "../commissioning/tab";
import { writeCell, type CellWrite } from "../plan/changes";
import type { Offer, PlanModel } from "../plan/model";
import { planPrintout, type Printout } from "../printouts";
import { cellAddress, isBlank, showCell, type SheetPlan, type SheetSnapshot, type WorkbookSnapshot } from "../../sheet";
import { foldName, invalid } from "../text";
import { findOffer, offerMark, offerPrintout, offerTitle } from "./offer-printout";

/** A sheet on which an offer was sent out. */
export interface IssuedOffer {
  readonly name: string;
  readonly revision: number;
  readonly sheet: SheetSnapshot;
}

/** Widths of the columns of an offer sheet, in characters. */
const columnWidths = [38, 18, 16, 16, 16, 12, 12, 16, 16, 16];

/** Tells by its first rows whether a sheet is one on which an offer was sent out. */
export function isOfferSheet({ values }: SheetSnapshot): boolean {
  return titlePattern.test(showCell(values[0]?.[0]));
}

/** A number that was typed on two lines is one too. */
const titlePattern = new RegExp(`^${offerMark} (.+), revision (\\d+)$`, "s");

/** Lists the sheets of a workbook on which offers were sent out. */
export function issuedOffers({ sheets }: WorkbookSnapshot): IssuedOffer[] {
  return sheets.flatMap((sheet): IssuedOffer[] => {
    const [, name, revision] = titlePattern.exec(showCell(sheet.values[0]?.[0])) ?? [];
    return name === undefined ? [] : [{ name, revision: Number(revision), sheet }];
  });
}

/** Tells the next revision of an offer: one more than the last of which Quote or a sheet knows. */
export function nextRevision(workbook: WorkbookSnapshot, { name, revision }: Offer): number {
  return Math.max(revision, lastIssued(issuedOffers(workbook), name)?.revision ?? 0) + 1;
}

/** Finds the last revision of an offer among those that were sent out, by its number without case; null where there is none. */
export function lastIssued(issued: readonly IssuedOffer[], name: string): IssuedOffer | null {
  return issued.filter((one) => foldName(one.name) === foldName(name)).reduce<IssuedOffer | null>((last, one) => (last === null || one.revision > last.revision ? one : last), null);
}

/** Plans the sheet of an offer: values alone, under a name that no sheet has yet. */
export function planOfferSheet(model: PlanModel, printout: Printout): SheetPlan {
  const [, offer = "", revision = ""] = titlePattern.exec(printout.title) ?? [];
  // A number may hold what no name of a sheet may.
  const name = sheetNameWith(`${offerMark} ${offer.replace(/\s+/g, " ").replace(/[\\/?*[\]:'\p{Cc}]/gu, "-")}`, `r${revision}`, model.workbook.sheets.map((sheet) => sheet.name));
  return planPrintout(name, printout, columnWidths);
}

/** Plans to write a revision into every row of an offer. */
export function planRevision(model: PlanModel, { rows }: Offer, revision: number): CellWrite[] {
  const table = model.table("quote");
  if (table?.columns["revision"] === undefined) {
    throw invalid("Revision", null, "Quote has no column Revision, which numbers what was sent out. Add today's columns to the tables first.");
  }
  return rows.flatMap(({ row }) => writeCell(model.workbook, table, row, "revision", revision) ?? []);
}

/**
 * Gives the printout of the last revision of an offer as its sheet holds it.
 *
 * Refuses an offer that was never sent out, and one whose sheet is not what the quote gives now: a file for the customer is made of the quote by us, and
 * never of what somebody may have typed into a sheet.
 */
export function issuedPrintout(model: PlanModel, name: string): Printout {
  const offer = findOffer(model, name);
  const issued = lastIssued(issuedOffers(model.workbook), name);
  if (issued === null) throw invalid("offer", name, `Offer ${offer.name} has no sheet yet. Issue it first.`);
  const madeAt = /\bmade (\d{4}-\d\d-\d\d \d\d:\d\d)$/i.exec(showCell(issued.sheet.values[1]?.[0]))?.[1] ?? "";
  const printout = offerPrintout(model, offer.name, issued.revision, madeAt, madeAt.slice(0, 10));
  const differs = firstDifference(planPrintout("", printout, columnWidths), issued.sheet);
  if (differs === null) return printout;
  throw invalid("offer", name, `${offerTitle(offer.name, issued.revision)} differs in ${differs} from what the quote gives now. Issue it again, or undo what was changed.`);
}

/** Names the first cell of a sheet that does not show what is planned; null where all do. */
function firstDifference({ rows }: SheetPlan, { values }: SheetSnapshot): string | null {
  for (let row = 0; row < Math.max(rows.length, values.length); row += 1) {
    for (let column = 0; column < Math.max(rows[row]?.length ?? 0, values[row]?.length ?? 0); column += 1) {
      const planned = rows[row]?.[column]?.value ?? null;
      const shown = values[row]?.[column] ?? null;
      if (planned === shown || (isBlank(planned) && isBlank(shown))) continue;
      if (typeof planned === "number" && typeof shown === "number" && planned.toPrecision(15) === shown.toPrecision(15)) continue;
      return cellAddress({ row, column });
    }
  }
  return null;
}
