import type { Layout } from "../capacity";
import { noAnswer } from "../text";
import { exactDecimal, hours, megabyte, secondsPerHour, sizeIn, type Bytes, type Decimal, type Hours, type MegabytesPerSecond, type Share } from "../quantity";

/** Computes the hours that moving `size` takes at `rate`. */
export function moveHours(size: Bytes, rate: MegabytesPerSecond): Hours {
  return hours(seconds(size, rate).div(secondsPerHour).toNumber());
}

/**
 * Computes the hours that rebuilding one failed drive takes, when drives give the share `given` of their rate to it.
 *
 * Groups: the new drive is written from end to end, size / rate; a scheme spread over no more drives than a stripe takes is such a group.
 * Spread over more: all n - 1 survivors read the k parts of every stripe and write one into room kept free among them,
 * size · (k + 1) / ((n - 1) · rate). No answer for a scheme without redundancy.
 */
export function rebuildHours(layout: Layout, driveSize: Bytes, driveRate: MegabytesPerSecond, given: Share): Hours {
  const { scheme, data, members, redundancy } = layout;
  if (redundancy === 0) {
    throw noAnswer("scheme", scheme.name, `scheme ${scheme.name} has nothing to rebuild a drive from. Write a scheme with redundancy, such as "RAID 6".`);
  }
  const one = seconds(driveSize, driveRate).div(exactDecimal(given)).div(secondsPerHour);
  const isSpread = scheme.grouping === "spread" && members > data + redundancy;
  return hours((isSpread ? one.times(data + 1).div(members - 1) : one).toNumber());
}

function seconds(size: Bytes, rate: MegabytesPerSecond): Decimal {
  return sizeIn(size, megabyte).div(exactDecimal(rate));
}
