import { addressAt, addressValue, compareAddresses } from "./address";
import { bitsOf, type Family } from "./family";
import { Prefix } from "./prefix";

/**
 * The free space of a prefix as aligned blocks, from which subnets are cut first fit.
 *
 * The first free aligned subnet of a length always begins a block: the lowest one that is large enough. What is left of that block
 * beyond the subnet is one block of each length in between.
 */
export class FreeBlocks {
  /** Blocks by length; each list descends, so that its lowest block is the last. */
  private readonly byLength: Prefix[][];

  /** `blocks` are disjoint and in address order, as `coverByPrefixes` lists them. */
  constructor(
    private readonly family: Family,
    blocks: readonly Prefix[],
  ) {
    this.byLength = Array.from({ length: bitsOf(family) + 1 }, () => []);
    for (let i = blocks.length - 1; i >= 0; i--) this.byLength[blocks[i]!.length]!.push(blocks[i]!);
  }

  /** Cuts the first free aligned subnet of `length`; null where nothing holds it. */
  take(length: number): Prefix | null {
    let lowest: Prefix | null = null;
    for (let at = 0; at <= length; at++) {
      const block = this.byLength[at]!.at(-1);
      if (block !== undefined && (lowest === null || compareAddresses(block.first, lowest.first) < 0)) lowest = block;
    }
    if (lowest === null) return null;
    this.byLength[lowest.length]!.pop();
    // They lie below every other block of their lengths: those begin behind the one that was cut.
    for (let rest = lowest.length + 1; rest <= length; rest++) this.byLength[rest]!.push(this.upperHalf(lowest, rest));
    return new Prefix(lowest.first, length);
  }

  /** Makes the upper half of the block of `length` − 1 at the start of `block`. */
  private upperHalf(block: Prefix, length: number): Prefix {
    const value = addressValue(block.first) + (1n << BigInt(bitsOf(this.family) - length));
    return new Prefix(addressAt(this.family, value), length);
  }
}
