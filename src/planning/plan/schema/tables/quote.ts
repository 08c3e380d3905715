import { currenciesByDecimals } from "../../../pricing";
import { choice, count, date, formula, named, number, share, text } from "../column";
import { table } from "../table";

/** Tells in a formula whether the currency of the row has so many decimals. */
const hasDecimals = (decimals: number): string => `ISNUMBER(SEARCH([Currency],"${currenciesByDecimals(decimals).join(" ")}"))`;

export const quote = table("Quote", "What is offered. Prices are yours; formulas follow the plan. Rows with the same Offer are sent out together.", {
  item: text("Item", "What is offered.", named),
  for: text("For", "Array or site it is for."),
  quantity: count("Quantity", "How many."),
  cost: number("Cost", "What one costs you.", { within: { min: 0, max: 1e12, example: 450 } }),
  margin: share("Margin", "Margin, such as 25%."),
  currency: text("Currency", "Currency of the row, such as EUR."),
  validUntil: date("Valid until", "Last day of the offer."),
  usable: formula("Usable TB", "Usable capacity of the array, or of all arrays of the site, that it is for.", {
    formula:
      '=IF([For]="","",IFERROR(INDEX([Arrays.Usable],MATCH([For],[Arrays.Array],0)),IF(COUNTIF([Arrays.Site],[For])=0,"",SUMIF([Arrays.Site],[For],[Arrays.Usable]))))',
  }),
  sellPrice: formula("Sell price", "Price of the row before its discount.", { formula: '=IF(OR([Unit price]="",[Quantity]=""),"",[Quantity]*[Unit price])' }),
  pricePerTb: formula("Price per TB", "Price of the arrays that it is for, discount taken off, over what hosts can store on them; blank for what is no array.", {
    formula:
      '=IF(OR([Kind]<>"array",[To hosts TB]="",[Net]="",[Quantity]=0),"",' +
      "BAY.UNITPRICE([Net]/[Quantity]*IF(COUNTIF([Arrays.Array],[For])>0,1,COUNTIF([Arrays.Site],[For])),[To hosts TB]))",
  }),
  kind: choice("Kind", "array, service or support: only arrays have a price per TB.", ["array", "service", "support"], { since: 2 }),
  toHosts: formula("To hosts TB", "What hosts can store on the array, or on all arrays of the site, that it is for.", {
    formula:
      '=IF([For]="","",IFERROR(INDEX([Arrays.To hosts],MATCH([For],[Arrays.Array],0)),IF(COUNTIF([Arrays.Site],[For])=0,"",SUMIF([Arrays.Site],[For],[Arrays.To hosts]))))',
    since: 2,
  }),
  offer: text("Offer", "Number of the offer that it is in.", { since: 5 }),
  revision: count("Revision", "Revision in which it was sent out last; written when the offer is issued.", { since: 5 }),
  discount: share("Discount", "Share taken off its price, such as 5%.", { since: 5 }),
  taxRate: share("Tax rate", "Tax added to its price, such as 20%; 0% where there is none.", { since: 5 }),
  optional: choice("Optional", "yes where the customer may leave it out: it stands outside the totals.", ["yes", "no"], { since: 5 }),
  years: number("Years", "Years that it runs, for support and service; the price is for all of them.", { since: 5 }),
  part: text("Part", "What the price list calls it; blank where that is the item.", { since: 5 }),
  priceList: text("Price list", "Price list that its cost came from.", { since: 5 }),
  priceDay: date("Price day", "Day of that price list.", { since: 5 }),
  decimals: formula("Decimals", "Decimals to which its currency is rounded (ISO 4217).", {
    formula: `=IF([Item]="","",IF([Currency]="",2,IF(${hasDecimals(0)},0,IF(${hasDecimals(3)},3,IF(${hasDecimals(4)},4,2)))))`,
    since: 5,
  }),
  unitPrice: formula("Unit price", "Price of one before the discount, from cost and margin.", {
    formula: '=IF([Cost]="","",BAY.SELLPRICE([Cost],[Margin],"margin",10^-[Decimals]))',
    since: 5,
  }),
  net: formula("Net", "Price of the row, discount taken off, without tax.", {
    formula: '=IF([Sell price]="","",ROUND([Quantity]*[Unit price]*(1-[Discount]),[Decimals]))',
    since: 5,
  }),
  realMargin: formula("Real margin", "Share of Net that is left after the cost.", { formula: '=IF([Net]="","",IF([Net]=0,"",1-[Quantity]*[Cost]/[Net]))', since: 5 }),
});
