/**
 * How the cells of a column are read.
 *
 * text: as typed; count: whole number from 0; number; size, share, scheme: as the functions read them; date: a date cell or ISO text;
 * choice: one of `choices`, without case; tick: yes, x, TRUE or a mark; formula: for people, never read.
 */
export type ColumnKind = "text" | "count" | "number" | "size" | "share" | "scheme" | "date" | "choice" | "tick" | "formula";

/** One column of a planning table. */
export interface Column<Kind extends ColumnKind = ColumnKind> {
  readonly kind: Kind;
  /** Text of the header cell, by which the column is found. */
  readonly header: string;
  /** What belongs here, for the help of the cell and the documentation. */
  readonly meaning: string;
  readonly choices?: readonly string[];
  /** What is usual here and offered in a list, beside which anything may be typed. */
  readonly suggestions?: readonly string[];
  /** Table whose first required column says what may stand here. */
  readonly from?: string;
  /** True where a cell may name several rows of that table, with commas between. */
  readonly several?: true;
  /** True where a row without it says nothing. */
  readonly required?: true;
  /**
   * Native or BAY formula a new row begins with; `[Header]` stands for the cell of that column in the same row, `[Table.Header]` for
   * all cells of a column of another table.
   */
  readonly formula?: string;
  /** Unit of a number, for the checks and the documentation. */
  readonly unit?: string;
  /** True where a size may be 0. */
  readonly zero?: true;
  /** Width in characters of a column of long text, which wraps; without it the width follows what stands there. */
  readonly width?: number;
}

/** One planning table: its name, the note above it and its columns in the order in which set-up writes them. */
export interface Table<Columns extends Record<string, Column> = Record<string, Column>> {
  readonly name: string;
  readonly note: string;
  readonly columns: Columns;
}

type Extra = Partial<Omit<Column, "kind" | "header" | "meaning">>;

const column =
  <Kind extends ColumnKind>(kind: Kind) =>
  (header: string, meaning: string, extra: Extra = {}): Column<Kind> => ({ ...extra, kind, header, meaning });

const text = column("text");
const count = column("count");
const number = column("number");
const size = column("size");
const share = column("share");
const scheme = column("scheme");
const date = column("date");
const choice = column("choice");
const tick = column("tick");
const formula = column("formula");

function table<Columns extends Record<string, Column>>(name: string, note: string, columns: Columns): Table<Columns> {
  return { name, note, columns };
}

const key = { required: true } as const;

/** The planning tables in the order of their sheets: each stands behind those it refers to. */
export const tables = {
  settings: table("Settings", "Thresholds of the checks. Change a value here and the checks follow.", {
    setting: text("Setting", "Name of the threshold.", key),
    value: text("Value", "Its value."),
    meaning: text("Meaning", "What it decides.", { width: 90 }),
  }),
  sites: table("Sites", "One row a site. Contacts are roles with a way to reach them, not private data.", {
    site: text("Site", "Name of the site.", key),
    room: text("Room", "Room the racks stand in."),
    contact: text("Contact", "Role to ask for, and where."),
    timeServers: text("Time servers", "NTP servers the arrays use."),
    nameServers: text("Name servers", "DNS servers the arrays use."),
    alertsTo: text("Alerts to", "Where alerts are sent."),
    access: text("Access and lift", "How to get in and how to bring a rack array up.", { width: 50 }),
  }),
  racks: table("Racks", "One row a rack. Positions count rack units from the end named in Numbered from.", {
    rack: text("Rack", "Name of the rack.", key),
    site: text("Site", "Where it stands.", { from: "Sites" }),
    units: count("Units", "Rack units it has.", { unit: "U" }),
    numberedFrom: choice("Numbered from", "Where unit 1 is.", { choices: ["bottom", "top"] }),
    depthMm: number("Depth mm", "Usable depth between the rails and the rear door.", { unit: "mm" }),
    limitKg: number("Limit kg", "Load the rack and the floor carry.", { unit: "kg" }),
    coolingW: number("Cooling W", "Heat that can be taken away here.", { unit: "W" }),
    outlets: text("Outlets", "Outlets free for this plan, such as 12 x C13, 4 x C19."),
  }),
  feeds: table("Feeds", "One row a power feed. Planning figures: a licensed electrician and the local code decide.", {
    feed: text("Feed", "Name of the feed.", key),
    site: text("Site", "Where it is.", { from: "Sites" }),
    source: text("Source", "What it hangs on: the board, the UPS, the utility."),
    volts: number("Volts", "Voltage; between lines when three-phase.", { unit: "V" }),
    phases: count("Phases", "1 or 3."),
    breakerA: number("Breaker A", "Rating of its breaker.", { unit: "A" }),
    continuousShare: share("Continuous share", "Share of the breaker that may be loaded all the time; 0.8 when empty."),
    powerFactor: number("Power factor", "Power factor of the load; 1 when empty."),
  }),
  networks: table("Networks", "One row a network. Array ports take networks in turn, in the order of the rows of their site.", {
    network: text("Network", "Name of the network.", key),
    site: text("Site", "Where it is; empty when it reaches every site.", { from: "Sites" }),
    prefix: text("Prefix", "Address range, such as 10.64.1.0/24."),
    gateway: text("Gateway", "Gateway, or none."),
    vlan: count("VLAN", "VLAN number; empty when untagged."),
    mtu: count("MTU", "Largest packet; 1500 when empty.", { unit: "bytes" }),
    routing: text("Routing", "Routing table it belongs to; empty for the common one."),
    reserved: text("Reserved", "Addresses the plan must not use: addresses, a-b ranges and prefixes, with commas between."),
  }),
  switches: table("Switches", "One row a switch that array ports or hosts are cabled to.", {
    switch: text("Switch", "Name of the switch.", key),
    site: text("Site", "Where it is.", { from: "Sites" }),
    rack: text("Rack", "Rack it sits in.", { from: "Racks" }),
    bottomUnit: count("Bottom unit", "Lowest rack unit it fills.", { unit: "U" }),
    units: count("Units", "Rack units it fills.", { unit: "U" }),
    watts: number("Watts", "Power it draws.", { unit: "W" }),
    feedA: text("Feed A", "Feed of its first supply.", { from: "Feeds" }),
    feedB: text("Feed B", "Feed of its second supply.", { from: "Feeds" }),
    networks: text("Networks", "Networks it carries, with commas between.", { from: "Networks", several: true }),
  }),
  hosts: table("Hosts", "One row a host that uses the arrays of its site.", {
    host: text("Host", "Name of the host.", key),
    site: text("Site", "Where it is.", { from: "Sites" }),
    initiatorName: text("Initiator name", "iSCSI qualified name of its initiator."),
    address: text("Address", "Its address."),
  }),
  links: table("Links", "Cables between switches and to hosts. Array ports are links already, by the Ports table.", {
    from: text("From", "Switch or host at one end.", key),
    to: text("To", "Switch or host at the other end.", key),
    unavailability: number("Unavailability", "Share of the time the link is down; 0 when empty."),
  }),
  clusters: table("Clusters", "One row a cluster: arrays that are managed as one, at one shared address.", {
    cluster: text("Cluster", "Name of the cluster.", key),
    network: text("Network", "Network of its shared address.", { from: "Networks" }),
    sharedAddress: text("Shared address", "Address at which the cluster is managed; it sits on no port."),
    state: choice("State", "new: created by the first job; existing: arrays join it.", { choices: ["new", "existing"] }),
    putIntoUse: choice("Put into use", "When its capacity is handed to the hosts.", { choices: ["now", "after acceptance"] }),
  }),
  pools: table("Pools", "One row a pool of capacity.", {
    pool: text("Pool", "Name of the pool.", key),
    cluster: text("Cluster", "Cluster it is in.", { from: "Clusters" }),
    fillLimit: share("Fill limit", "Share that may be filled, such as 80%."),
    acrossArrays: text("Across arrays", "none, or the redundancy scheme laid over its arrays.", {
      suggestions: ["none", "2 copies", "3 copies", "2+1", "4+2"],
    }),
  }),
  arrays: table("Arrays", "One row an array. Ids are written once and never reused: names may change, records stay.", {
    id: text("Id", "Written by set-up; never changed."),
    array: text("Array", "Name of the array.", key),
    site: text("Site", "Where it goes.", { from: "Sites" }),
    model: text("Model", "Model, as the Prompts table names it."),
    serial: text("Serial", "Serial number of the chassis."),
    firmware: text("Firmware", "Firmware of its controllers, as prepared or as built."),
    rack: text("Rack", "Rack it goes into.", { from: "Racks" }),
    bottomUnit: count("Bottom unit", "Lowest rack unit it fills.", { unit: "U" }),
    units: count("Units", "Rack units it fills.", { unit: "U" }),
    depthMm: number("Depth mm", "Depth with cables and bend radius.", { unit: "mm" }),
    weightKg: number("Weight kg", "Weight fully fitted.", { unit: "kg" }),
    liftKg: number("Lift kg", "Weight as lifted: drives and supplies out.", { unit: "kg" }),
    liftBy: choice("Lift by", "Who or what lifts it.", { choices: ["one", "two", "lift table"] }),
    watts: number("Watts", "Power the whole array draws.", { unit: "W" }),
    plug: text("Plug", "Plug of its cords, such as C14."),
    feedA: text("Feed A", "Feed of its first supply.", { from: "Feeds" }),
    feedB: text("Feed B", "Feed of its second supply.", { from: "Feeds" }),
    controllers: text("Controllers", "How many (2) or their names (A,B)."),
    ports: text("Ports", "How many a controller (4) or their names (0,1,2,3)."),
    portSharing: choice("Port sharing", "controller: every controller port has its own address; array: one address a port number, which moves to the working controller.", {
      choices: ["controller", "array"],
    }),
    drives: count("Drives", "Drives fitted, spares included."),
    driveSize: size("Drive size", "Marketed size of a drive, such as 4 TB."),
    scheme: scheme("Scheme", "Redundancy scheme, such as RAID 6 8+2.", {
      suggestions: ["none", "RAID 1", "RAID 10", "RAID 5", "RAID 6", "RAID 60 8+2", "triple parity", "8+2", "3 copies"],
    }),
    spares: count("Spares", "Hot spares among the drives."),
    reserve: share("Reserve", "Share of the capacity kept free, such as 10%."),
    cluster: text("Cluster", "Cluster it belongs to.", { from: "Clusters" }),
    clusterOrder: count("Cluster order", "1 for the array that creates a new cluster, then 2, 3 ..."),
    pool: text("Pool", "Pool its capacity goes to.", { from: "Pools" }),
    used: size("Used", "Space in use, or expected to be.", { zero: true }),
    warrantyUntil: date("Warranty until", "Last day of the warranty."),
    usable: formula("Usable", "Usable TB, computed in the sheet.", {
      formula: '=IF([Scheme]="","",BAY.USABLE([Scheme],[Drives],[Drive size],[Spares],[Reserve]))',
      unit: "TB",
    }),
  }),
  ports: table("Ports", "One row an address of an array port. Assign addresses fills it; what stands here stays.", {
    array: text("Array", "Array the port is on.", { required: true, from: "Arrays" }),
    controller: text("Controller", "Controller the port is on."),
    port: text("Port", "Port, as the chassis labels it."),
    network: text("Network", "Network it is on.", { from: "Networks" }),
    address: text("Address", "Its address."),
    mtu: count("MTU", "MTU set on the port; the network's when empty.", { unit: "bytes" }),
    switch: text("Switch", "Switch it is cabled to.", { from: "Switches" }),
    switchPort: text("Switch port", "Port of the switch."),
  }),
  procedures: table("Procedures", "Sections of each procedure, in order. Built-in ones stand here to be changed.", {
    procedure: text("Procedure", "Name of the procedure.", key),
    section: text("Section", "Name of the section.", key),
    forEach: choice("For each", "What the section is repeated for.", {
      choices: ["site", "cluster", "pool", "array", "controller", "port", "drive", "prompt"],
    }),
    when: text("When", "Empty, or field = value, joined by and."),
  }),
  steps: table("Steps", "Steps of each section, in order. {{Column}} is filled from the plan.", {
    stepId: text("Step id", "Never changed or reused: records are kept by it.", key),
    procedure: text("Procedure", "Procedure it belongs to.", { required: true, from: "Procedures" }),
    section: text("Section", "Section it belongs to.", key),
    when: text("When", "Empty, or field = value, joined by and."),
    do: text("Do", "What is to be done.", { ...key, width: 60 }),
    expect: text("Expect", "What should be found.", { width: 30 }),
    makersGuide: text("From the maker's guide", "What the maker's guide says here; yours to fill.", { width: 30 }),
    record: text("Record", "tick, text, number, size, address, serial, date or choice:a|b|c.", {
      suggestions: ["tick", "text", "number", "size", "address", "serial", "date"],
    }),
    unit: text("Unit", "Unit of the record."),
    tolerancePercent: number("Tolerance %", "How far a number may be off, in per cent of what is expected.", { unit: "%" }),
    tolerance: number("Tolerance ±", "How far a number may be off."),
    required: tick("Required", "Yes where the job cannot be closed without it."),
    caution: text("Caution", "What gets hurt when it goes wrong, and how to keep safe.", { width: 50 }),
    sign: choice("Sign", "Names that sign for it.", { choices: ["none", "one", "two"] }),
    minutes: number("Minutes", "Time it takes.", { unit: "min" }),
  }),
  prompts: table("Prompts", "What a first-time set-up asks, model by model, in the order of the maker's guide. Replace the sample rows by your own.", {
    model: text("Model", "Model, as the Arrays table names it.", key),
    order: number("Order", "Order in which it is asked."),
    prompt: text("Prompt", "What the console asks.", key),
    value: text("Value", "What is answered; {{Column}} is filled from the plan."),
  }),
  jobs: table("Jobs", "One row a piece of work at a site; each has its own commissioning tab.", {
    id: text("Id", "Written by set-up; never changed."),
    job: text("Job", "Name of the job and of its tab.", key),
    site: text("Site", "Where it is done.", { from: "Sites" }),
    procedure: text("Procedure", "Procedure that is followed.", { from: "Procedures" }),
    arrays: text("Arrays", "Arrays it is about, with commas between; all at the site when empty.", { from: "Arrays", several: true }),
    subject: text("Subject", "What else it is about: the shelf, the controller."),
    plannedDate: date("Planned date", "When it is planned."),
    state: choice("State", "Where it stands.", { choices: ["planned", "open", "closed"] }),
  }),
  quote: table("Quote", "What is offered. Prices are yours; formulas follow the plan.", {
    item: text("Item", "What is offered.", key),
    for: text("For", "Array or site it is for."),
    quantity: count("Quantity", "How many."),
    cost: number("Cost", "What one costs you."),
    margin: share("Margin", "Margin, such as 25%."),
    currency: text("Currency", "Currency of the row, such as EUR."),
    validUntil: date("Valid until", "Last day of the offer."),
    usable: formula("Usable TB", "Usable capacity of the array, or of all arrays of the site, that it is for.", {
      unit: "TB",
      formula:
        '=IF([For]="","",IFERROR(INDEX([Arrays.Usable],MATCH([For],[Arrays.Array],0)),IF(COUNTIF([Arrays.Site],[For])=0,"",SUMIF([Arrays.Site],[For],[Arrays.Usable]))))',
    }),
    sellPrice: formula("Sell price", "Price of the row.", {
      formula: '=IF([Cost]="","",[Quantity]*BAY.SELLPRICE([Cost],[Margin],"margin",0.01))',
    }),
    pricePerTb: formula("Price per TB", "Sell price per usable TB.", {
      formula: '=IF(OR([Usable TB]="",[Sell price]=""),"",BAY.UNITPRICE([Sell price],[Usable TB]))',
    }),
  }),
} as const satisfies Record<string, Table>;

export type Tables = typeof tables;

/** Key of a planning table in code, such as `arrays`. */
export type TableKey = keyof Tables;
