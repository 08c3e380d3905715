// Stands in a page for the module of Node by which the writer makes its streams small.
import { Buffer } from "buffer";
import { zlibSync } from "fflate";

/** Compresses bytes by RFC 1950. The writer takes byte arrays of Node's kind for bytes, and any other one for text. */
const deflateSync = (bytes: Uint8Array): Buffer => {
  const { buffer, byteOffset, length } = zlibSync(bytes);
  return Buffer.from(buffer, byteOffset, length);
};

export default { deflateSync };
