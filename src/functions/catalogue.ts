import * as addresses from "./addresses";
import * as capacity from "./capacity";
import * as durability from "./durability";
import * as facility from "./facility";
import metadata from "./functions.json";
import * as price from "./price";
import * as rates from "./rates";
import * as resilience from "./resilience";

/** One parameter of a worksheet function, as the sheet's help shows it. */
export interface ParameterDescription {
  readonly name: string;
  readonly description: string;
  readonly optional?: boolean;
  readonly dimensionality?: string;
  readonly type?: string;
}

/** One worksheet function: what the sheet shows of it, its family, and the code behind it. */
export interface WorksheetFunction {
  /** Name after `BAY.`, such as `USABLE`. */
  readonly id: string;
  readonly family: string;
  readonly description: string;
  readonly parameters: readonly ParameterDescription[];
  readonly call: (...args: never[]) => unknown;
}

const families: Readonly<Record<string, object>> = {
  Capacity: capacity,
  "Rate and time": rates,
  Durability: durability,
  Addresses: addresses,
  Resilience: resilience,
  Facility: facility,
  Price: price,
};

const described = new Map(metadata.functions.map((one) => [one.id, one]));

/**
 * Every worksheet function, family by family in the order of the code.
 *
 * The id of a function is its code name in capitals (`hostCount` is `HOSTCOUNT`); its help comes from the generated description.
 */
export const catalogue: readonly WorksheetFunction[] = Object.entries(families).flatMap(([family, module]) =>
  Object.entries(module).map(([name, call]) => {
    const id = name.toUpperCase();
    const help = described.get(id);
    if (help === undefined) throw new Error(`${id} has no description: run npm run metadata`);
    return { id, family, description: help.description, parameters: help.parameters, call: call as WorksheetFunction["call"] };
  }),
);
