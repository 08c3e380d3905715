import type { CatalogueEntry } from "../../functions/catalogue";

type Described = Pick<CatalogueEntry, "id" | "family" | "description"> & { readonly parameters: readonly { readonly name: string }[] };

/**
 * Finds the functions that speak of every word of `query`, in name, description, family or arguments.
 *
 * Those whose name begins with the query come first, then those whose name holds it; else the order of the catalogue stays.
 */
export function matchFunctions<One extends Described>(functions: readonly One[], query: string): readonly One[] {
  const words = query.toLowerCase().replace(/^[=\s]*(bay\.)?/, "").split(/\s+/).filter((word) => word !== "");
  if (words.length === 0) return functions;
  const rank = ({ id }: One) => {
    const at = id.toLowerCase().indexOf(words[0]!);
    return at === 0 ? 0 : at > 0 ? 1 : 2;
  };
  return functions
    .filter(({ id, family, description, parameters }) => {
      const text = [id, family, description, ...parameters.map(({ name }) => name)].join(" ").toLowerCase();
      return words.every((word) => text.includes(word));
    })
    .sort((one, other) => rank(one) - rank(other));
}
