import { findOffer, isOfferSheet, issuedPrintout, nextRevision, offerPrintout, planOfferSheet, planRevision } from "../planning/offer";
import { PlanModel } from "../planning/plan/model";
import type { Printout } from "../planning/printouts";
import { invalid } from "../planning/text";
import type { SheetPlan, WorkbookSnapshot } from "../sheet";
import type { Edit, WorkbookPort } from "../workbook/port";
import { editsOf } from "./write-changes";

/** What issuing an offer would send out; nothing is written. */
export interface OfferToIssue {
  readonly offer: string;
  readonly revision: number;
  readonly printout: Printout;
  /** The sheet that it would be. */
  readonly sheet: SheetPlan;
}

/** Shows what issuing an offer would send out: its next revision. `madeAt` is day and time, such as 2026-05-31 09:30. */
export async function readOffer(port: WorkbookPort, name: string, madeAt: string): Promise<OfferToIssue> {
  return offerIn(await readWithOffers(port), name, madeAt);
}

/**
 * Issues what was shown: adds its sheet, in values alone, and writes its revision into the rows of Quote. An earlier sheet is left as it is.
 *
 * Where the plan was edited in between so that something else would be sent out, nothing is written and the sentence says so. Answers with the
 * name of the sheet.
 */
export async function issueOffer(port: WorkbookPort, shown: OfferToIssue): Promise<string> {
  const workbook = await readWithOffers(port);
  const now = offerIn(workbook, shown.offer, shown.printout.madeAt);
  if (JSON.stringify(now) !== JSON.stringify(shown)) {
    throw invalid("workbook", null, "The plan was edited after this was shown, so nothing was issued. Look at the offer again.");
  }
  const model = new PlanModel(workbook);
  const writes = planRevision(model, findOffer(model, now.offer), now.revision);
  await port.apply([{ kind: "add-sheet", plan: now.sheet } satisfies Edit, ...editsOf({ writes, growths: [] })]);
  return now.sheet.name;
}

/** What is given to the customer of an offer: what its PDF shows, and the one sheet of its workbook. */
export interface CustomersFile {
  readonly printout: Printout;
  readonly sheet: SheetPlan;
}

/** Gathers what the customer gets of the last revision of an offer that was issued. */
export async function readCustomersFile(port: WorkbookPort, name: string): Promise<CustomersFile> {
  const model = new PlanModel(await readWithOffers(port));
  const printout = issuedPrintout(model, name);
  return { printout, sheet: planOfferSheet(new PlanModel({ sheets: [] }), printout) };
}

/** Reads the planning tables and the sheets on which offers were sent out, as values. */
export function readWithOffers(port: WorkbookPort): Promise<WorkbookSnapshot> {
  return port.read(({ hasTables }) => hasTables || { rows: 1, isWanted: isOfferSheet }, "values");
}

function offerIn(workbook: WorkbookSnapshot, name: string, madeAt: string): OfferToIssue {
  const model = new PlanModel(workbook);
  const offer = findOffer(model, name);
  const revision = nextRevision(workbook, offer);
  // Refused before anything is shown, where it could not be written down.
  planRevision(model, offer, revision);
  const printout = offerPrintout(model, offer.name, revision, madeAt, madeAt.slice(0, 10));
  return { offer: offer.name, revision, printout, sheet: planOfferSheet(model, printout) };
}
