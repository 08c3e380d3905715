import { noAnswer } from "../text";
import { coverByPrefixes } from "./cover";
import { FreeBlocks } from "./free-blocks";
import { formatPrefix, type Prefix } from "./prefix";
import { rangesOfPrefixes, type AddressRanges } from "./ranges";
import { refuseShorter } from "./split";
import { subtractRanges } from "./subtract";

/** Divides what of a prefix is not taken into the fewest aligned blocks. */
export function freeBlocks(prefix: Prefix, taken: AddressRanges): FreeBlocks {
  return new FreeBlocks(prefix.family, coverByPrefixes(subtractRanges(rangesOfPrefixes(prefix.family, [prefix]), taken)));
}

/** Finds the first aligned subnet of `length` in a prefix that meets nothing taken. No answer where there is none. */
export function findFreeSubnet(prefix: Prefix, length: number, taken: AddressRanges): Prefix {
  refuseShorter(prefix, length);
  const found = freeBlocks(prefix, taken).take(length);
  if (found !== null) return found;
  throw noAnswer("prefix", formatPrefix(prefix), `prefix ${formatPrefix(prefix)} has no free /${length} left. Give a larger one, or a longer length.`);
}
