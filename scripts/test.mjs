// `npm test`: installs what is missing, then runs the tests. Further arguments go to the test runner.
import { ensureInstalled, runPackage } from "./ensure-installed.mjs";

ensureInstalled();
process.exitCode = runPackage("jest/bin/jest.js", process.argv.slice(2));
