import type { Address } from "./address";
import { bitsOf } from "./family";
import { containsPrefix, parsePrefix, Prefix } from "./prefix";
import { registryRows } from "./special-purpose-registry";

/** What a registry says of a flag: true, false, or null where it says "N/A" or nothing. */
export type RegistryFlag = boolean | null;

/** One block of addresses set aside for a purpose. */
export interface SpecialPurpose {
  readonly prefix: Prefix;
  /** Name as the registry writes it, such as Private-Use. */
  readonly name: string;
  /** Document that sets the block aside, such as RFC 1918. */
  readonly source: string;
  /** Month of the allocation, and of its end where it is deprecated. */
  readonly date: string;
  /** May be the source address of a packet. */
  readonly isSource: RegistryFlag;
  /** May be the destination address of a packet. */
  readonly isDestination: RegistryFlag;
  /** May be forwarded by a router between interfaces. */
  readonly isForwardable: RegistryFlag;
  /** May be forwarded beyond one administrative domain. */
  readonly isGloballyReachable: RegistryFlag;
  /** Must be treated specially by every implementation of the protocol. */
  readonly isReservedByProtocol: RegistryFlag;
}

/** The blocks set aside, as the registries list them; see `special-purpose-registry.ts` for their state. */
export const specialPurposes: readonly SpecialPurpose[] = registryRows.flatMap(([blocks, name, source, date, flags]) =>
  blocks.split(", ").map((block) =>
    Object.freeze({
      prefix: parsePrefix(block),
      name,
      source,
      date,
      isSource: flagAt(flags, 0),
      isDestination: flagAt(flags, 1),
      isForwardable: flagAt(flags, 2),
      isGloballyReachable: flagAt(flags, 3),
      isReservedByProtocol: flagAt(flags, 4),
    }),
  ),
);

function flagAt(flags: string, at: number): RegistryFlag {
  return flags[at] === "T" ? true : flags[at] === "F" ? false : null;
}

/** Finds the most specific block that holds all of `prefix`; null where there is none: then it is global unicast. */
export function specialPurposeOf(prefix: Prefix): SpecialPurpose | null {
  let found: SpecialPurpose | null = null;
  for (const block of specialPurposes) {
    if (containsPrefix(block.prefix, prefix) && (found === null || block.prefix.length > found.prefix.length)) found = block;
  }
  return found;
}

/** Does as `specialPurposeOf` for one address. */
export function specialPurposeOfAddress(address: Address): SpecialPurpose | null {
  return specialPurposeOf(new Prefix(address, bitsOf(address.family)));
}
