import { formatAddress, parseControllerNames, readAddress } from "../../addressing";
import { fillTemplate, foldName, parseTemplate } from "../../text";
import type { JobPlaces, Network, PlanModel } from "../model";
import { isForOther, once, oncePer, usualMtu } from "../model";
import type { PlanRow } from "../read";
import { forEachOf, type ForEach } from "../schema";
import {
  deriveArrayFields, deriveControllerFields, deriveDriveFields, deriveFeedFields, deriveHostFields, deriveHostPortFields, deriveJobFields, deriveNetworkFields, derivePortFields,
  deriveShelfFields, deriveSwitchFields, deriveVolumeFields, firstController,
} from "./derived-fields";
import { layerOf, layerOfFields, lookupIn, scopeOf, type Layer, type Scope } from "./scope";

type ArrayRow = PlanRow<"arrays">;

/** One thing that a section is done for. */
export interface Subject {
  /** Made of row ids, so that a new name does not part a record from its step. */
  readonly id: string;
  /** What people call it. */
  readonly label: string;
  readonly scope: Scope;
}

/**
 * Lists what a section of a job is repeated for, in table order.
 *
 * site: the job's; rack, feed: those of its arrays and their shelves; network, switch: those that ports of its arrays are in and plugged into;
 * as long as nothing is placed or cabled, those of the site;
 * host, host port: those of the site, and of ports those that are for data; volume: those of the pools of its arrays; cluster, pool: those whose home
 * array is in the job, so that each has its steps once in the whole plan; live cluster: those that others use already and its arrays join; array,
 * shelf, controller, port, drive (by bay, those of the chassis before those of shelves), prompt (those of the array's model, in their order): array by
 * array. A port with an address of each family is two rows.
 */
export class JobSubjects {
  private readonly lists: Readonly<Record<ForEach, () => readonly Subject[]>> = {
    site: () => [{ id: "site", label: this.places.site.site, scope: scopeOf("site", this.outer) }],
    rack: () => this.racks().map((rack) => named("rack", rack.rack, scopeOf("rack", { ...this.outer, Rack: layerOf("Rack", rack) }))),
    switch: () => this.switches(),
    feed: () => this.feeds(),
    network: () => this.networks().map((network) => named("network", network.row.network, scopeOf("network", { ...this.outer, Network: networkLayer(network) }))),
    host: () => this.hosts().map((host) => named("host", host.host, scopeOf("host", { ...this.outer, Host: this.hostLayer(host) }))),
    "host port": () => this.hosts().flatMap((host) => this.hostPorts(host)),
    volume: () => this.volumes(),
    shelf: () => this.places.arrays.flatMap((array) => this.shelves(array)),
    cluster: () => this.clusters((cluster) => this.isHere(this.model.places.homeOfCluster(cluster))),
    "live cluster": () => this.clusters((cluster) => this.places.arrays.some((array) => foldName(array.cluster) === foldName(cluster) && this.isLive(array))),
    pool: () => this.pools(),
    array: () => this.places.arrays.map((array) => ({ id: idOf(array), label: array.array, scope: scopeOf("array", this.layersOf(array)) })),
    controller: () => this.places.arrays.flatMap((array) => this.controllers(array)),
    port: () => this.places.arrays.flatMap((array) => this.ports(array)),
    drive: () => this.places.arrays.flatMap((array) => this.drives(array)),
    prompt: () => this.places.arrays.flatMap((array) => this.prompts(array)),
  };

  private readonly outer: Readonly<Record<"Site" | "Job", Layer>>;

  private readonly layersOf = oncePer((array: ArrayRow) => {
    const cluster = this.model.find("clusters", array.cluster);
    return {
      ...this.outer,
      Array: layerOf("Array", array, deriveArrayFields(this.model, this.places, array)),
      Pool: layerOf("Pool", this.model.find("pools", array.pool)),
      Cluster: layerOf("Cluster", cluster),
      Rack: layerOf("Rack", this.model.find("racks", array.rack)),
      Network: networkLayer(this.networkOf(cluster)),
    };
  });

  constructor(
    private readonly model: PlanModel,
    private readonly places: JobPlaces,
    private readonly job: PlanRow<"jobs">,
  ) {
    this.outer = { Site: layerOf("Site", places.site), Job: layerOf("Job", job, deriveJobFields(model, places)) };
  }

  /** Lists the subjects of a section; one that says nothing in For each is about the site. */
  readonly list = oncePer((forEach: ForEach | ""): readonly Subject[] => this.lists[forEachOf(forEach)]());

  private readonly racks = once((): readonly PlanRow<"racks">[] => this.usedOrAll("racks", this.devices().map(({ rack }) => this.model.find("racks", rack))));

  /** The arrays of the job, each followed by its shelves: what stands in a rack and hangs on feeds. */
  private readonly devices = once(() => this.places.arrays.flatMap((array) => [array, ...this.model.rowsWith("shelves", "array", array.array)]));

  private readonly portRows = once(() => this.places.arrays.flatMap((array) => this.model.ports.of(array)));

  private readonly hosts = once(() => this.model.rowsWith("hosts", "site", this.places.site.site));

  /** Lists the rows of a table that are in use, in the order of the table; where none is, those of the site. */
  private usedOrAll<Key extends "racks" | "switches" | "feeds">(table: Key, inUse: readonly (PlanRow<Key> | null)[]): readonly PlanRow<Key>[] {
    const used = new Set(inUse);
    const found = this.model.rows(table).filter((row) => used.has(row));
    return found.length > 0 ? found : this.model.rows(table).filter(({ site }) => foldName(site) === foldName(this.places.site.site));
  }

  private clusters(isMeant: (cluster: string) => boolean): Subject[] {
    return this.model.rows("clusters").flatMap((cluster): Subject[] => {
      if (!isMeant(cluster.cluster)) return [];
      const layers = { ...this.outer, Cluster: layerOf("Cluster", cluster), Network: networkLayer(this.networkOf(cluster)) };
      const id = `${lowestId(this.model.rowsWith("arrays", "cluster", cluster.cluster))}.cluster`;
      return [{ id, label: cluster.cluster, scope: scopeOf("cluster", layers) }];
    });
  }

  private pools(): Subject[] {
    return this.model.rows("pools").flatMap((pool): Subject[] => {
      const members = this.model.capacity.arraysIn(pool);
      if (members.length === 0 || !this.isHere(this.model.places.homeOfPool(pool))) return [];
      const cluster = this.model.find("clusters", pool.cluster);
      const layers = { ...this.outer, Pool: layerOf("Pool", pool), Cluster: layerOf("Cluster", cluster), Network: networkLayer(this.networkOf(cluster)) };
      return [{ id: `${lowestId(members)}.pool`, label: pool.pool, scope: scopeOf("pool", layers) }];
    });
  }

  private switches(): Subject[] {
    return this.usedOrAll("switches", this.portRows().map(({ to }) => to)).map((row) => {
      const layers = { ...this.outer, Switch: layerOf("Switch", row, deriveSwitchFields(this.model, row)), Rack: layerOf("Rack", this.model.find("racks", row.rack)) };
      return named("switch", row.switch, scopeOf("switch", layers));
    });
  }

  private feeds(): Subject[] {
    const rows = this.usedOrAll("feeds", this.devices().flatMap((device) => this.model.power.feedsOf(device)));
    return rows.map((row) => named("feed", row.feed, scopeOf("feed", { ...this.outer, Feed: layerOf("Feed", row, deriveFeedFields(this.model, row)) })));
  }

  private networks(): readonly Network[] {
    const used = new Set(this.portRows().map(({ network }) => network));
    const found = this.model.networks.all().filter((network) => used.has(network));
    return found.length > 0 ? found : this.model.networks.ofSite(this.places.site.site);
  }

  /** Lists the ports of a host that are for data: those of its rows in Host ports, else the addresses of its row. */
  private hostPorts(host: PlanRow<"hosts">): Subject[] {
    const rows = this.model.hostPorts.of(host);
    const number = numberRepeats();
    return this.model.hostPorts.endsOf(host).flatMap((end, index): Subject[] => {
      if (isForOther(end.network)) return [];
      const row = rows[index]?.row ?? null;
      const mtu = row?.mtu ?? end.network?.mtu ?? usualMtu;
      const shown = { Host: host.host, Network: end.network?.row.network ?? "", Address: end.address === null ? "" : formatAddress(end.address), MTU: String(mtu) };
      const layers = {
        ...this.outer,
        "Host port": layerOf("Host port", row, { ...shown, ...deriveHostPortFields(this.model, this.places, end, mtu) }),
        Host: this.hostLayer(host),
        Network: networkLayer(end.network),
      };
      const port = row !== null && row.card !== "" ? row.card : shown.Network;
      const label = [host.host, ...(port === "" ? [] : [port]), ...(readAddress(shown.Address)?.family === 6 ? ["IPv6"] : [])].join(" ");
      return [{ id: number(`host port.${foldName(host.host)}.${foldName(port)}`, "."), label, scope: scopeOf("host port", layers) }];
    });
  }

  private hostLayer(host: PlanRow<"hosts">): Layer {
    return layerOf("Host", host, deriveHostFields(this.model, this.places, host));
  }

  private volumes(): Subject[] {
    const pools = new Set(this.places.arrays.flatMap((array) => this.model.find("pools", array.pool) ?? []));
    return this.model.rows("volumes").flatMap((row): Subject[] => {
      const pool = this.model.find("pools", row.pool);
      if (pool === null || !pools.has(pool)) return [];
      const layers = {
        ...this.outer,
        Volume: layerOf("Volume", row, deriveVolumeFields(this.model, row)),
        Pool: layerOf("Pool", pool),
        Cluster: layerOf("Cluster", this.model.find("clusters", pool.cluster)),
      };
      return [named("volume", row.volume, scopeOf("volume", layers))];
    });
  }

  private shelves(array: ArrayRow): Subject[] {
    const number = numberRepeats();
    return this.model.rowsWith("shelves", "array", array.array).map((shelf) => {
      const layers = { ...this.layersOf(array), Shelf: layerOf("Shelf", shelf, deriveShelfFields(shelf, this.job.subject)), Rack: layerOf("Rack", this.model.find("racks", shelf.rack)) };
      return { id: number(`${idOf(array)}.shelf ${foldName(shelf.shelf)}`, "."), label: `${array.array} ${shelf.shelf}`, scope: scopeOf("shelf", layers) };
    });
  }

  private controllers(array: ArrayRow): Subject[] {
    if (array.controllers === "") return [];
    return parseControllerNames(array.controllers, "Controllers").map((name, at) => ({
      id: `${idOf(array)}.${name}`,
      label: `${array.array} ${name}`,
      scope: scopeOf("controller", { ...this.layersOf(array), Controller: layerOfFields("Controller", deriveControllerFields(array, name, at === 0, this.job.subject)) }),
    }));
  }

  private ports(array: ArrayRow): Subject[] {
    const first = foldName(firstController(this.model, array));
    const number = numberRepeats();
    return this.model.rowsWith("ports", "array", array.array).map((port) => {
      const network = this.model.networks.named(port.network);
      const isFirst = foldName(port.controller) === first;
      const isVersion6 = readAddress(port.address)?.family === 6;
      const layers = {
        ...this.layersOf(array),
        Port: layerOf("Port", port, derivePortFields(this.model, array, port, network, isFirst)),
        Controller: layerOfFields("Controller", deriveControllerFields(array, port.controller, isFirst, this.job.subject)),
        Network: networkLayer(network),
      };
      const id = `${idOf(array)}.${port.controller}.${port.port}${isVersion6 ? ".v6" : ""}`;
      return { id: number(id, "."), label: `${array.array} ${port.controller}${port.port}${isVersion6 ? " IPv6" : ""}`, scope: scopeOf("port", layers) };
    });
  }

  private drives(array: ArrayRow): Subject[] {
    const number = numberRepeats();
    return this.model.drives.expectedIn(array).map((drive) => {
      const { shelf, bay, row } = drive;
      const shown = { Array: array.array, Shelf: shelf, Bay: String(bay), ...deriveDriveFields(array, drive, this.job.subject) };
      return {
        id: number(`${idOf(array)}.${shelf === "" ? "" : `${foldName(shelf)}.`}bay-${bay}`, "."),
        label: [array.array, shelf, `bay ${bay}`].filter((part) => part !== "").join(" "),
        scope: scopeOf("drive", { ...this.layersOf(array), Drive: layerOf("Drive", row, shown) }),
      };
    });
  }

  private prompts(array: ArrayRow): Subject[] {
    const ofArray = scopeOf("array", this.layersOf(array));
    const number = numberRepeats();
    const rows = [...this.model.rowsWith("prompts", "model", array.model)];
    rows.sort((a, b) => (a.order ?? Infinity) - (b.order ?? Infinity) || a.row - b.row);
    return rows.map((prompt) => {
      const argument = `Prompt ${prompt.prompt}`;
      const value = fillTemplate(parseTemplate(prompt.value, argument), lookupIn(ofArray, argument));
      return {
        id: number(`${idOf(array)}.prompt ${foldName(prompt.prompt)}`, " "),
        label: `${array.array}: ${prompt.prompt}`,
        scope: scopeOf("prompt", { ...this.layersOf(array), Prompt: layerOf("Prompt", prompt, { Value: value }) }),
      };
    });
  }

  private isLive(array: ArrayRow): boolean {
    return this.model.places.isLive(array, this.places.arrays) === true;
  }

  private isHere(home: ArrayRow | null): boolean {
    return home !== null && this.places.arrays.includes(home);
  }

  private networkOf(cluster: PlanRow<"clusters"> | null): Network | null {
    return cluster === null ? null : this.model.networks.named(cluster.network);
  }
}

function networkLayer(network: Network | null): Layer {
  return layerOf("Network", network?.row ?? null, deriveNetworkFields(network));
}

/** A subject that has no id of its own: it is known by its name. */
function named(kind: string, name: string, scope: Scope): Subject {
  return { id: `${kind}.${foldName(name)}`, label: name, scope };
}

/** Makes a function that leaves the first of equal ids as it is and numbers those that come after it: `x`, `x.2`, `x.3`. */
function numberRepeats(): (id: string, mark: string) => string {
  const seen = new Map<string, number>();
  return (id, mark) => {
    const count = (seen.get(id) ?? 0) + 1;
    seen.set(id, count);
    return count === 1 ? id : `${id}${mark}${count}`;
  };
}

/** Names an array for good: by its id, and by its name as long as set-up has given it none. */
export function idOf({ id, array }: ArrayRow): string {
  return id === "" ? `~${foldName(array)}` : id;
}

function lowestId(arrays: readonly ArrayRow[]): string {
  return arrays.map(idOf).sort()[0] ?? "";
}
