import { demandTerabytes, drivesFor, layoutDrives, parseScheme, usableBytes, yearsUntilFull } from "../capacity";
import { bytes, exactDecimal, share, sizeIn, terabyte, type Bytes } from "../quantity";
import { orNull } from "../plan/model";
import type { Design, Needs } from "./read-options";

/** What a design holds against the needs: the lines of the sheet of the same names. */
export interface DesignCapacity {
  readonly arrays: number;
  readonly toHosts: Bytes;
  /** Years until the data reaches the fill limit; null where it never does. */
  readonly fullAfterYears: number | null;
}

/** Computes what hosts need after so many years, in TB. */
export function dataAfter(needs: Needs, years: number): number {
  return demandTerabytes(growing(needs), years).toNumber();
}

/** Computes how many arrays a design has, what hosts can store on them and when it is full; refuses drives and schemes that do not go together. */
export function capacityOfDesign(needs: Needs, { scheme, drives, driveSize, spares, across, arrays }: Design): DesignCapacity {
  const usable = usableBytes(layoutDrives(scheme, drives, spares ?? 0), driveSize, share(0));
  const over = across ?? parseScheme("none", "Across arrays");
  const target = bytes(BigInt(demandTerabytes(growing(needs), needs.years).times(1e12).ceil().toFixed(0)));
  const counted = arrays ?? drivesFor(over, { target, driveSize: usable, spares: 0, reserve: share(0), fill: needs.fillLimit });
  const toHosts = usableBytes(layoutDrives(over, counted, 0), usable, share(0));
  return { arrays: counted, toHosts, fullAfterYears: orNull(() => yearsUntilFull(growing(needs), toHosts, needs.fillLimit)) };
}

/** Computes what may be filled of a capacity to hosts, in TB. */
export function limitTerabytes({ fillLimit }: Needs, toHosts: Bytes): number {
  return sizeIn(toHosts, terabyte).times(exactDecimal(fillLimit)).toNumber();
}

/** What hosts store now, and by which share it grows each year. */
function growing({ dataNow, growth }: Needs) {
  return { used: dataNow, yearlyGrowth: growth };
}
