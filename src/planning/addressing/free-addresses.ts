import type { Address } from "./address";
import { addressOfWords, type AddressRanges } from "./ranges";
import { compareWords, copyWords, stepUp } from "./words";

/** Walks through the addresses of disjoint ranges, lowest first, one at a time. */
export class FreeAddresses {
  private readonly here: Uint32Array;
  private range = 0;
  private fresh = true;

  constructor(private readonly ranges: AddressRanges) {
    this.here = new Uint32Array(ranges.width);
  }

  /** Takes the lowest address not taken yet; null where none is left. */
  take(): Address | null {
    const { ranges, here } = this;
    const { width, family } = ranges;
    if (this.range === ranges.count) return null;
    if (this.fresh) copyWords(ranges.first, this.range * width, here, 0, width);
    else stepUp(here, 0, width);
    this.fresh = compareWords(here, 0, ranges.last, this.range * width, width) === 0;
    if (this.fresh) this.range++;
    return addressOfWords(here, 0, family);
  }
}
