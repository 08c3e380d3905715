import { formatAddress } from "../../addressing";
import { groupBy, switchEnd, type PlanModel, type PoolContents } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { block, type PackBlock, type PackLine } from "../../printouts";
import { canonicalText, foldName, formatPercent, terabytesOf } from "../../text";
import type { ExpandedJob } from "../job";
import { signed, type JobRecords } from "../record";
import { FoundPlan } from "./found-plan";

/** The blocks of a handover pack that say what stands at the site, as its tab found it, and whom to call. */
export class FoundBlocks {
  private readonly found: FoundPlan;

  constructor(
    private readonly model: PlanModel,
    private readonly expanded: ExpandedJob,
    private readonly records: JobRecords,
    /** Says of lists how they came to be: as built, as found. */
    private readonly heading: string,
  ) {
    this.found = new FoundPlan(records, expanded);
  }

  blocks(): PackBlock[] {
    return [this.arrays(), this.layout(), this.toHosts(), this.clusters(), this.ports(), this.hosts(), this.volumes(), this.drives(), ...this.otherSerials()];
  }

  private get arraysHere(): readonly PlanRow<"arrays">[] {
    return this.expanded.places.arrays;
  }

  private get pools(): readonly PoolContents[] {
    return this.model.capacity.pools().filter((pool) => pool.arrays.some((array) => this.arraysHere.includes(array)));
  }

  private ofArray(array: PlanRow<"arrays">, column: "model" | "serial" | "firmware" | "rack" | "bottomUnit" | "feedA" | "feedB" | "pool" | "drives" | "spares"): string {
    return this.found.cell("arrays", array.row, column, String(array[column] ?? ""));
  }

  private arrays(): PackBlock {
    return block(
      `Arrays ${this.heading}`,
      ["Array", "Model", "Serial", "Firmware", "Rack", "Lowest unit", "Feed A", "Feed B"],
      this.arraysHere.map((array) => [array.array, ...(["model", "serial", "firmware", "rack", "bottomUnit", "feedA", "feedB"] as const).map((column) => this.ofArray(array, column))]),
      "No arrays.",
      "What was read on site, as the tab records it. (plan) marks what no step of this job recorded.",
    );
  }

  private layout(): PackBlock {
    const { model } = this;
    return block(
      "Capacity of each array",
      ["Array", "Pool", "Scheme", "Drives", "Spares", "Usable TB", "Reserve TB", "Raw TB"],
      this.arraysHere.flatMap((array) => model.capacity.setsOf(array)).map((set) => {
        const capacity = model.capacity.ofSet(set);
        const sizes = capacity === null ? ["", "", ""] : [capacity.usable, capacity.reserve, capacity.raw].map(terabytesOf);
        if (set.at.table === "driveSets") return [set.label, set.pool, set.scheme?.name ?? "", set.drives ?? "", set.spares ?? "", ...sizes];
        const scheme = this.found.cell("arrays", set.array.row, "scheme", set.scheme?.name ?? "");
        return [set.label, this.ofArray(set.array, "pool"), scheme, this.ofArray(set.array, "drives"), this.ofArray(set.array, "spares"), ...sizes];
      }),
      "No arrays.",
      "The sizes are worked out from the plan; what the array itself showed stands under Measured.",
    );
  }

  private toHosts(): PackBlock {
    const { model } = this;
    const lines = this.pools.map((contents): PackLine => {
      const { pool, arrays, fillLimit } = contents;
      const demand = model.volumes.demands().find((one) => one.contents === contents);
      const given = model.capacity.toHosts(contents);
      const volumes = demand === undefined ? ["", ""] : [terabytesOf(demand.full), terabytesOf(demand.promised)];
      const across = this.found.cell("pools", pool.row, "acrossArrays", pool.acrossArrays === "" ? "none" : pool.acrossArrays);
      const limit = this.found.cell("pools", pool.row, "fillLimit", formatPercent(fillLimit));
      return [pool.pool, across, arrays.map(({ array }) => array).join("\n"), given === null ? "not known" : terabytesOf(given), ...volumes, limit];
    });
    const headers = ["Pool", "Scheme across arrays", "Arrays", "To hosts TB", "Full volumes TB", "Promised TB", "Fill limit"];
    return block("Capacity to hosts", headers, lines, "No pool is planned: hosts have what each array leaves.");
  }

  private clusters(): PackBlock {
    const members = groupBy(this.arraysHere, ({ cluster }) => foldName(cluster));
    const clusters = this.model.rows("clusters").filter(({ cluster }) => members.has(foldName(cluster)));
    return block(
      "Clusters",
      ["Cluster", "Address", "Network", "Arrays of this job"],
      clusters.map(({ cluster, sharedAddress, network, row }) => [
        cluster,
        this.found.cell("clusters", row, "sharedAddress", sharedAddress),
        network,
        members.get(foldName(cluster))!.map(({ array }) => array).join("\n"),
      ]),
      "No cluster.",
    );
  }

  private ports(): PackBlock {
    const { model } = this;
    return block(
      "Addresses",
      ["Array", "Port", "Address", "Network", "Prefix", "Gateway", "MTU", "Switch and port"],
      this.arraysHere.flatMap((array) =>
        model.ports.of(array).map(({ row: port, network }): PackLine => [
          array.array,
          `${port.controller}${port.port}`,
          this.found.cell("ports", port.row, "address", port.address),
          port.network,
          network?.row.prefix ?? "",
          network?.row.gateway ?? "",
          port.mtu ?? network?.mtu ?? "",
          switchEnd(port.switch, port.switchPort),
        ]),
      ),
      "No port in the plan.",
      "Network to Switch and port are as planned; what was read back otherwise stands under Deviations.",
    );
  }

  private hosts(): PackBlock {
    const { model } = this;
    return block(
      "Hosts",
      ["Host", "Groups", "Initiator name", "Addresses"],
      model.rowsWith("hosts", "site", this.expanded.places.site.site).map((host) => [
        host.host,
        host.groups,
        model.hostPorts.initiatorNamesOf(host).join("\n"),
        model.hostPorts.addressesOf(host).map(formatAddress).join("\n"),
      ]),
      "No hosts in the plan.",
      "As planned.",
    );
  }

  private volumes(): PackBlock {
    const { model } = this;
    return block(
      "Volumes and who opens them",
      ["Volume", "Pool", "Opened by", "Size TB", "Provisioning", "Snapshot share", "Purpose"],
      this.pools.flatMap(({ pool }) => model.rowsWith("volumes", "pool", pool.pool)).map(({ volume, pool, size, provisioning, snapshotShare, purpose }): PackLine => {
        const openings = model.volumes.openingsOf(volume).map(({ row: { to, number }, writes }) => `${to}${number === null ? "" : ` as ${number}`}, ${writes ? "read and write" : "read"}`);
        return [volume, pool, openings.join("\n"), size === null ? "" : terabytesOf(size), provisioning === "thin" ? "thin" : "full", formatPercent(snapshotShare ?? 0), purpose];
      }),
      "No volumes in the plan.",
      "As planned.",
    );
  }

  /** Lists drives by bay; of an array whose drives nobody knows one line says so. */
  private drives(): PackBlock {
    const lines = [...groupBy(this.found.drives(this.model), ({ array }) => array)].flatMap(([array, drives]): PackLine[] => {
      const known = drives.filter(({ seen, row }) => seen !== null || (row?.serial ?? "") !== "");
      if (known.length === 0) return [[array.array, `${drives.length} bays`, "not recorded", "", "", "", ""]];
      return drives.map((drive) => [
        array.array,
        [drive.shelf, `bay ${drive.bay}`].filter((part) => part !== "").join(" "),
        this.found.serialOf(drive),
        drive.row?.part ?? "",
        drive.row === null ? "" : this.found.cell("drives", drive.row.row, "firmware", drive.row.firmware, drive.row.firmware === "" ? "" : undefined),
        sizeOf(drive.row),
        drive.row?.fitted ?? "",
      ]);
    });
    return withoutBlankColumns(block(`Drives by bay ${this.heading}`, ["Array", "Bay", "Serial", "Part", "Firmware", "Size TB", "Fitted"], lines, "No drives in the plan."));
  }

  /** Lists serial numbers of what is neither an array nor a drive, such as a controller. */
  private otherSerials(): PackBlock[] {
    const lines = this.found.otherSerials(this.model).map((step) => signed(step, this.records.steps)).map(({ no, stepId, subject, expected, typed }): PackLine => [
      no, stepId, subject, canonicalText(typed.found), expected, canonicalText(typed.by), canonicalText(typed.done, true),
    ]);
    return lines.length === 0 ? [] : [block("Other serial numbers", ["No.", "Step id", "For", "Serial", "Expected", "By", "Done"], lines, "")];
  }

  /** Lists whom to ask and where alerts go, and until when which array is under warranty. */
  contactBlocks(): PackBlock[] {
    const { site } = this.expanded.places;
    const cell = (column: "room" | "contact" | "access" | "alertsTo" | "timeServers" | "nameServers") => this.found.cell("sites", site.row, column, site[column], site[column]);
    return [
      block(
        "Contacts",
        ["Site", "Room", "Contact", "Access and lift", "Alerts to", "Time servers", "Name servers"],
        [[site.site, cell("room"), cell("contact"), cell("access"), cell("alertsTo"), cell("timeServers"), cell("nameServers")]],
        "None in the plan.",
      ),
      block(
        "Warranty",
        ["Array", "Serial", "Warranty until"],
        this.arraysHere.map((array) => [array.array, this.found.cell("arrays", array.row, "serial", array.serial), array.warrantyUntil ?? "not in the plan"]),
        "No arrays.",
      ),
    ];
  }
}

function sizeOf(drive: PlanRow<"drives"> | null): string | number {
  const size = drive?.size ?? null;
  return size === null ? "" : terabytesOf(size);
}

/** Leaves out the columns in which no line says anything. */
function withoutBlankColumns(made: PackBlock): PackBlock {
  const isUsed = made.headers.map((_, at) => made.lines.some((line) => (line[at] ?? "") !== ""));
  return { ...made, headers: made.headers.filter((_, at) => isUsed[at]), lines: made.lines.map((line) => line.filter((_, at) => isUsed[at])) };
}
