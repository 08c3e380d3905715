// Serves dist/ on this machine only.
import { createServer } from "node:http";
import { createServer as createSecureServer } from "node:https";
import sirv from "sirv";

const address = "127.0.0.1";

/**
 * Serves `folder` on 127.0.0.1 and answers with the server and its address: on `preferred`, or on any free port where that is taken.
 *
 * With a `certificate` (cert and key as text) it is https, as localhost and on `preferred` alone, and the spreadsheet program on the web may
 * read from it. A request whose Host header names another machine is refused: a page elsewhere cannot reach in by pointing its name here.
 */
export async function serve(folder, preferred = 3000, certificate = null) {
  const setHeaders = (response) => {
    response.setHeader("X-Content-Type-Options", "nosniff");
    if (certificate !== null) response.setHeader("Access-Control-Allow-Origin", "*");
  };
  const files = sirv(folder, { gzip: true, etag: true, setHeaders });
  const answer = (request, response) => {
    const { port } = server.address();
    if (![`${address}:${port}`, `localhost:${port}`].includes(request.headers.host ?? "")) return end(response, 403, "This server answers only to its own address.");
    if (request.method !== "GET" && request.method !== "HEAD") return end(response, 405, "This server only hands out files.");
    files(request, response, () => end(response, 404, "There is no such page."));
  };
  const server = certificate === null ? createServer(answer) : createSecureServer(certificate, answer);
  await listen(server, preferred).catch((fault) => {
    if (certificate !== null || (fault.code !== "EADDRINUSE" && fault.code !== "EACCES")) throw fault;
    return listen(server, 0);
  });
  return { server, url: certificate === null ? `http://${address}:${server.address().port}/` : `https://localhost:${server.address().port}/` };
}

function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, address, () => {
      server.off("error", reject);
      resolve();
    });
  });
}

function end(response, status, text) {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8" });
  response.end(`${text}\n`);
}
