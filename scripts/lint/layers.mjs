// Reads layers.json, the one table of who may import whom. The lint rule and tests/architecture both ask it here.
import { existsSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";

export const projectRoot = join(import.meta.dirname, "..", "..");

/**
 * One room of the house. Rows stand in order: nobody imports from a row below its own.
 * @typedef {object} Layer
 * @property {string} folder Folder or file, from the root; the longest one that a path begins with is the row of that path.
 * @property {string} is What lives there.
 * @property {"pure" | "functions" | "page" | "node"} environment Which tsconfig.*.json holds it.
 * @property {boolean} [joins] Whether it may choose an adapter of the workbook port.
 * @property {string[]} mayImport Folders and files beside its own, and "all before" for every row above it.
 * @property {string[]} packages Names of packages, of scopes, or "node:" for what comes with Node.
 */

/** @type {readonly Layer[]} */
export const layers = JSON.parse(readFileSync(join(projectRoot, "layers.json"), "utf8"));

/**
 * Tells whether `path` is `folder` or lies in it.
 * @param {string} path
 * @param {string} folder
 */
const within = (path, folder) => path === folder || path.startsWith(`${folder}/`);

/**
 * Finds the row of a file, or of a folder; undefined where there is none.
 * @param {string} path Path from the root, with forward slashes.
 * @returns {Layer | undefined}
 */
export function layerOf(path) {
  return layers.filter(({ folder }) => within(path, folder)).sort((a, b) => b.folder.length - a.folder.length)[0];
}

/**
 * Tells whether others come into a room through its index.ts alone: so it is in every room that needs no host.
 * @param {Layer} layer
 */
export function hasIndex(layer) {
  return layer.environment === "pure";
}

/**
 * Turns what stands in an import into the path of a file from the root; the name of a package stays as it is.
 * @param {string} file
 * @param {string} imported
 */
export function resolveImport(file, imported) {
  if (!imported.startsWith(".")) return imported;
  const path = posix.join(posix.dirname(file), imported);
  return [path, `${path}.ts`, `${path}/index.ts`].find((one) => /\.[a-z]+$/.test(one) && existsSync(join(projectRoot, one))) ?? path;
}

/**
 * Says what is wrong with an import of a file below src, in one sentence; nothing where it is right.
 * @param {string} file Importing file, from the root.
 * @param {string} imported What stands in the import.
 * @returns {string | undefined}
 */
export function importFault(file, imported) {
  const own = layerOf(file);
  if (own === undefined) return `${file} has no row in layers.json: add one for its folder.`;
  const target = resolveImport(file, imported);
  if (target === imported) {
    const allowed = own.packages.some((name) => (name.endsWith(":") ? target.startsWith(name) : within(target, name)));
    return allowed ? undefined : `${own.folder} may not import ${imported}: layers.json lists its packages.`;
  }
  const other = layerOf(target);
  if (other === own) return undefined;
  const before = own.mayImport.includes("all before") && other !== undefined && layers.indexOf(other) < layers.indexOf(own);
  if (!before && !own.mayImport.some((folder) => within(target, folder))) return `${own.folder} may not import ${target}: layers.json says what it may.`;
  if (other !== undefined && hasIndex(other) && target !== `${other.folder}/index.ts`) return `Import ${other.folder} through its index.ts.`;
  return undefined;
}
