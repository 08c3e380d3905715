import { columnsOf, type Column, type ColumnKey, type TableKey } from "../schema";

/** One thing that the set-up of a site asks for. */
export interface Question {
  readonly label: string;
  /** What to write, for the line below the field. */
  readonly help: string;
  /** Column that reads the answer. */
  readonly column: Column;
  /** What stands in the field at first: a count or a choice that is a person's own as soon as it is left. */
  readonly suggested?: string;
  /** What is written where the field is left empty, and marked as assumed. */
  readonly assumed?: string;
  /** True where nothing can be planned without it. */
  readonly required?: true;
}

function asked<Key extends TableKey>(table: Key, name: ColumnKey<Key>, extra: Omit<Partial<Question>, "column"> = {}): Question {
  const column = columnsOf(table).find(([key]) => key === name)![1];
  return { label: column.header, help: column.meaning, column, ...extra };
}

const howMany = (label: string, help: string, suggested: string): Question => ({ label, help, suggested, column: { kind: "count", header: label, meaning: help } });
const inWords = (label: string, help: string): Question => ({ label, help, column: { kind: "text", header: label, meaning: help } });

/** Questions of the set-up of a site by their keys, in the order in which they are asked; a section a thing they are about. */
export const sections = {
  Site: {
    site: asked("sites", "site", { required: true }),
    room: asked("sites", "room"),
    contact: asked("sites", "contact"),
    timeServers: asked("sites", "timeServers"),
    nameServers: asked("sites", "nameServers"),
    alertsTo: asked("sites", "alertsTo"),
    access: asked("sites", "access"),
  },
  "Racks and power": {
    racks: howMany("Racks", "How many the site has for this.", "1"),
    rackUnits: asked("racks", "units", { label: "Units of a rack", assumed: "42" }),
    rackDepth: asked("racks", "depthMm", { label: "Depth of a rack mm" }),
    rackLimit: asked("racks", "limitKg"),
    rackCooling: asked("racks", "coolingW"),
    volts: asked("feeds", "volts", { help: "Voltage of both feeds; between lines when three-phase.", assumed: "230" }),
    phases: asked("feeds", "phases", { assumed: "1" }),
    breaker: asked("feeds", "breakerA", { assumed: "16" }),
    sourceA: asked("feeds", "source", { label: "Source of feed A" }),
    sourceB: asked("feeds", "source", { label: "Source of feed B" }),
  },
  Networks: {
    dataNetworks: howMany("Data networks", "1, or 2 for two sides that share no switch.", "2"),
    dataPrefixes: inWords("Prefixes of the data networks", "One each, with commas between, such as 10.64.11.0/24, 10.64.12.0/24."),
    dataVlans: inWords("VLANs of the data networks", "One each, with commas between; empty when untagged."),
    dataMtu: asked("networks", "mtu", { label: "MTU of the data networks" }),
    managementPrefix: asked("networks", "prefix", { label: "Prefix of the management network" }),
    managementGateway: asked("networks", "gateway", { label: "Gateway of the management network" }),
    managementVlan: asked("networks", "vlan", { label: "VLAN of the management network" }),
  },
  Switches: {
    switches: howMany("Switches", "How many the arrays and hosts are cabled to.", "2"),
    switchPorts: asked("switches", "ports", { label: "Ports of a switch" }),
    frameBytes: asked("switches", "frameBytes"),
  },
  "The model of its arrays": {
    model: asked("models", "model", { help: "Its name; one that the plan has needs no more answers here.", required: true }),
    bays: asked("models", "bays"),
    units: asked("models", "units", { label: "Units of an array", assumed: "2" }),
    depth: asked("models", "depthMm", { label: "Depth of an array mm" }),
    weight: asked("models", "weightKg"),
    liftKg: asked("models", "liftKg"),
    liftBy: asked("models", "liftBy"),
    watts: asked("models", "watts"),
    controllers: asked("models", "controllers", { assumed: "2" }),
    dataPorts: howMany("Data ports", "How many data ports a controller has.", "2"),
    managementPorts: howMany("Management ports", "How many ports of a controller are for management alone.", "1"),
  },
  Arrays: {
    arrays: howMany("Arrays", "How many go to the site.", "1"),
    arrayNames: inWords("Names of the arrays", "With commas between; empty for the name of the site and a number."),
    drives: asked("arrays", "drives"),
    driveSize: asked("arrays", "driveSize"),
    scheme: asked("arrays", "scheme"),
    spares: asked("arrays", "spares"),
    clusterState: asked("clusters", "state", { label: "Cluster", help: "new: the first array creates it; existing: they join it. Empty until it is known." }),
    fillLimit: asked("pools", "fillLimit", { assumed: "80%" }),
  },
  "Hosts and work": {
    hosts: howMany("Hosts", "How many hosts use the arrays.", "0"),
    hostNames: inWords("Names of the hosts", "With commas between; empty for the name of the site and a number."),
    plannedDate: asked("jobs", "plannedDate", { label: "Installation on", help: "Day it is planned for, such as 2026-05-31." }),
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, Question>>>>;

type Sections = typeof sections;
type KeysOf<Part> = Part extends unknown ? keyof Part : never;

/** Key of a question. */
export type QuestionKey = KeysOf<Sections[keyof Sections]>;

/** Answers as they were typed; one that is not there is empty. */
export type Answers = Readonly<Partial<Record<QuestionKey, string>>>;

/** Every question by its key. */
export const questions: Readonly<Record<QuestionKey, Question>> = Object.assign({}, ...Object.values(sections)) as Readonly<Record<QuestionKey, Question>>;

