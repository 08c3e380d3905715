import type { Server } from "node:http";

/** Closes the server of the built site. */
export default function tearDown(): void {
  (globalThis as { site?: Server }).site?.close();
}
