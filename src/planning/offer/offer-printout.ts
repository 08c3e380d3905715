import type { CurrencyPart, Offer, PlanModel, QuoteLine } from "../plan/model";
import { block, type Amount, type PackBlock, type PackLine, type Printout } from "../printouts";
import { decimalsOf, isCurrencyCode, roundToStep, smallestAmount, totalsOf } from "../pricing";
import { tables } from "../plan/schema";
import type { Decimal } from "../quantity";
import { andMore, formatRate, invalid, quote, terabytesOf } from "../text";

/** Begins the title of every offer: by it an offer sheet is known for ours. */
export const offerMark = "Offer";

/** Writes the title of a revision of an offer. */
export function offerTitle(name: string, revision: number): string {
  return `${offerMark} ${name}, revision ${revision}`;
}

/**
 * Gathers what is sent out of an offer, with no word of what it costs the firm: its lines and totals currency by currency, what may be left out, the
 * price of a TB, and the capacity to hosts array by array.
 *
 * Refuses an offer of which a cell cannot be read, a row has no item, no price, no currency or, where others have one, no tax rate, or which ended before `today`.
 */
export function offerPrintout(model: PlanModel, name: string, revision: number, madeAt: string, today: string): Printout {
  const offer = findOffer(model, name);
  refuseUnread(model, offer);
  refuseUnready(offer, today);
  const title = offerTitle(offer.name, revision);
  const until = lastDay(offer);
  const { firm, paper } = model.settings;
  const customers = [...new Set(offer.arrays.map(({ site }) => model.find("sites", site)?.customer ?? "").filter((one) => one !== ""))];
  return {
    title,
    mark: `made ${madeAt}`,
    fileTitle: title,
    facts: capitalised([...(firm === "" ? [] : [`from ${firm}`]), ...customers.map((one) => `for ${one}`), `made ${madeAt}`].join(", ")),
    standing: until === null ? "No last day is named." : `It can be accepted until ${until}.`,
    isComplete: true,
    madeAt,
    paper,
    blocks: [...offer.byCurrency.flatMap(linesAndTotals), ...offer.byCurrency.flatMap(optionalBlock), ...pricePerTbBlock(offer), ...capacityBlock(model, offer)],
    pictures: [],
    signatures: [`Accepted for ${customers.length === 1 ? customers[0]! : "the customer"}, name and date`, `For ${firm === "" ? "the supplier" : firm}, name and date`],
  };
}

function capitalised(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** Finds an offer of the quote by its number; refuses one that no row names. */
export function findOffer(model: PlanModel, name: string): Offer {
  const found = model.quote.find(name);
  if (found !== null) return found;
  const known = model.quote.offers().map((offer) => offer.name);
  const [first] = known;
  const instead = first === undefined ? "Write its number into Offer of the rows that belong to it." : `The quote has ${andMore(first, known.length - 1)}.`;
  throw invalid("offer", name, `No row of Quote is in the offer ${quote(name)}. ${instead}`);
}

/** Tells the last day on which an offer can be accepted: the earliest of its rows; null where none has one. */
function lastDay({ rows }: Offer): string | null {
  return rows.reduce<string | null>((first, { validUntil }) => (validUntil !== null && (first === null || validUntil < first) ? validUntil : first), null);
}

/**
 * Refuses cells that cannot be read: they count as blank, and an offer without its discount or its tax is another one. A row whose offer cannot be
 * read may belong to any.
 */
function refuseUnread({ plan }: PlanModel, { name, rows }: Offer): void {
  const fault = plan.faults.find(({ table, row, header }) => table === "quote" && (header === tables.quote.columns.offer.header || rows.some((one) => one.row === row)));
  if (fault === undefined) return;
  const where = rows.some(({ row }) => row === fault.row) ? "in the offer" : "and may be in the offer";
  throw invalid(fault.header, fault.problem.received, `${fault.problem.sentence} It stands in row ${fault.row + 1} of Quote, ${where} ${name}.`);
}

function refuseUnready(offer: Offer, today: string): void {
  const [unpriced] = offer.unpriced;
  if (unpriced !== undefined) {
    const lacking = unpriced.quantity === null ? "Quantity" : unpriced.cost === null ? "Cost" : "Margin";
    const isAll = lacking === "Margin" && unpriced.margin !== null;
    if (isAll) throw invalid(lacking, unpriced.margin, `Margin of ${quote(unpriced.item)} in row ${unpriced.row + 1} of Quote is 100%, and no price has its cost beside that. Write one below.`);
    throw invalid(lacking, null, `${quote(unpriced.item)} in row ${unpriced.row + 1} of Quote has no price. Write its ${lacking}, or take it out of the offer ${offer.name}.`);
  }
  const nameless = offer.rows.find(({ item }) => item === "");
  if (nameless !== undefined) {
    throw invalid("Item", null, `Row ${nameless.row + 1} of Quote has no item, and the customer would not know what it is. Write it, or take the row out of the offer ${offer.name}.`);
  }
  const without = offer.rows.find(({ currency }) => !isCurrencyCode(currency.toUpperCase()));
  if (without !== undefined) {
    const what = without.currency === "" ? "is in no currency" : `is in ${quote(without.currency)}, which is no code of three letters`;
    throw invalid("Currency", without.currency, `${quote(without.item)} in row ${without.row + 1} of Quote ${what}. Write one such as EUR.`);
  }
  const [untaxed] = offer.untaxed;
  if (untaxed !== undefined) {
    const where = `${quote(untaxed.item)} in row ${untaxed.row + 1} of Quote`;
    throw invalid("Tax rate", null, `${where} has no tax rate, and others of the offer ${offer.name} have one. Write it, or 0% where there is none.`);
  }
  const until = lastDay(offer);
  if (until !== null && until < today) throw invalid("Valid until", until, `Offer ${offer.name} ended on ${until}. Write a new last day into Valid until of its rows.`);
}

function linesAndTotals({ currency, lines, totals }: CurrencyPart): PackBlock[] {
  if (lines.length === 0) return [];
  const money = amountsIn(currency);
  const rates = totals.byRate.map(({ taxRate, net, tax }): PackLine => [`Tax ${formatRate(taxRate.toNumber())}`, money(net), money(tax), money(net.plus(tax))]);
  return [
    block(`Offered, in ${currency}`, lineHeaders("Net"), lines.map((line) => [...lineCells(line), money(line.net)]), ""),
    block(`Totals in ${currency}`, ["", "Net", "Tax", "Gross"], [...rates, ["Total", money(totals.net), money(totals.tax), money(totals.gross)]], ""),
  ];
}

function optionalBlock({ currency, optional }: CurrencyPart): PackBlock[] {
  if (optional.length === 0) return [];
  const money = amountsIn(currency);
  const lines = optional.map((line): PackLine => {
    const { net, tax, gross } = totalsOf([line], smallestAmount(currency));
    return [...lineCells(line), money(net), money(tax), money(gross)];
  });
  return [block(`Optional, in ${currency}`, lineHeaders("Net", "Tax", "Gross"), lines, "", "Each may be ordered besides; none is in the totals.")];
}

function lineHeaders(...amounts: readonly string[]): string[] {
  return ["Item", "For", "Years", "Quantity", "Unit price", "Discount", "Tax rate", ...amounts];
}

function lineCells({ row, currency, unitPrice, taxRate }: QuoteLine): PackLine {
  const { item, for: place, years, quantity, discount } = row;
  const taken = discount === null || discount === 0 ? "" : formatRate(discount);
  return [item, place, years ?? "", quantity ?? "", amountsIn(currency)(unitPrice), taken, formatRate(taxRate.toNumber())];
}

function pricePerTbBlock({ pricePerTb, byCurrency: [only] }: Offer): PackBlock[] {
  if (pricePerTb === null || only === undefined) return [];
  const { currency } = only;
  const each = (price: Decimal): Amount => amountsIn(currency)(roundToStep(price, smallestAmount(currency)));
  const lines: PackLine[] = [["All that is offered", each(pricePerTb.whole)], ["The arrays alone", each(pricePerTb.hardware)]];
  return [block("Price of a TB to hosts", ["", currency], lines, "", "Without tax and without what is optional, over the capacity to hosts below.")];
}

function capacityBlock(model: PlanModel, { arrays, toHosts }: Offer): PackBlock[] {
  if (arrays.length === 0) return [];
  const lines = arrays.map((array): PackLine => {
    const capacity = model.capacity.toHostsOf(array);
    return [array.array, array.site, array.model, capacity === null ? "not known" : terabytesOf(capacity)];
  });
  const sum: PackLine = ["Together", "", "", toHosts === null ? "not known" : terabytesOf(toHosts)];
  const note = "After spares, redundancy, reserve and copies between arrays; a TB is 10^12 bytes.";
  return [block("Capacity to hosts", ["Array", "Site", "Model", "TB"], lines.length > 1 ? [...lines, sum] : lines, "", note)];
}

function amountsIn(currency: string): (amount: Decimal) => Amount {
  const decimals = decimalsOf(currency);
  return (amount) => ({ amount: amount.toNumber(), decimals });
}
