import { choice, count, date, formula, named, number, share, text } from "../column";
import { table } from "../table";

export const quote = table("Quote", "What is offered. Prices are yours; formulas follow the plan.", {
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
  sellPrice: formula("Sell price", "Price of the row.", {
    formula: '=IF(OR([Cost]="",[Quantity]=""),"",[Quantity]*BAY.SELLPRICE([Cost],[Margin],"margin",0.01))',
  }),
  pricePerTb: formula("Price per TB", "Price of the arrays that it is for, over what hosts can store on them; blank for what is no array.", {
    formula:
      '=IF(OR([Kind]<>"array",[To hosts TB]="",[Sell price]="",[Quantity]=0),"",' +
      "BAY.UNITPRICE([Sell price]/[Quantity]*IF(COUNTIF([Arrays.Array],[For])>0,1,COUNTIF([Arrays.Site],[For])),[To hosts TB]))",
  }),
  kind: choice("Kind", "array, service or support: only arrays have a price per TB.", ["array", "service", "support"], { since: 2 }),
  toHosts: formula("To hosts TB", "What hosts can store on the array, or on all arrays of the site, that it is for.", {
    formula:
      '=IF([For]="","",IFERROR(INDEX([Arrays.To hosts],MATCH([For],[Arrays.Array],0)),IF(COUNTIF([Arrays.Site],[For])=0,"",SUMIF([Arrays.Site],[For],[Arrays.To hosts]))))',
    since: 2,
  }),
});
