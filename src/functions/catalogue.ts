import * as addresses from "./addresses";
import * as capacity from "./capacity";
import * as durability from "./durability";
import * as facility from "./facility";
import * as price from "./price";
import * as rates from "./rates";
import * as resilience from "./resilience";
import type { Declaration, WorksheetFunction } from "./support/worksheet-function";

/** A family of functions: one module of this folder, and the guide that shows them at work. */
interface Family {
  readonly name: string;
  /** Page of docs/, and what it is called. */
  readonly guide: readonly [page: string, title: string];
  readonly functions: Readonly<Record<string, WorksheetFunction>>;
}

/** Every family, in the order of the help. */
export const families: readonly Family[] = [
  { name: "Capacity", guide: ["quoting.md", "Quoting guide"], functions: capacity },
  { name: "Rate and time", guide: ["quoting.md", "Quoting guide"], functions: rates },
  { name: "Durability", guide: ["quoting.md", "Quoting guide"], functions: durability },
  { name: "Addresses", guide: ["addresses.md", "Address plan guide"], functions: addresses },
  { name: "Resilience", guide: ["failure-domains.md", "Failure-domain guide"], functions: resilience },
  { name: "Facility", guide: ["failure-domains.md", "Failure-domain guide"], functions: facility },
  { name: "Price", guide: ["pricing.md", "Pricing guide"], functions: price },
];

/** One entry of the catalogue: what is declared of a function, its family, and the function itself. */
export interface CatalogueEntry extends Declaration {
  readonly family: string;
  readonly call: WorksheetFunction;
}

/** Every worksheet function, family by family, in the order of their names: the one list that help, host and tests walk. */
export const catalogue: readonly CatalogueEntry[] = families.flatMap((family) =>
  Object.values(family.functions)
    .map((call) => ({ ...call.declaration, family: family.name, call }))
    .sort((a, b) => (a.id < b.id ? -1 : 1)),
);
