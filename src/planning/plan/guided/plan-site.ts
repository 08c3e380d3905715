import { findFreeSubnet, firstHost, formatAddress, formatPrefix, parsePrefix, rangesOfPrefixes, type Prefix } from "../../addressing";
import { invalid, quote, splitNames } from "../../text";
import { sheetDayOf, showCell, type Scalar } from "../../../sheet";
import type { Changes } from "../changes";
import { orNull, type PlanModel } from "../model";
import { readCell } from "../read";
import { columnsOf, nameColumn, tableKeys, tables, type TableKey, type TableRow, type TableRows } from "../schema";
import { addedRows, refuseTakenNames } from "./new-rows";
import { questions, sections, type Answers, type QuestionKey } from "./questions";

/** Tables into which the set-up of a site writes. */
const guidedTables = [
  "sites", "racks", "feeds", "networks", "switches", "hosts", "hostPorts", "clusters", "pools", "models", "modelPorts", "arrays", "jobs", "assumptions",
] as const satisfies readonly TableKey[];

/** Most rows of one kind: more come by a list. */
const mostRows = 200;

/** Rack units that a switch fills. */
const switchUnits = 1;

/** Range out of which networks are assumed: RFC 1918. */
const privateRange = "10.0.0.0/8";

/** Built-in procedures of a first job, by the state of the cluster that its arrays create or join. */
const firstProcedure = { new: "Install a rack array", existing: "Add an array to a live cluster" } as const;

/**
 * Plans the rows of a new site and everything at it from a few answers: racks, feeds, networks, switches, the model, arrays, hosts and the job.
 *
 * What was not answered stays empty, or is assumed and stands in Assumptions. Refuses answers that cannot be read, and names that the plan has.
 */
export function planSite(model: PlanModel, answers: Answers): Changes {
  return addedRows(model, siteRows(model, answers));
}

/** Works out the rows of a new site, table by table; refuses what `planSite` does, but for what depends on where the tables stand. */
export function siteRows(model: PlanModel, answers: Answers): TableRows {
  const rows = new SiteRows(model, answers).rows();
  refuseTakenNames(model, rows);
  return rows;
}

/** Works out the rows of one site. */
class SiteRows {
  private readonly assumptions: TableRow<"assumptions">[] = [];
  private readonly taken: Prefix[];

  constructor(private readonly model: PlanModel, private readonly answers: Answers) {
    this.taken = model.rows("networks").flatMap(({ prefix }) => orNull(() => parsePrefix(prefix, "Prefix")) ?? []);
  }

  rows(): TableRows {
    const site = this.needed("site");
    const racks = this.racks(site);
    const networks = this.networks(site);
    const data = networks.filter(({ role }) => role === "data");
    const model = this.modelRow();
    const units = Number(model.units ?? this.model.find("models", model.model as string)?.units ?? 0);
    const arrays = this.arrays(site, racks, units, model);
    const hosts = this.names("hosts", "hostNames", `${site} host`).map((host): TableRow<"hosts"> => ({ host, site }));
    const cluster = { cluster: `${site} cluster`, network: `${site} management`, state: this.choice("clusterState", ["new", "existing"]) };
    const procedure = firstProcedure[cluster.state === "existing" ? "existing" : "new"];
    const pool = this.withAssumed("pools", { pool: `${site} pool`, cluster: cluster.cluster }, { fillLimit: "fillLimit" });
    return {
      sites: [{ site, ...this.given({ room: "room", contact: "contact", timeServers: "timeServers", nameServers: "nameServers", alertsTo: "alertsTo", access: "access" }) }],
      racks,
      feeds: ["A", "B"].map((side) =>
        this.withAssumed("feeds", { feed: `${site} ${side}`, site, source: this.text(side === "A" ? "sourceA" : "sourceB") }, { volts: "volts", phases: "phases", breakerA: "breaker" }),
      ),
      networks,
      switches: this.switches(site, racks, networks),
      hosts,
      hostPorts: hosts.flatMap(({ host = null }) => data.map(({ network = null, side = null }): TableRow<"hostPorts"> => ({ host, network, side }))),
      clusters: arrays.length === 0 ? [] : [cluster],
      pools: arrays.length === 0 ? [] : [pool],
      models: this.model.find("models", model.model as string) === null ? [model] : [],
      modelPorts: this.model.find("models", model.model as string) === null ? this.modelPorts(model) : [],
      arrays,
      // Arrays that join others are named: nobody wants the drives of those others emptied.
      jobs: arrays.length === 0 ? [] : [{
        job: `${site} installation`, site, procedure, arrays: cluster.state === "existing" ? arrays.map(({ array }) => array).join(", ") : null,
        plannedDate: this.value("plannedDate"), state: "planned",
      }],
      assumptions: this.assumptions,
    };
  }

  private racks(site: string): TableRow<"racks">[] {
    const asked = this.given({ depthMm: "rackDepth", limitKg: "rackLimit", coolingW: "rackCooling" });
    return this.numbered("racks", `${site} rack`).map((rack) => this.withAssumed("racks", { rack, site, numberedFrom: "bottom", ...asked }, { units: "rackUnits" }));
  }

  private networks(site: string): TableRow<"networks">[] {
    const data = this.numbered("dataNetworks", `${site} data`);
    const [prefixes, vlans] = [this.oneEach("dataPrefixes", data.length), this.oneEach("dataVlans", data.length)];
    const mtu = this.value("dataMtu");
    const vlanColumn = { ...questions.managementVlan.column, header: questions.dataVlans.label };
    const rows = data.map((network, index): TableRow<"networks"> => {
      const vlan = vlans[index] === undefined ? null : (readCell(vlans[index], vlanColumn) as number);
      const row = { network, site, prefix: this.prefix(network, prefixes[index]), gateway: "none", vlan, mtu, role: "data" };
      return { ...row, side: data.length < 2 ? null : index % 2 === 0 ? "A" : "B" };
    });
    const network = `${site} management`;
    const prefix = this.prefix(network, this.text("managementPrefix") ?? undefined);
    return [...rows, { network, site, prefix, gateway: this.gateway(network, prefix), vlan: this.value("managementVlan"), role: "management" }];
  }

  /** Takes a prefix that was answered, or the first free one of the private range, which is assumed. */
  private prefix(network: string, answered: string | undefined): string {
    const prefix = answered === undefined ? this.freePrefix() : parsePrefix(answered, "Prefix");
    this.taken.push(prefix);
    if (answered === undefined) this.assume("networks", network, "Prefix", formatPrefix(prefix));
    return formatPrefix(prefix);
  }

  private freePrefix(): Prefix {
    return findFreeSubnet(parsePrefix(privateRange, "Prefix"), 24, rangesOfPrefixes(4, this.taken.filter(({ family }) => family === 4)));
  }

  /** Takes the gateway that was answered, or the first address of a host in the prefix, which is assumed. */
  private gateway(network: string, prefix: string): string {
    const answered = this.text("managementGateway");
    if (answered !== null) return answered;
    const gateway = formatAddress(firstHost(parsePrefix(prefix, "Prefix")));
    this.assume("networks", network, "Gateway", gateway);
    return gateway;
  }

  /** Switches stand at the top of the racks in turn; where data networks have sides each switch has one of them, and the management network. */
  private switches(site: string, racks: readonly TableRow<"racks">[], networks: readonly TableRow<"networks">[]): TableRow<"switches">[] {
    const names = this.numbered("switches", `${site} switch`);
    const hasSides = names.length > 1 && networks.some(({ side }) => side === "B");
    const asked = this.given({ ports: "switchPorts", frameBytes: "frameBytes" });
    return names.map((name, index): TableRow<"switches"> => {
      const side = !hasSides ? null : index % 2 === 0 ? "A" : "B";
      const carried = networks.filter((network) => side === null || network.side === null || network.side === undefined || network.side === side);
      const rack = racks[index % Math.max(1, racks.length)];
      const top = Number(rack?.units ?? 0) - Math.floor(index / Math.max(1, racks.length)) * switchUnits;
      const place = rack === undefined || top < 1 ? {} : { rack: rack.rack, bottomUnit: top, units: switchUnits };
      if (rack !== undefined && top >= 1) {
        this.assume("switches", name, "Bottom unit", String(top));
        this.assume("switches", name, "Units", String(switchUnits));
      }
      return { switch: name, site, ...place, feedA: `${site} A`, feedB: `${site} B`, networks: carried.map(({ network }) => network).join(", "), side, ...asked };
    });
  }

  /** The row of the model, or of one that the plan has, its name alone. */
  private modelRow(): TableRow<"models"> {
    const name = this.needed("model");
    if (this.model.find("models", name) !== null) {
      const answered = (Object.keys(sections["The model of its arrays"]) as QuestionKey[]).find((key) => questions[key].suggested === undefined && key !== "model" && this.text(key) !== null);
      if (answered === undefined) return { model: name };
      throw invalid(questions[answered].label, this.text(answered), `${quote(name)} stands in Models already, with all that is said of it. Empty ${questions[answered].label}, or name another model.`);
    }
    const ports = this.count("dataPorts") + this.count("managementPorts");
    const asked = this.given({ bays: "bays", depthMm: "depth", weightKg: "weight", liftKg: "liftKg", watts: "watts" });
    const liftBy = this.choice("liftBy", ["one", "two", "lift table"]);
    return this.withAssumed("models", { model: name, ...asked, liftBy, ports: ports === 0 ? null : String(ports) }, { units: "units", controllers: "controllers" });
  }

  /** The data ports of a controller come first, then those for management alone. */
  private modelPorts({ model = null }: TableRow<"models">): TableRow<"modelPorts">[] {
    const data = this.count("dataPorts");
    return Array.from({ length: data + this.count("managementPorts") }, (_, at): TableRow<"modelPorts"> => ({ model, port: String(at), role: at < data ? "data" : "management" }));
  }

  /** Arrays go into the racks in turn, from the bottom up: the heaviest stands lowest. */
  private arrays(site: string, racks: readonly TableRow<"racks">[], units: number, { model }: TableRow<"models">): TableRow<"arrays">[] {
    const asked = this.given({ drives: "drives", driveSize: "driveSize", scheme: "scheme", spares: "spares" });
    return this.names("arrays", "arrayNames", `${site} array`).map((array, index): TableRow<"arrays"> => {
      const rack = racks[index % Math.max(1, racks.length)];
      const bottom = 1 + Math.floor(index / Math.max(1, racks.length)) * units;
      const isPlaced = rack !== undefined && units > 0 && bottom + units - 1 <= Number(rack.units ?? 0);
      if (isPlaced) this.assume("arrays", array, "Bottom unit", String(bottom));
      return {
        array, site, model: model ?? null, ...(isPlaced && { rack: rack.rack, bottomUnit: bottom }), feedA: `${site} A`, feedB: `${site} B`, ...asked,
        cluster: `${site} cluster`, clusterOrder: index + 1, pool: `${site} pool`,
      };
    });
  }

  /** Names that were answered, or as many as were counted, numbered. */
  private names(counted: QuestionKey, listed: QuestionKey, name: string): string[] {
    const [count, names] = [this.count(counted), splitNames(this.text(listed) ?? "")];
    if (names.length === 0) return this.numbered(counted, name);
    if (names.length === count) return names;
    throw invalid(questions[listed].label, this.text(listed), `${questions[listed].label}: ${names.length} for ${count}. Write one for each, or none.`);
  }

  private numbered(counted: QuestionKey, name: string): string[] {
    return Array.from({ length: this.count(counted) }, (_, index) => `${name} ${index + 1}`);
  }

  private oneEach(key: QuestionKey, count: number): string[] {
    const list = splitNames(this.text(key) ?? "");
    if (list.length === 0 || list.length === count) return list;
    throw invalid(questions[key].label, this.text(key), `${questions[key].label}: ${list.length} for ${count}. Write one for each, or none.`);
  }

  /** Adds to a row what was answered to some questions, or else assumed. */
  private withAssumed<Key extends TableKey, Row extends TableRow<Key>>(key: Key, row: Row, asked: Readonly<Record<string, QuestionKey>>): Row {
    const name = String((row as Readonly<Record<string, Scalar>>)[nameColumn(key)] ?? "");
    const values = Object.entries(asked).map(([column, question]) => {
      const answered = this.value(question);
      const { assumed } = questions[question];
      if (answered !== null || assumed === undefined) return [column, answered] as const;
      const value = this.readAs(question, assumed);
      this.assume(key, name, columnsOf(key).find(([one]) => one === column)![1].header, showCell(value));
      return [column, value] as const;
    });
    return { ...row, ...Object.fromEntries(values) };
  }

  private assume(table: TableKey, named: string, column: string, value: string): void {
    this.assumptions.push({ named, table: tables[table].name, column, value });
  }

  private given<Column extends string>(asked: Readonly<Record<Column, QuestionKey>>): Record<Column, Scalar> {
    return Object.fromEntries(Object.entries<QuestionKey>(asked).map(([column, key]) => [column, this.value(key)])) as Record<Column, Scalar>;
  }

  private needed(key: QuestionKey): string {
    const text = this.text(key);
    if (text === null) throw invalid(questions[key].label, null, `${questions[key].label} is empty. Write it: ${questions[key].help[0]!.toLowerCase()}${questions[key].help.slice(1)}`);
    return text;
  }

  private count(key: QuestionKey): number {
    const number = Number(this.readAs(key, this.text(key) ?? "0"));
    if (number > mostRows) throw invalid(questions[key].label, number, `${questions[key].label}: ${number} is more than ${mostRows}. Bring more in as a list.`);
    return number;
  }

  private choice<Word extends string>(key: QuestionKey, words: readonly Word[]): Word | null {
    const read = this.value(key);
    return words.find((word) => word === read) ?? null;
  }

  private text(key: QuestionKey): string | null {
    const text = (this.answers[key] ?? "").trim();
    return text === "" ? null : text;
  }

  /** What a cell gets for an answer: numbers as such, all else as it was typed once it is known that it can be read. */
  private value(key: QuestionKey): Scalar {
    const text = this.text(key);
    return text === null ? null : this.readAs(key, text);
  }

  private readAs(key: QuestionKey, text: string): Scalar {
    const { column, label } = questions[key];
    const read = readCell(text, { ...column, header: label });
    if (typeof read === "number") return read;
    if (typeof read !== "string") return text;
    return column.kind === "date" ? sheetDayOf(read) : read;
  }
}

/** The tables of the set-up that a workbook lacks. */
export function lackingTables(model: PlanModel): TableKey[] {
  return tableKeys.filter((key) => (guidedTables as readonly TableKey[]).includes(key) && model.table(key) === null);
}
