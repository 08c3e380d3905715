import type { Changes } from "../plan/changes";
import { addedRows } from "../plan/guided";
import { isOneOffer, PlanModel } from "../plan/model";
import { readCell, type PlanRow } from "../plan/read";
import { tables, type TableRow } from "../plan/schema";
import { exactDecimal, formatSize, terabyte } from "../quantity";
import { foldName, invalid, noAnswer, quote } from "../text";
import type { WorkbookSnapshot } from "../../sheet";
import { designLines } from "./lines";
import { poolOfDesign } from "./design-rows";
import { readOptions, type Design, type Needs } from "./read-options";

/** A design of the sheet of options whose rows stand in the plan. */
export interface DesignInPlan {
  readonly design: Design;
  /** The pool of its own, by which it is found. */
  readonly pool: string;
  readonly arrays: readonly PlanRow<"arrays">[];
}

/** What the rows of a quote say beside what the sheet of options knows, as people write it. */
export interface QuoteDetails {
  readonly offer: string;
  readonly taxRate: string;
  /** May be blank. */
  readonly validUntil: string;
}

/** Lists the designs of the sheet of options that stand in the plan, site by site; no answer where none does. */
export function designsInPlan(workbook: WorkbookSnapshot): DesignInPlan[] {
  return findDesigns(new PlanModel(workbook), readOptions(workbook).designs);
}

function findDesigns(model: PlanModel, designs: readonly Design[]): DesignInPlan[] {
  const found = model.rows("sites").flatMap(({ site }) =>
    designs.flatMap((design): DesignInPlan[] => {
      const pool = model.find("pools", poolOfDesign(site, design))?.pool;
      const arrays = pool === undefined ? [] : model.rowsWith("arrays", "pool", pool);
      return pool === undefined || arrays.length === 0 ? [] : [{ design, pool, arrays }];
    }),
  );
  if (found.length === 0) throw noAnswer("Design", null, "No design of the sheet of options stands in the plan with its pool. Choose Make plan rows first.");
  return found;
}

/** Plans to add the rows of Quote of a design that stands in the plan; refuses what `quoteRows` does, and a workbook without the table. */
export function planQuote(workbook: WorkbookSnapshot, pool: string, details: QuoteDetails, today: string): Changes {
  return addedRows(new PlanModel(workbook), { quote: quoteRows(workbook, pool, details, today) });
}

/**
 * Works out the rows of Quote of the design in a pool: one for its arrays and, where support costs something, one for support over the years of the needs, which
 * Quote prices for all of them.
 *
 * Refuses a design without a cost, a last day before `today`, and arrays that the offer, or a row in none, has already.
 */
export function quoteRows(workbook: WorkbookSnapshot, pool: string, details: QuoteDetails, today: string): TableRow<"quote">[] {
  const model = new PlanModel(workbook);
  const { needs, designs } = readOptions(workbook);
  const inPlan = findDesigns(model, designs);
  const found = inPlan.find((one) => foldName(one.pool) === foldName(pool));
  if (found === undefined) throw invalid("Design", pool, `${quote(pool)} is no pool of a design in the plan. Choose ${inPlan.map((one) => one.pool).join(" or ")}.`);
  const { design, arrays } = found;
  if (design.cost === null) throw invalid("Cost an array", null, `${designLines.cost.header} of ${design.design} is empty. ${designLines.cost.meaning}`);
  const offered = readDetails(details, today);
  refuseOffered(model, arrays, offered.offer);
  const shared = { for: placesOf(model, arrays), quantity: arrays.length, margin: needs.margin ?? 0, currency: needs.currency === "" ? null : needs.currency, ...offered };
  const what = design.model === "" ? design.design : design.model;
  const text = `${what} with ${design.drives} drives of ${formatSize(design.driveSize, terabyte, null)}`;
  return [
    { item: text, kind: "array", cost: design.cost, part: design.model === "" ? null : design.model, ...shared },
    ...(design.support === null || design.support === 0 ? [] : [{ item: `Support for ${what}`, kind: "support", cost: supportCost(design.support, needs), years: needs.years, ...shared } as const]),
  ];
}

/** What support of one array costs over all years, to the last digit. */
function supportCost(yearly: number, { years }: Needs): number {
  return exactDecimal(yearly).times(years).toNumber();
}

function readDetails({ offer, taxRate, validUntil }: QuoteDetails, today: string): { readonly offer: string; readonly taxRate: number; readonly validUntil: string | null } {
  const number = offer.trim();
  if (number === "") throw invalid("Offer", offer, "Offer is empty. Write the number under which the rows are sent out together.");
  const rate = readCell(taxRate.trim(), tables.quote.columns.taxRate);
  if (typeof rate !== "number") throw invalid("Tax rate", taxRate, "Tax rate is empty. Write it, such as 20%, or 0% where there is none.");
  const day = readCell(validUntil.trim(), tables.quote.columns.validUntil);
  const last = typeof day === "string" ? day : null;
  if (last !== null && last < today) throw invalid("Valid until", last, `Valid until ${last} is past. Write a later day, or leave it empty.`);
  return { offer: number, taxRate: rate, validUntil: last };
}

function refuseOffered(model: PlanModel, arrays: readonly PlanRow<"arrays">[], offer: string): void {
  for (const row of model.rows("quote")) {
    if (row.kind !== "array" || row.optional === "yes" || !isOneOffer(row, { offer })) continue;
    const twice = model.quote.arraysOf(row).find((array) => arrays.includes(array));
    if (twice === undefined) continue;
    throw invalid("Quote", twice.array, `${twice.array} is offered in row ${row.row + 1} of Quote already. Change that row, or write another number for the offer.`);
  }
}

/** Names the arrays as For does: the site where they are all that it has, else one by one. */
function placesOf(model: PlanModel, arrays: readonly PlanRow<"arrays">[]): string {
  const [{ site }] = arrays as readonly [PlanRow<"arrays">];
  const isWhole = site !== "" && model.rowsWith("arrays", "site", site).every((one) => arrays.includes(one)) && model.find("arrays", site) === null;
  return isWhole ? site : arrays.map(({ array }) => array).join(", ");
}
