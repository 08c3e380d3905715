// Serves dist/ on this machine only.
import { once } from "node:events";
import { readFile, realpath, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { join, sep } from "node:path";
import { lookup } from "mrmime";

const address = "127.0.0.1";

/**
 * Serves `folder` on 127.0.0.1 and answers with the server and its address; fails with a sentence where `port` cannot be had, as what a
 * browser keeps of a plan belongs to the port.
 *
 * With a `certificate` (cert and key as text) it is https, as localhost, and the spreadsheet program on the web may read from it. A request
 * whose Host header names another machine is refused: a page elsewhere cannot reach in by pointing its name here. Files are handed out whole
 * and are read before anything is answered, so that whatever is wrong with a request or a file ends that request alone.
 */
export async function serve(folder, port = 3000, certificate = null) {
  const root = await realpath(folder);
  const [scheme, name] = certificate === null ? ["http", address] : ["https", "localhost"];
  const read = readOnce();
  /** How a browser names a machine and the port here: the usual one of the scheme is left out. */
  const placeOf = (machine) => new URL(`${scheme}://${machine}:${server.address().port}`).host;
  const answer = async (request, response) => {
    const { host, ...rest } = request.headers;
    const own = placeOf(name);
    if (![placeOf(address), placeOf("localhost")].includes(host ?? "")) return end(response, 403, "This server answers only to its own address.");
    if (request.method !== "GET" && request.method !== "HEAD") return end(response, 405, "This server only hands out files.", { Allow: "GET, HEAD" });
    const path = pathOf(request.url);
    if (path === null) return end(response, 400, "That address cannot be read.");
    // One machine under two names would keep two sets of plans.
    if (certificate === null && host !== own) return end(response, 308, `The workbook is at ${scheme}://${own}/.`, { Location: `${scheme}://${own}${request.url}` });
    const found = await find(root, path, read);
    if (found === null) return end(response, 404, "There is no such page.");
    const { bytes, changed } = found;
    const headers = { ...headersOf(path), ...(certificate !== null && { "Access-Control-Allow-Origin": "*" }), "Last-Modified": changed };
    if (rest["if-modified-since"] === changed) return response.writeHead(304, headers).end();
    response.writeHead(200, { ...headers, "Content-Type": typeOf(found.path), "Content-Length": bytes.length }).end(request.method === "HEAD" ? undefined : bytes);
  };
  const safely = (request, response) => {
    answer(request, response).catch(() => (response.headersSent ? response.destroy() : end(response, 503, "That page cannot be read now. Try again in a moment.")));
  };
  const server = certificate === null ? createServer(safely) : createSecureServer(certificate, safely);
  await listen(server, port);
  return { server, url: `${scheme}://${name}:${server.address().port}/` };
}

/** The headers of docs/nginx.conf.example, but for the one that asks for https. */
function headersOf(path) {
  const program = ["https://*.officeapps.live.com", "https://*.office.com", "https://*.office365.com", "https://*.microsoft365.com", "https://*.cloud.microsoft", "https://*.sharepoint.com"];
  const frames = ["'self'", ...(path === "/taskpane.html" ? program : [])];
  const camera = path.startsWith("/step/") ? "(self)" : "()";
  const cache = /^\/(step\/)?[\w-]+\.[0-9a-f]{10}\.\w+$/.test(path) ? "public, max-age=31536000, immutable" : path.startsWith("/icons/") ? "public, max-age=86400" : "no-cache";
  return {
    "Content-Security-Policy": `frame-ancestors ${frames.join(" ")}`,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": `camera=${camera}, geolocation=(), microphone=(), payment=(), usb=()`,
    "Cache-Control": cache,
    ...(path === "/functions.json" && { "Access-Control-Allow-Origin": "*" }),
  };
}

/** Reads the path out of what a request asks for; null where that is no path. */
function pathOf(url) {
  try {
    const path = decodeURIComponent(new URL(`http://${address}${url}`).pathname);
    return url.startsWith("/") && !path.includes("\0") ? path : null;
  } catch {
    return null;
  }
}

/** Reads files once and again where they have changed: however many ask for one and take their time, it is in memory once. */
function readOnce() {
  const files = new Map();
  return (path, { mtimeMs, size }) => {
    const known = files.get(path);
    if (known?.mtimeMs === mtimeMs && known.size === size) return known.bytes;
    const bytes = readFile(path);
    files.set(path, { mtimeMs, size, bytes });
    bytes.catch(() => files.delete(path));
    return bytes;
  };
}

/** Reads the file of the folder that a path means; null where there is none, and where a link leads to it. */
async function find(root, path, read) {
  for (const name of [path, `${path}/index.html`]) {
    const wanted = join(root, name);
    const real = await realpath(wanted).catch(() => null);
    // Where a link is on the way, or a way out of the folder, it is another place that the file is at.
    if (real !== wanted || !real.startsWith(root + sep)) continue;
    const facts = await stat(real);
    if (facts.isFile()) return { path: real, bytes: await read(real, facts), changed: facts.mtime.toUTCString() };
  }
  return null;
}

function typeOf(path) {
  const type = lookup(path) ?? "application/octet-stream";
  return type === "text/html" ? `${type}; charset=utf-8` : type;
}

const refusals = {
  EADDRINUSE: (port) => `Port ${port} is in use. Stop what uses it, or set PORT to another, such as ${port + 1}.`,
  EACCES: (port) => `Port ${port} is kept from you by this machine. Set PORT to another, such as 3000.`,
  ERR_SOCKET_BAD_PORT: () => "PORT is no port. Set it to a whole number from 1 to 65535, such as 3000.",
};

async function listen(server, port) {
  try {
    server.listen(port, address);
    await once(server, "listening");
  } catch (fault) {
    throw new Error(refusals[fault.code]?.(port) ?? fault.message, { cause: fault });
  }
}

function end(response, status, text, headers = {}) {
  response.writeHead(status, { ...headers, "Content-Type": "text/plain; charset=utf-8", "Content-Security-Policy": "frame-ancestors 'self'", "X-Content-Type-Options": "nosniff" });
  response.end(`${text}\n`);
}
