// Stands in a page for the module of Node by which the writer makes its streams small.
import { zlibSync } from "fflate";

/** Compresses bytes by RFC 1950. */
export const deflateSync = (bytes: Uint8Array): Uint8Array => zlibSync(bytes);

export default { deflateSync };
