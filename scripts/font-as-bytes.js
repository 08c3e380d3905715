// Gives the tests a font as the builds do: as its bytes.
module.exports = {
  process: (_text, path) => ({ code: `module.exports = { __esModule: true, default: new Uint8Array(require("node:fs").readFileSync(${JSON.stringify(path)})) };` }),
};
