import { decimalsIn, formerDecimalsIn } from "../decimals-formula";
import { choice, costs, count, date, formula, named, number, share, text } from "../column";
import { table } from "../table";
import { unlessBlank } from "../unless-blank";

/** Of every array 1 or 0, in a formula: whether a list of several names in For has it or its site. */
const isListed = (() => {
  const list = '","&SUBSTITUTE([For],", ",",")&","';
  const has = (column: string): string => `ISNUMBER(SEARCH(","&${column}&",",${list}))*(${column}<>"")`;
  return `(${has("[Arrays.Array]")}+${has("[Arrays.Site]")}>0)*([Arrays.Array]<>"")`;
})();

/** Adds up a column of Arrays over the arrays of a list of names in For, each once; blank where it names none. */
const sumOfList = (column: string): string => `IF(SUMPRODUCT(${isListed})=0,"",SUMPRODUCT(${isListed},${column}))`;

/**
 * Adds up a column of Arrays over what For names: an array, a site, or, which is looked for last as it takes longest, a list of them. Blank where it is
 * blank for one of them: a part of the sum would make each TB too dear.
 */
const sumOver = (column: string): string => {
  const ofSite = unlessBlank(column, "([Arrays.Site]=[For])", `SUMIF([Arrays.Site],[For],${column})`);
  const ofSeveral = `IF(COUNTIF([Arrays.Site],[For])>0,${ofSite},${unlessBlank(column, isListed, sumOfList(column))})`;
  return `=IF([For]="","",IFERROR(IF(COUNTIF([Arrays.Array],[For])>0,INDEX(${column},MATCH([For],[Arrays.Array],0)),${ofSeveral}),""))`;
};

/** How it was added up before: first for one name alone, then with a list that was looked for in every row, with what is blank as nothing. */
const formerSumsOver = (column: string): string[] =>
  ['""', `IFERROR(${sumOfList(column)},"")`].map(
    (otherwise) => `=IF([For]="","",IFERROR(INDEX(${column},MATCH([For],[Arrays.Array],0)),IF(COUNTIF([Arrays.Site],[For])=0,${otherwise},SUMIF([Arrays.Site],[For],${column}))))`,
  );

/** Counts the arrays that For names. */
const countNamed = `IF(COUNTIF([Arrays.Array],[For])>0,1,IF(COUNTIF([Arrays.Site],[For])>0,COUNTIF([Arrays.Site],[For]),SUMPRODUCT(${isListed})))`;

/** Formulas of the price of a TB before For could name several: over what hosts can store since layout 2, less discount since layout 5. */
const formerPricesPerTb = [
  '=IF(OR([Usable TB]="",[Sell price]=""),"",BAY.UNITPRICE([Sell price],[Usable TB]))',
  ...["Sell price", "Net"].flatMap((amount) =>
    ["", ",[Quantity]=0"].map((without) => {
      const each = `[${amount}]/[Quantity]*IF(COUNTIF([Arrays.Array],[For])>0,1,COUNTIF([Arrays.Site],[For]))`;
      return `=IF(OR([Kind]<>"array",[To hosts TB]="",[${amount}]=""${without}),"",BAY.UNITPRICE(${each},[To hosts TB]))`;
    }),
  ),
];

export const quote = table("Quote", "What is offered. Prices are yours; formulas follow the plan. Rows with the same Offer are sent out together.", {
  item: text("Item", "What is offered.", named),
  for: text("For", "Arrays or sites that it is for, with commas between."),
  quantity: count("Quantity", "How many.", { within: { min: 1, max: 1_000_000, whole: true, example: 4 } }),
  cost: number("Cost", "What one costs you.", { within: costs }),
  margin: share("Margin", "Margin, such as 25%."),
  currency: text("Currency", "Currency of the row, such as EUR."),
  validUntil: date("Valid until", "Last day of the offer."),
  usable: formula("Usable TB", "Usable capacity of the arrays that it is for.", {
    formula: sumOver("[Arrays.Usable]"),
    formerly: formerSumsOver("[Arrays.Usable]"),
  }),
  sellPrice: formula("Sell price", "Price of the row before its discount.", {
    formula: '=IF(OR([Unit price]="",[Quantity]=""),"",[Quantity]*[Unit price])',
    formerly: [
      '=IF([Cost]="","",[Quantity]*BAY.SELLPRICE([Cost],[Margin],"margin",0.01))',
      '=IF(OR([Cost]="",[Quantity]=""),"",[Quantity]*BAY.SELLPRICE([Cost],[Margin],"margin",0.01))',
      '=IF([Unit price]="","",[Quantity]*[Unit price])',
    ],
  }),
  pricePerTb: formula("Price per TB", "Price of the arrays that it is for, discount taken off, over what hosts can store on them; blank for what is no array.", {
    formula:
      `=IF(OR([Kind]<>"array",[To hosts TB]="",[Net]="",[Quantity]=0),"",BAY.UNITPRICE([Net]/[Quantity]*${countNamed},[To hosts TB]))`,
    formerly: formerPricesPerTb,
  }),
  kind: choice("Kind", "array, service or support: only arrays have a price per TB.", ["array", "service", "support"], { since: 2 }),
  toHosts: formula("To hosts TB", "What hosts can store on the arrays that it is for.", {
    formula: sumOver("[Arrays.To hosts]"),
    formerly: formerSumsOver("[Arrays.To hosts]"),
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
    formula: `=IF([Item]="","",${decimalsIn("[Currency]")})`,
    formerly: [`=IF([Item]="","",${formerDecimalsIn("[Currency]")})`],
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
