// Reads the built manifest with the vendor's own reader and holds what it finds against this release. The vendor's full validation is a service
// on the internet (`npx office-addin-manifest validate dist/manifest.xml`); order of elements, references and lengths are held by a test.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import manifests from "office-addin-manifest";

const root = join(import.meta.dirname, "..");
const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const read = await manifests.OfficeAddinManifest.readManifestFile(join(root, "dist", "manifest.xml"));

const faults = [
  [/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(read.id), `The id ${read.id} is no UUID`],
  [read.version === version, `The version ${read.version} is not that of this release, ${version}`],
  [read.officeAppType === "TaskPaneApp", `The kind ${read.officeAppType} is not TaskPaneApp`],
  [read.hosts?.join() === "Workbook", `The hosts ${read.hosts?.join()} are not Workbook alone`],
  [read.permissions === "ReadWriteDocument", `The permission ${read.permissions} is not ReadWriteDocument`],
  ...["iconUrl", "highResolutionIconUrl", "supportUrl"].map((name) => [isHttps(read[name]), `${name} ${read[name]} is no https address`]),
  [isHttps(read.defaultSettings?.sourceLocation), `The page ${read.defaultSettings?.sourceLocation} is no https address`],
].flatMap(([holds, fault]) => (holds ? [] : [fault]));

for (const fault of faults) console.error(fault);
console.log(faults.length === 0 ? "The vendor's reader takes the manifest" : `${faults.length} faults in dist/manifest.xml`);
process.exitCode = faults.length === 0 ? 0 : 1;

function isHttps(address) {
  return URL.canParse(address) && new URL(address).protocol === "https:";
}
