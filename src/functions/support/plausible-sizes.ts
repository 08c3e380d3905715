import { bytes, gigabyte, parsePlausibleSize, terabyte, type Bytes, type PlausibleSize } from "../../planning/quantity";
import { orNoneNorZero } from "./numbers";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";

const plausible = (rule: PlausibleSize): Reader<Bytes> => ({ read: (received, place) => parsePlausibleSize(readScalar(received, place), place, rule) });

/** Reads the size of a drive: a number of TB up to 1000, or text with a unit. */
export const driveSize = plausible({ thing: "drive", most: bytes(1000n * terabyte.bytes), example: "960 GB" });

const largestWrite = bytes(gigabyte.bytes);

/** Reads the size of one write; a blank is null. */
export const writeSize = orNoneNorZero(plausible({ thing: "write", most: largestWrite, example: "256 KiB" }));

/** Reads the bytes that lie together on one drive of a stripe; a blank is null. */
export const stripeUnit = orNoneNorZero(plausible({ thing: "stripe unit", most: largestWrite, example: "64 KiB" }));
