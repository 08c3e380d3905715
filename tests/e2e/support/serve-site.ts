import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import sirv from "sirv";

/** Serves a folder on any free port of this machine. */
export function serveSite(folder: string): Promise<{ server: Server; url: string }> {
  const files = sirv(folder, { gzip: true });
  const server = createServer((request, response) => {
    files(request, response, () => {
      response.writeHead(404).end();
    });
  });
  return new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () => {
      resolve({ server, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` });
    });
  });
}
