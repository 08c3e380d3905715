import { foldName, invalid, noAnswer, quote } from "../text";
import type { Address } from "./address";
import { FreeAddresses } from "./free-addresses";
import { freeBesideKept, type KeptAddress } from "./kept";
import { formatPrefix, type Prefix } from "./prefix";
import type { AddressRanges } from "./ranges";

/** A name that is to be given an address, and the row it was found in. */
export interface Named {
  readonly value: string;
  readonly row: number;
}

/** A name and the address it has already. */
export interface KeptPair extends KeptAddress {
  readonly name: string;
}

/**
 * Gives every name an address of `prefix`, in the order of the names.
 *
 * A kept pair never moves; the others get the lowest free address each. An address kept by a name that is not on the list stays
 * taken, so that taking a name off the list for a while moves nothing. Passes over what `assignableRanges` leaves out and over
 * `reserved`. Refuses a name or a kept name given twice and kept addresses that cannot stand; no answer where the prefix is full.
 */
export function assignAddresses(prefix: Prefix, names: readonly Named[], kept: readonly KeptPair[], reserved: AddressRanges): Address[] {
  const places = new Map<string, number>();
  names.forEach(({ value: name, row }, place) => {
    const folded = foldName(name);
    places.set(folded, place);
    if (places.size > place) return;
    const earlier = names.find((one) => foldName(one.value) === folded)!;
    throw invalid(`names row ${row}`, name, `names row ${row} ${quote(name)} stands in row ${earlier.row} already. Give each name once.`);
  });
  const free = new FreeAddresses(freeBesideKept(prefix, reserved, kept));
  const assigned = new Array<Address | undefined>(names.length).fill(undefined);
  const strangers = new Map<string, number>();
  for (const { name, address, row } of kept) {
    const folded = foldName(name);
    const place = places.get(folded);
    const stranger = place === undefined ? strangers.get(folded) : undefined;
    if (stranger !== undefined || (place !== undefined && assigned[place] !== undefined)) {
      throw invalid(`kept row ${row}`, name, `kept row ${row} gives ${quote(name)} a second address. Keep one address for each name.`);
    }
    if (place === undefined) strangers.set(folded, row);
    else assigned[place] = address;
  }
  return assigned.map((address, place) => address ?? free.take() ?? refuseFull(prefix, names[place]!));
}

function refuseFull(prefix: Prefix, { value: name, row }: Named): never {
  throw noAnswer("prefix", name, `prefix ${formatPrefix(prefix)} has no free address left for ${quote(name)} in names row ${row}. Give a larger one.`);
}
