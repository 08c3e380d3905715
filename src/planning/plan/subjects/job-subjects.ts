import { parseControllerNames, readAddress } from "../../addressing";
import { fillTemplate, foldName, parseTemplate } from "../../text";
import type { JobPlaces, Network, PlanModel } from "../model";
import { oncePer } from "../model";
import type { PlanRow } from "../read";
import { forEachOf, type ForEach } from "../schema";
import { deriveArrayFields, deriveControllerFields, deriveNetworkFields, derivePortFields, firstController } from "./derived-fields";
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
 * site: the job's; cluster, pool: those whose home array is in the job, so that each has its steps once in the whole plan; array,
 * controller, port, drive (by bay, those of the chassis before those of shelves), prompt (those of the array's model, in their order): array by array. A port with an address of
 * each family is two rows.
 */
export class JobSubjects {
  private readonly lists: Readonly<Record<ForEach, () => readonly Subject[]>> = {
    site: () => [{ id: "site", label: this.places.site.site, scope: scopeOf("site", this.outer) }],
    cluster: () => this.clusters(),
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
      Array: layerOf("Array", array, deriveArrayFields(this.model, array)),
      Pool: layerOf("Pool", this.model.find("pools", array.pool)),
      Cluster: layerOf("Cluster", cluster),
      Rack: layerOf("Rack", this.model.find("racks", array.rack)),
      Network: networkLayer(this.networkOf(cluster)),
    };
  });

  constructor(
    private readonly model: PlanModel,
    private readonly places: JobPlaces,
    job: PlanRow<"jobs">,
  ) {
    this.outer = { Site: layerOf("Site", places.site), Job: layerOf("Job", job) };
  }

  /** Lists the subjects of a section; one that says nothing in For each is about the site. */
  list(forEach: ForEach | ""): readonly Subject[] {
    return this.lists[forEachOf(forEach)]();
  }

  private clusters(): Subject[] {
    return this.model.rows("clusters").flatMap((cluster): Subject[] => {
      if (!this.isHere(this.model.places.homeOfCluster(cluster.cluster))) return [];
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

  private controllers(array: ArrayRow): Subject[] {
    if (array.controllers === "") return [];
    return parseControllerNames(array.controllers, "Controllers").map((name, at) => ({
      id: `${idOf(array)}.${name}`,
      label: `${array.array} ${name}`,
      scope: scopeOf("controller", { ...this.layersOf(array), Controller: layerOfFields("Controller", deriveControllerFields(name, at === 0)) }),
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
        Controller: layerOfFields("Controller", deriveControllerFields(port.controller, isFirst)),
        Network: networkLayer(network),
      };
      const id = `${idOf(array)}.${port.controller}.${port.port}${isVersion6 ? ".v6" : ""}`;
      return { id: number(id, "."), label: `${array.array} ${port.controller}${port.port}${isVersion6 ? " IPv6" : ""}`, scope: scopeOf("port", layers) };
    });
  }

  private drives(array: ArrayRow): Subject[] {
    const number = numberRepeats();
    return this.model.drives.expectedIn(array).map(({ shelf, bay, row }) => ({
      id: number(`${idOf(array)}.${shelf === "" ? "" : `${foldName(shelf)}.`}bay-${bay}`, "."),
      label: [array.array, shelf, `bay ${bay}`].filter((part) => part !== "").join(" "),
      scope: scopeOf("drive", { ...this.layersOf(array), Drive: layerOf("Drive", row, { Array: array.array, Shelf: shelf, Bay: String(bay) }) }),
    }));
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
        label: array.array,
        scope: scopeOf("prompt", { ...this.layersOf(array), Prompt: layerOf("Prompt", prompt, { Value: value }) }),
      };
    });
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
function idOf({ id, array }: ArrayRow): string {
  return id === "" ? `~${foldName(array)}` : id;
}

function lowestId(arrays: readonly ArrayRow[]): string {
  return arrays.map(idOf).sort()[0] ?? "";
}
