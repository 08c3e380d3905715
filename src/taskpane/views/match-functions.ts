import type { CatalogueEntry } from "../../functions/catalogue";

type Described = Pick<CatalogueEntry, "id" | "family" | "description"> & { readonly parameters: readonly { readonly name: string; readonly description?: string }[] };

/** What people call things that the help calls otherwise. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  raid: ["redundancy"], mirror: ["redundancy"], mirroring: ["redundancy"], parity: ["redundancy"], erasure: ["redundancy"],
  disk: ["drive"], disks: ["drive"], hdd: ["drive"], ssd: ["solid-state"], ip: ["address"], ips: ["address"], mask: ["subnet"], cidr: ["prefix"],
  cost: ["price"], power: ["watt", "load", "power"], cooling: ["heat"], weight: ["lift"], speed: ["MB/s", "operations"], latency: ["milliseconds"],
};

/** Words of a question that say nothing of what is asked for. */
const small = new Set(["a", "an", "the", "of", "for", "to", "in", "on", "is", "are", "do", "does", "can", "i", "my", "how", "long", "many", "much", "what", "which", "per", "with"]);

/**
 * Finds the functions that speak of every word of `query`, in name, description, family or arguments; small words of a question do not count.
 *
 * Those whose name begins with the query come first, then those whose name holds it, then those whose description speaks of it; else the order of the
 * catalogue stays.
 */
export function matchFunctions<One extends Described>(functions: readonly One[], query: string): readonly One[] {
  const typed = query.toLowerCase().replace(/^[=\s]*(bay\.)?/, "").split(/[\s?]+/).filter((word) => word !== "");
  const telling = typed.filter((word) => !small.has(word));
  const words = telling.length > 0 ? telling : typed;
  if (words.length === 0) return functions;
  const speaksOfAll = (text: string) => words.every((word) => [word, ...(synonyms[word] ?? [])].some((one) => text.includes(one.toLowerCase())));
  const rank = ({ id, family, description }: One) => {
    const at = id.toLowerCase().indexOf(words[0]!);
    return at === 0 ? 0 : at > 0 ? 1 : speaksOfAll(`${id} ${family} ${description}`.toLowerCase()) ? 2 : 3;
  };
  return functions
    .filter(({ id, family, description, parameters }) =>
      speaksOfAll([id, family, description, ...parameters.map((parameter) => `${parameter.name} ${parameter.description ?? ""}`)].join(" ").toLowerCase()))
    .sort((one, other) => rank(one) - rank(other));
}
