import { costs, decimalsIn, tables, type Column } from "../plan/schema";

/** How the cell of a line looks: which number format it has. */
export type LineLook = "text" | "plain" | "whole" | "figure" | "money" | "percent" | "year" | "chance" | "date";

/** A line of the sheet into which people type: once for the needs, once a design. */
export interface InputLine extends Column {
  readonly look: LineLook;
  /** True where a blank means what `meaning` says. */
  readonly optional?: true;
  /** Column of Models that fills the cell of a design until somebody types over it. */
  readonly fromModel?: "bays" | "units" | "watts";
}

/** A line of the sheet that a formula answers. */
export interface FigureLine {
  readonly header: string;
  readonly meaning: string;
  readonly look: LineLook;
  /**
   * `[Header]` stands for the cell of that line: of the needs, or of the same design. The formula shows nothing while one of these cells is blank;
   * `[Header?]` may be.
   */
  readonly formula: string;
}

/** What is wanted, once for all designs. */
export const needLines = {
  dataNow: { kind: "size", header: "Data now", meaning: "What hosts store today: TB as a number, or text such as 40 TiB.", look: "plain" },
  growth: { kind: "number", header: "Growth a year", meaning: "How much is added each year to what is there then, such as 20%.", look: "percent" },
  years: { kind: "count", header: "Years", meaning: "How many years are looked at, such as 5.", look: "plain" },
  begins: { kind: "date", header: "Begins on", meaning: "Day from which the years count, such as 2026-05-31.", look: "date" },
  fillLimit: { kind: "share", header: "Fill limit", meaning: "Share of the capacity to hosts that may be filled, such as 80%.", look: "percent" },
  operations: { kind: "number", header: "Operations wanted a second", meaning: "Small, random reads and writes of all hosts together, such as 2000.", look: "plain" },
  readShare: { kind: "share", header: "Share of reads", meaning: "Share of reads among these operations, such as 70%.", look: "percent" },
  riskAccepted: { kind: "share", header: "Risk accepted", meaning: "Probability of losing data within the years that is accepted, such as 0.1%.", look: "percent" },
  failureRate: { kind: "share", header: "Drives that fail in a year", meaning: "Share of the drives, such as 1.5%; use your own records.", look: "percent" },
  readFaults: { kind: "number", header: "Unreadable bits", meaning: "Chance that one bit cannot be read, such as 1E-15. Empty: 0, which counts failing drives alone.", look: "chance", optional: true },
  discountRate: { kind: "number", header: "Discount rate", meaning: "What money earns a year above inflation, such as 3%: all prices are those of today.", look: "percent" },
  tariff: { kind: "number", header: "Price of a kWh", meaning: "In the currency of the prices, such as 0.25.", look: "figure" },
  tariffRise: { kind: "number", header: "Rise of that price a year", meaning: "Above inflation, such as 1%. Empty: 0.", look: "percent", optional: true },
  cooling: { kind: "number", header: "Share added for cooling", meaning: "Such as 0.5 for a room that takes 1.5 W a watt. Empty: 0.", look: "percent", optional: true },
  currency: { kind: "text", header: "Currency", meaning: "Currency of all prices on this sheet, such as EUR.", look: "text", optional: true },
  margin: { kind: "share", header: "Margin", meaning: "Your share of the prices, such as 25%. Empty: 0, prices are costs.", look: "percent", optional: true },
} as const satisfies Readonly<Record<string, InputLine>>;

/** What a design is: two to four stand side by side. */
export const designLines = {
  design: { kind: "text", header: "Design", meaning: "Its name, such as One large array. Two designs have different names.", look: "text" },
  model: { kind: "text", header: "Model", meaning: "Model of its arrays; one of the table Models fills bays, units and watts below until you type over them.", look: "text", optional: true },
  drives: { kind: "count", header: "Drives an array", meaning: "Drives in each array, spares included.", look: "plain", fromModel: "bays" },
  driveSize: { kind: "size", header: "Drive size", meaning: "Marketed size of a drive: TB as a number, or text such as 960 GB.", look: "plain" },
  scheme: { kind: "scheme", header: "Scheme", meaning: "Redundancy scheme inside an array, such as RAID 6 or RAID 60 8+2.", look: "text", suggestions: tables.arrays.columns.scheme.suggestions },
  spares: { kind: "count", header: "Spares an array", meaning: "Hot spares among the drives of an array. Empty: 0.", look: "plain", optional: true },
  across: {
    kind: "scheme", header: "Across arrays", meaning: "Scheme laid over the arrays, such as 2 copies. Empty: none.", look: "text", optional: true,
    suggestions: tables.pools.columns.acrossArrays.suggestions,
  },
  arrays: { kind: "count", header: "Arrays", meaning: "How many are bought. Empty: as many as the years need.", look: "plain", optional: true },
  repairHours: { kind: "number", header: "Repair hours", meaning: "Hours until a failed drive is replaced and rebuilt, such as 24.", look: "plain" },
  driveRate: { kind: "number", header: "Operations of one drive", meaning: "Small, random operations a second that one drive does, such as 150.", look: "plain" },
  watts: { kind: "number", header: "Watts an array", meaning: "Power that one array draws.", look: "plain", fromModel: "watts" },
  units: { kind: "count", header: "Units an array", meaning: "Rack units that one array fills.", look: "plain", fromModel: "units" },
  cost: { kind: "number", header: "Cost an array", meaning: "What one array with its drives costs you.", look: "money", within: costs },
  support: { kind: "number", header: "Support cost an array and year", meaning: "What support of one array costs you a year, due at the end of each.", look: "money", within: costs },
} as const satisfies Readonly<Record<string, InputLine>>;

const across = 'IF([Across arrays?]="","none",[Across arrays?])';

/** Writes the net price of what is in a line of costs, as a row of Quote has it. */
const priceOf = (cost: string): string => `BAY.SELLPRICE([${cost}],IF([Margin?]="",0,[Margin?]),"margin",10^-${decimalsIn("[Currency?]")})`;

/** What follows of the needs alone. */
export const needFigures: readonly FigureLine[] = [
  { header: "Data at the end", meaning: "TB after these years.", look: "figure", formula: "BAY.DEMAND([Data now],[Growth a year],[Years])" },
];

/** What follows of a design, in the order in which it is read. */
export const designFigures: readonly FigureLine[] = [
  { header: "Usable an array", meaning: "TB that the scheme leaves in one array.", look: "figure", formula: "BAY.USABLE([Scheme],[Drives an array],[Drive size],[Spares an array?])" },
  {
    header: "Arrays needed", meaning: "Fewest arrays that hold the data at the end within the fill limit.", look: "plain",
    formula: `BAY.DRIVESFOR(${across},[Data at the end],[Usable an array],0,0,[Fill limit])`,
  },
  { header: "Arrays counted", meaning: "Those that were asked for, else those that are needed.", look: "plain", formula: 'IF([Arrays?]="",[Arrays needed],[Arrays?])' },
  { header: "Usable to hosts", meaning: "TB that hosts can store, after the scheme across the arrays.", look: "figure", formula: `BAY.USABLE(${across},[Arrays counted],[Usable an array])` },
  {
    header: "Full after years", meaning: "Years until the data reaches the fill limit; never where it does not grow.", look: "figure",
    formula: 'IFERROR(BAY.RUNWAY([Data now],[Growth a year],[Usable to hosts],[Fill limit]),"never")',
  },
  { header: "Full in", meaning: "Year in which that is.", look: "year", formula: 'IF(ISNUMBER([Full after years]),YEAR([Begins on]+365.25*[Full after years]),"never")' },
  {
    header: "Operations a second", meaning: "What all drives sustain together.", look: "whole",
    formula: "[Arrays counted]*BAY.IOPS([Scheme],[Drives an array],[Operations of one drive],[Share of reads],[Spares an array?])",
  },
  { header: "Against those wanted", meaning: "enough, or too few.", look: "text", formula: 'IF([Operations a second]>=[Operations wanted a second],"enough","too few")' },
  {
    header: "Risk of losing data, at most", meaning: "Sum over the arrays, each by itself: what a scheme across them would still save is not counted.", look: "chance",
    formula: "MIN(1,[Arrays counted]*BAY.LOSSRISK([Scheme],[Drives an array]-[Spares an array?],[Drive size],[Drives that fail in a year],[Repair hours],[Years],[Unreadable bits?]))",
  },
  { header: "Against that accepted", meaning: "within, or above.", look: "text", formula: 'IF([Risk of losing data, at most]<=[Risk accepted],"within","above")' },
  {
    header: "Bytes lost a TB", meaning: "Expected loss in the years for each usable TB of an array, which compares schemes of unlike size.", look: "figure",
    formula: "BAY.BYTESLOST([Scheme],[Drives an array]-[Spares an array?],[Drive size],[Drives that fail in a year],[Repair hours],[Years],[Unreadable bits?])",
  },
  {
    header: "Watts", meaning: "Planning figure: what all arrays draw. A licensed electrician and the local code decide about circuits.", look: "plain",
    formula: "[Arrays counted]*[Watts an array]",
  },
  { header: "Units", meaning: "Rack units that all arrays fill.", look: "plain", formula: "[Arrays counted]*[Units an array]" },
  { header: "Price an array", meaning: "Net price of one: its cost and your margin, rounded as the currency is.", look: "money", formula: priceOf("Cost an array") },
  { header: "Price", meaning: "Net price of all arrays.", look: "money", formula: "[Arrays counted]*[Price an array]" },
  { header: "Price a TB to hosts", meaning: "That over what hosts can store.", look: "money", formula: "BAY.UNITPRICE([Price],[Usable to hosts])" },
  { header: "Energy a year", meaning: "At today's price of a kWh, cooling included.", look: "money", formula: "BAY.ENERGYCOST([Watts],[Price of a kWh],1,[Share added for cooling?])" },
  {
    header: "Energy over the years", meaning: "Its present value: paid at the end of each year, the price rising as said (NIST Handbook 135, modified uniform present value).", look: "money",
    formula: "-PV((1+[Discount rate])/(1+[Rise of that price a year?])-1,[Years],[Energy a year])",
  },
  { header: "Support a year", meaning: "Net price of a year of support for all arrays.", look: "money", formula: `[Arrays counted]*${priceOf("Support cost an array and year")}` },
  {
    header: "Support over the years", meaning: "Its present value: paid at the end of each year (NIST Handbook 135, uniform present value).", look: "money",
    formula: "-PV([Discount rate],[Years],[Support a year])",
  },
  {
    header: "Cost over the years", meaning: "Price, energy and support in today's money. Work, parts and what the arrays are worth at the end are not in it.", look: "money",
    formula: "[Price]+[Energy over the years]+[Support over the years]",
  },
  { header: "Cost a TB to hosts", meaning: "That over what hosts can store.", look: "money", formula: "BAY.UNITPRICE([Cost over the years],[Usable to hosts])" },
];
