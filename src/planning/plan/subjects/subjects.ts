import { parseControllerNames, readAddress } from "../../addressing";
import { foldName } from "../../text";
import { rowsOf, type PlanRow } from "../read";
import { deriveArrayFields, deriveNetworkFields, derivePortFields, firstController } from "./derived-fields";
import type { FeedLoads } from "../model";
import { homeOfCluster, homeOfPool, type JobPlaces } from "../model";
import type { PlanLookup } from "../model";
import { layerOf, layerOfFields, lookupIn, type Layer, type Scope } from "./scope";
import { fillTemplate, parseTemplate } from "../../text";

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
 * controller, port, drive (bays 1 to n), prompt (those of the array's model, in their order): array by array. A port with an address of
 * each family is two rows.
 */
export class JobSubjects {
  private readonly outer: Scope;
  private readonly arrayScopes = new Map<ArrayRow, Scope>();

  constructor(
    private readonly lookup: PlanLookup,
    private readonly places: JobPlaces,
    private readonly loads: FeedLoads,
    job: PlanRow<"jobs">,
  ) {
    this.outer = [layerOf("Site", "sites", places.site), layerOf("Job", "jobs", job)];
  }

  list(forEach: string): readonly Subject[] {
    switch (forEach) {
      case "cluster":
        return this.clusters();
      case "pool":
        return this.pools();
      case "array":
        return this.places.arrays.map((array) => ({ id: idOf(array), label: array.array, scope: this.arrayScope(array) }));
      case "controller":
        return this.places.arrays.flatMap((array) => this.controllers(array));
      case "port":
        return this.places.arrays.flatMap((array) => this.ports(array));
      case "drive":
        return this.places.arrays.flatMap((array) => this.drives(array));
      case "prompt":
        return this.places.arrays.flatMap((array) => this.prompts(array));
      default:
        return [{ id: "site", label: this.places.site?.site ?? "", scope: this.outer }];
    }
  }

  private clusters(): Subject[] {
    return rowsOf(this.lookup.plan, "clusters").flatMap((cluster) => {
      const home = homeOfCluster(this.lookup, cluster.cluster);
      if (home === null || !this.places.arrays.includes(home)) return [];
      const scope = [layerOf("Cluster", "clusters", cluster), this.networkLayer(cluster.network), ...this.outer];
      return [{ id: `${lowestId(this.lookup.rowsWhere("arrays", "cluster", cluster.cluster))}.cluster`, label: cluster.cluster, scope }];
    });
  }

  private pools(): Subject[] {
    return rowsOf(this.lookup.plan, "pools").flatMap((pool) => {
      const home = homeOfPool(this.lookup, pool);
      const members = this.lookup.rowsWhere("arrays", "pool", pool.pool);
      if (home === null || members.length === 0 || !this.places.arrays.includes(home)) return [];
      const cluster = this.lookup.find("clusters", "cluster", pool.cluster);
      const scope = [layerOf("Pool", "pools", pool), layerOf("Cluster", "clusters", cluster), this.networkLayer(cluster?.network ?? ""), ...this.outer];
      return [{ id: `${lowestId(members)}.pool`, label: pool.pool, scope }];
    });
  }

  private controllers(array: ArrayRow): Subject[] {
    if (array.controllers === "") return [];
    return parseControllerNames(array.controllers, "Controllers").map((name, index) => ({
      id: `${idOf(array)}.${name}`,
      label: `${array.array} ${name}`,
      scope: [layerOfFields("Controller", { Controller: name, "First controller": index === 0 ? "yes" : "no" }), ...this.arrayScope(array)],
    }));
  }

  private ports(array: ArrayRow): Subject[] {
    const first = foldName(firstController(this.lookup, array));
    const seen = new Map<string, number>();
    return this.lookup.rowsWhere("ports", "array", array.array).map((port) => {
      const network = this.lookup.find("networks", "network", port.network);
      const isFirst = foldName(port.controller) === first;
      const family = readAddress(port.address)?.family === 6 ? ".v6" : "";
      const id = `${idOf(array)}.${port.controller}.${port.port}${family}`;
      const earlier = seen.get(id) ?? 0;
      seen.set(id, earlier + 1);
      const [arrayLayer, ...wider] = this.arrayScope(array);
      const scope = [
        layerOf("Port", "ports", port, derivePortFields(port, network, isFirst)),
        layerOfFields("Controller", { Controller: port.controller, "First controller": isFirst ? "yes" : "no" }),
        arrayLayer!,
        ...wider.filter(({ name }) => name !== "Network" && name !== "Site" && name !== "Job"),
        layerOf("Network", "networks", network, deriveNetworkFields(network)),
        ...this.outer,
      ];
      return { id: earlier === 0 ? id : `${id}.${earlier + 1}`, label: `${array.array} ${port.controller}${port.port}${family === "" ? "" : " IPv6"}`, scope };
    });
  }

  private drives(array: ArrayRow): Subject[] {
    return Array.from({ length: array.drives ?? 0 }, (_, index) => ({
      id: `${idOf(array)}.bay-${index + 1}`,
      label: `${array.array} bay ${index + 1}`,
      scope: [layerOfFields("Drive", { Bay: String(index + 1) }), ...this.arrayScope(array)],
    }));
  }

  private prompts(array: ArrayRow): Subject[] {
    const scope = this.arrayScope(array);
    const seen = new Map<string, number>();
    const rows = array.model === "" ? [] : [...this.lookup.rowsWhere("prompts", "model", array.model)];
    rows.sort((a, b) => (a.order ?? Infinity) - (b.order ?? Infinity) || a.row - b.row);
    return rows.map((prompt) => {
      const argument = `Prompt ${prompt.prompt}`;
      const value = fillTemplate(parseTemplate(prompt.value, argument), lookupIn(scope, argument));
      const name = foldName(prompt.prompt);
      const earlier = seen.get(name) ?? 0;
      seen.set(name, earlier + 1);
      return {
        id: `${idOf(array)}.prompt ${name}${earlier === 0 ? "" : ` ${earlier + 1}`}`,
        label: array.array,
        scope: [layerOf("Prompt", "prompts", prompt, { Value: value }), ...scope],
      };
    });
  }

  private arrayScope(array: ArrayRow): Scope {
    let scope = this.arrayScopes.get(array);
    if (scope === undefined) {
      const pool = this.lookup.find("pools", "pool", array.pool);
      const cluster = this.lookup.find("clusters", "cluster", array.cluster);
      const rack = this.lookup.find("racks", "rack", array.rack);
      scope = [
        layerOf("Array", "arrays", array, deriveArrayFields(this.lookup, array, this.loads.describe(array))),
        layerOf("Pool", "pools", pool),
        layerOf("Cluster", "clusters", cluster),
        layerOf("Rack", "racks", rack),
        this.networkLayer(cluster?.network ?? ""),
        ...this.outer,
      ];
      this.arrayScopes.set(array, scope);
    }
    return scope;
  }

  private networkLayer(name: string): Layer {
    const network = this.lookup.find("networks", "network", name);
    return layerOf("Network", "networks", network, deriveNetworkFields(network));
  }
}

/** Names an array for good: by its id, and by its name as long as set-up has given it none. */
function idOf({ id, array }: ArrayRow): string {
  return id === "" ? `~${foldName(array)}` : id;
}

function lowestId(arrays: readonly ArrayRow[]): string {
  return arrays.map(idOf).sort()[0] ?? "";
}
