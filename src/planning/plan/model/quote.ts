import { lineNet, pricePerUnit, realMargin, sellPrice, smallestAmount, sumOf, totalsOf, type OfferTotals, type TaxedAmount } from "../../pricing";
import { exactDecimal, sizeIn, terabyte, type Bytes, type Decimal } from "../../quantity";
import { foldName, splitNames } from "../../text";
import { sheetDayOf, type Scalar } from "../../../sheet";
import type { CellWrite } from "../changes";
import type { PlanRow } from "../read";
import type { ColumnKey } from "../schema";
import type { Capacity } from "./capacity";
import { gather } from "./gather";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { sumKnown } from "./sum-known";

type QuoteRow = PlanRow<"quote">;
type ArrayRow = PlanRow<"arrays">;

/** A row of the quote with the amounts that follow from it. */
export interface QuoteLine extends TaxedAmount {
  readonly row: QuoteRow;
  /** Currency in capital letters; "" where the row has none. */
  readonly currency: string;
  readonly quantity: Decimal;
  readonly unitPrice: Decimal;
  /** What all of it costs the firm. */
  readonly cost: Decimal;
  /** Share of the net amount that is left after the cost; null of nothing. */
  readonly margin: Decimal | null;
}

/** What the lines of an offer in one currency come to: those that are in it, and what may be left out. */
export interface CurrencyPart {
  readonly currency: string;
  readonly lines: readonly QuoteLine[];
  readonly totals: OfferTotals;
  readonly optional: readonly QuoteLine[];
}

/** Rows of the quote that are sent out together. */
export interface Offer {
  readonly name: string;
  /** Revision in which it was sent out last; 0 where it was not. */
  readonly revision: number;
  readonly rows: readonly QuoteRow[];
  /** Rows of which nobody can say what they come to. */
  readonly unpriced: readonly QuoteRow[];
  /** Rows without a tax rate, where another row of the offer has one. */
  readonly untaxed: readonly QuoteRow[];
  readonly byCurrency: readonly CurrencyPart[];
  /** The distinct arrays that its rows of the kind array are for, but for optional ones. */
  readonly arrays: readonly ArrayRow[];
  /** What hosts can store on these arrays; null where there are none, where it is not known of one, or where a row of the kind array is for none. */
  readonly toHosts: Bytes | null;
  /**
   * Price of a TB to hosts, without tax and optional rows: of all of it, and of the arrays alone. Null where it has several currencies, where the
   * capacity is not known, and where a row counts other than the arrays that it is for.
   */
  readonly pricePerTb: { readonly whole: Decimal; readonly hardware: Decimal } | null;
  /** Share of its net amount that is left after the cost, without optional rows; null where it has several currencies or comes to nothing. */
  readonly margin: Decimal | null;
}

/** What the price list says of a row of the quote. */
export interface ListPrice {
  readonly row: QuoteRow;
  readonly price: PlanRow<"prices">;
  /** True where the row has the cost, the list and the day of it already. */
  readonly isTaken: boolean;
  /** False where the row names another currency. */
  readonly hasSameCurrency: boolean;
}

/** What the quote of a plan comes to. */
export class Quote {
  constructor(private readonly rows: PlanRows, private readonly capacity: Capacity) {}

  /** Lists the names in For of a row: the whole of it where an array or a site is called so, else those between commas. */
  readonly namesIn = oncePer((row: QuoteRow): readonly string[] => {
    const isOne = this.rows.find("arrays", row.for) !== null || this.rows.find("sites", row.for) !== null;
    return isOne ? [row.for] : splitNames(row.for);
  });

  /** Lists the arrays that a row of the quote is for, each once: those that it names, and all arrays of the sites that it names. */
  readonly arraysOf = oncePer((row: QuoteRow): readonly ArrayRow[] => {
    const found = this.namesIn(row).flatMap((name) => {
      const array = this.rows.find("arrays", name);
      return array === null ? this.rows.rowsWith("arrays", "site", name) : [array];
    });
    return [...new Set(found)];
  });

  /** Works out what a row comes to; null where it lacks quantity, cost or margin. */
  readonly lineOf = oncePer((row: QuoteRow): QuoteLine | null => {
    if (row.quantity === null || row.cost === null || row.margin === null || row.margin >= 1) return null;
    const currency = currencyOf(row);
    const [quantity, each, smallest] = [exactDecimal(row.quantity), exactDecimal(row.cost), smallestAmount(currency)];
    const unitPrice = sellPrice(each, exactDecimal(row.margin), "margin", smallest);
    const net = lineNet(quantity, unitPrice, exactDecimal(row.discount ?? 0), smallest);
    const cost = quantity.times(each);
    return { row, currency, quantity, unitPrice, net, cost, taxRate: exactDecimal(row.taxRate ?? 0), margin: realMargin(cost, net) };
  });

  /** Lists the offers of the quote, in the order of their first rows; rows without an offer are in none. */
  readonly offers = once((): readonly Offer[] => [...this.rows.groupBy("quote", "offer").values()].map((rows) => this.offerOf(rows)));

  /** Finds an offer by its number, without case; null where no row names it. */
  find(name: string): Offer | null {
    return this.offers().find((offer) => foldName(offer.name) === foldName(name)) ?? null;
  }

  /** Lists the rows of the quote whose part, or whose item where no part is named, the price list has with a cost. */
  readonly listPrices = once((): readonly ListPrice[] =>
    gather(this.rows.rows("quote"), (row): ListPrice[] => {
      const price = this.rows.find("prices", row.part === "" ? row.item : row.part);
      const cost = price?.cost ?? null;
      if (price === null || cost === null) return [];
      const isTaken = row.cost === cost && row.priceList === price.list && row.priceDay === price.day;
      return [{ row, price, isTaken, hasSameCurrency: row.currency === "" || price.currency === "" || currencyOf(row) === currencyOf(price) }];
    }),
  );

  /** Proposes to write what the price list says into a row: the cost, the list and its day, and the currency where the row has none. */
  costWrites({ row, price }: ListPrice): CellWrite[] {
    const cells: readonly (readonly [column: ColumnKey<"quote">, now: Scalar, then: Scalar])[] = [
      ["cost", row.cost, price.cost],
      ["currency", row.currency, row.currency === "" ? price.currency : row.currency],
      ["priceList", row.priceList, price.list],
      ["priceDay", row.priceDay, price.day],
    ];
    return cells.flatMap(([column, now, then]) => {
      if (now === then) return [];
      const value = column === "priceDay" && typeof then === "string" ? sheetDayOf(then) : then === "" ? null : then;
      return this.rows.write({ table: "quote", row: row.row, column }, value) ?? [];
    });
  }

  private offerOf(rows: readonly QuoteRow[]): Offer {
    const lines = rows.flatMap((row) => this.lineOf(row) ?? []);
    const byCurrency = [...groupBy(lines, ({ currency }) => currency)].map(([currency, some]): CurrencyPart => {
      const fixed = some.filter(({ row }) => row.optional !== "yes");
      return { currency, lines: fixed, totals: totalsOf(fixed, smallestAmount(currency)), optional: some.filter(({ row }) => row.optional === "yes") };
    });
    const arrayRows = rows.filter(({ kind, optional }) => kind === "array" && optional !== "yes");
    const arrays = [...new Set(arrayRows.flatMap((row) => this.arraysOf(row)))];
    const isKnown = arrays.length > 0 && arrayRows.every((row) => this.arraysOf(row).length > 0);
    const isCounted = arrayRows.every((row) => this.arraysOf(row).length === row.quantity);
    const toHosts = isKnown ? sumKnown(arrays.map((array) => this.capacity.toHostsOf(array))) : null;
    const unpriced = rows.filter((row) => this.lineOf(row) === null);
    const withoutRate = rows.filter(({ taxRate }) => taxRate === null);
    // Several currencies have no sum, and neither have rows of which one has no price.
    const [only = null] = byCurrency.length === 1 && unpriced.length === 0 ? byCurrency : [];
    return {
      name: rows[0]!.offer, rows, unpriced, untaxed: withoutRate.length === rows.length ? [] : withoutRate, byCurrency, arrays, toHosts,
      revision: Math.max(0, ...rows.map(({ revision }) => revision ?? 0)),
      pricePerTb: only === null || !isCounted || toHosts === null || toHosts === 0n ? null : pricesPerTb(only.lines, sizeIn(toHosts, terabyte)),
      margin: only === null ? null : realMargin(sumOf(only.lines.map(({ cost }) => cost)), only.totals.net),
    };
  }
}

/** Tells whether two rows of the quote may go out in one offer: one without an offer may become one of any. */
export function isOneOffer(one: { readonly offer: string }, other: { readonly offer: string }): boolean {
  return one.offer === "" || other.offer === "" || foldName(one.offer) === foldName(other.offer);
}

function currencyOf({ currency }: { readonly currency: string }): string {
  return currency.toUpperCase();
}

function pricesPerTb(lines: readonly QuoteLine[], terabytes: Decimal): Offer["pricePerTb"] {
  const netOf = (some: readonly QuoteLine[]): Decimal => sumOf(some.map(({ net }) => net));
  return { whole: pricePerUnit(netOf(lines), terabytes), hardware: pricePerUnit(netOf(lines.filter(({ row }) => row.kind === "array")), terabytes) };
}
