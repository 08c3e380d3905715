import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DOMParser, type Element } from "@xmldom/xmldom";
import release from "../../package.json";
import { namespace } from "../../src/workbook/engine/bay-functions";
import { siteFile, siteFolder } from "../support/built-site";

const address = "https://localhost:3000/";
const text = siteFile("manifest.xml");
const root = new DOMParser({ onError: (level, message) => { throw new Error(`${level}: ${message}`); } }).parseFromString(text, "text/xml").documentElement!;

const children = (element: Element): Element[] => [...element.childNodes].filter((node) => node.nodeType === 1) as Element[];
const named = (name: string): Element[] => [...root.getElementsByTagName("*")].filter((one) => one.localName === name);
const only = (name: string, within: Element = root): Element => {
  const found = [...within.getElementsByTagName("*")].filter((one) => one.localName === name);
  expect(found.map((one) => one.localName)).toHaveLength(1);
  return found[0]!;
};
const names = (element: Element): string[] => children(element).map((one) => one.localName!);

describe("the order of elements is the one the schema fixes", () => {
  test("of the add-in", () => {
    expect(names(root)).toEqual([
      "Id", "Version", "ProviderName", "DefaultLocale", "DisplayName", "Description", "IconUrl", "HighResolutionIconUrl", "SupportUrl",
      "Hosts", "Requirements", "DefaultSettings", "Permissions", "VersionOverrides",
    ]);
  });

  test.each([
    ["VersionOverrides", ["Hosts", "Resources"]],
    ["Resources", ["Images", "Urls", "ShortStrings", "LongStrings"]],
    ["AllFormFactors", ["ExtensionPoint"]],
    ["DesktopFormFactor", ["GetStarted", "FunctionFile", "ExtensionPoint"]],
    ["GetStarted", ["Title", "Description", "LearnMoreUrl"]],
    ["Group", ["Label", "Icon", "Control", "Control", "Control"]],
  ])("of %s", (name, expected) => {
    expect(names(only(name))).toEqual(expected);
  });

  test("of the custom functions, of every button and of the host's overrides", () => {
    const point = named("ExtensionPoint").find((one) => one.getAttribute("xsi:type") === "CustomFunctions")!;
    expect(names(point)).toEqual(["Script", "Page", "Metadata", "Namespace"]);
    for (const control of named("Control")) expect(names(control)).toEqual(["Label", "Supertip", "Icon", "Action"]);
    const host = named("Host").find((one) => one.getAttribute("xsi:type") === "Workbook")!;
    expect(names(host)).toEqual(["Runtimes", "AllFormFactors", "DesktopFormFactor"]);
  });
});

describe("resources", () => {
  const declared = ["Image", "Url", "String"].flatMap((name) => named(name)).filter((one) => one.hasAttribute("id"));
  const used = [...root.getElementsByTagName("*")].flatMap((one) => one.getAttribute("resid") ?? []);

  test("every resid that is used is declared once, and every one declared is used", () => {
    const ids = declared.map((one) => one.getAttribute("id")!);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...new Set(used)].sort()).toEqual([...ids].sort());
  });

  test("no resid is longer than 32 characters, no short string than 125, no long one than 250", () => {
    for (const one of declared) expect(one.getAttribute("id")!.length).toBeLessThanOrEqual(32);
    for (const [name, most] of [["ShortStrings", 125], ["LongStrings", 250]] as const) {
      for (const one of children(only(name))) expect(one.getAttribute("DefaultValue")!).toMatch(new RegExp(`^.{1,${most}}$`));
    }
  });

  test("titles are short strings, descriptions long ones, as the schema asks", () => {
    const shorts = children(only("ShortStrings")).map((one) => one.getAttribute("id"));
    const longs = children(only("LongStrings")).map((one) => one.getAttribute("id"));
    for (const one of [...named("Label"), ...named("Title")]) expect(shorts).toContain(one.getAttribute("resid"));
    for (const one of named("Description").filter((each) => each.hasAttribute("resid"))) expect(longs).toContain(one.getAttribute("resid"));
  });
});

describe("addresses", () => {
  const addresses = [...text.matchAll(/DefaultValue="(https?:[^"]*)"/g)].map(([, found]) => found!);

  test("are https and under the address the site is built for", () => {
    expect(addresses.length).toBeGreaterThan(15);
    for (const one of addresses) expect(one.startsWith(address)).toBe(true);
  });

  test("name files that are in the built site", () => {
    const missing = addresses.filter((one) => !existsSync(join(siteFolder, one.slice(address.length))));
    expect(missing).toEqual([]);
  });

  test("no name in double braces is left over", () => {
    expect(text).not.toContain("{{");
    expect(readFileSync(join(siteFolder, "..", "manifest", "manifest.xml"), "utf8")).toContain("{{baseUrl}}");
  });
});

describe("the shared runtime", () => {
  test("runtime, page of the functions, function file and pane are one resid, and the runtime is long-lived", () => {
    const page = only("Page").getElementsByTagName("*")[0]!.getAttribute("resid");
    const pane = named("Action").find((one) => one.getAttribute("xsi:type") === "ShowTaskpane")!;
    expect([only("Runtime").getAttribute("resid"), only("FunctionFile").getAttribute("resid"), children(pane).at(-1)!.getAttribute("resid")]).toEqual([page, page, page]);
    expect(only("Runtime").getAttribute("lifetime")).toBe("long");
  });

  test("the button that shows the pane names it, so that pressing it again brings the same one to the front", () => {
    expect(only("TaskpaneId").textContent).toBe("Baywright");
  });

  test("the namespace is the one of the browser workbook", () => {
    const id = only("Namespace").getAttribute("resid");
    expect(named("String").find((one) => one.getAttribute("id") === id)!.getAttribute("DefaultValue")).toBe(namespace);
  });

  test("every function a button runs is associated by the pane's entry", () => {
    const entry = readFileSync(join(siteFolder, "..", "src", "taskpane", "main.ts"), "utf8");
    const functions = named("FunctionName").map((one) => one.textContent);
    expect(functions).toEqual(["showCheck", "showCommission"]);
    for (const name of functions) expect(entry).toContain(`Office.actions.associate("${name}"`);
  });
});

describe("identity", () => {
  test("the version is that of package.json", () => {
    expect(only("Version").textContent).toBe(release.version);
  });

  test("the id is a UUID", () => {
    expect(only("Id").textContent).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  test("the API sets are those the adapter is written for", () => {
    expect(named("Set").map((one) => [one.getAttribute("Name"), one.getAttribute("MinVersion")])).toEqual([
      ["ExcelApi", "1.12"],
      ["CustomFunctionsRuntime", "1.3"],
      ["SharedRuntime", "1.1"],
    ]);
  });
});

describe("icons", () => {
  const size = (file: string): [number, number] => {
    const bytes = readFileSync(join(siteFolder, "icons", file));
    expect(bytes.subarray(1, 4).toString("latin1")).toBe("PNG");
    return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  };

  test("every icon has the size its name says", () => {
    for (const file of readdirSync(join(siteFolder, "icons"))) {
      const pixels = Number(/-(\d+)\.png$/.exec(file)![1]);
      expect(size(file)).toEqual([pixels, pixels]);
    }
  });

  test("every button has its icon in every size that the ribbon takes", () => {
    for (const icon of named("Icon")) expect(children(icon).map((one) => Number(one.getAttribute("size")))).toEqual([16, 20, 24, 32, 40, 48, 64, 80]);
  });

  test("the add-in's own icon comes in every size the platform asks for", () => {
    const sizes = readdirSync(join(siteFolder, "icons")).flatMap((file) => /^baywright-(\d+)\.png$/.exec(file)?.[1] ?? []);
    expect(sizes.map(Number).sort((a, b) => a - b)).toEqual([16, 20, 24, 32, 40, 48, 64, 80, 128]);
  });

  test("every icon in the manifest has the size it is declared for, and 16, 32 and 80 are there wherever one is asked for", () => {
    for (const icon of named("Icon")) {
      const images = children(icon);
      const declared = images.map((one) => Number(one.getAttribute("size")));
      expect(declared).toEqual(expect.arrayContaining([16, 32, 80]));
      for (const one of images) expect(one.getAttribute("resid")).toMatch(new RegExp(`\\.${one.getAttribute("size")}$`));
    }
    for (const one of named("Image").filter((each) => each.hasAttribute("id"))) {
      expect(one.getAttribute("DefaultValue")).toContain(`-${/\d+$/.exec(one.getAttribute("id")!)![0]}.png`);
    }
  });
});

describe("functions.json beside it", () => {
  const { functions } = JSON.parse(siteFile("functions.json")) as { functions: { id: string; helpUrl: string }[] };

  test("gives every function a help page of the built site", () => {
    expect(functions.length).toBeGreaterThan(50);
    const missing = functions.filter(({ helpUrl }) => !helpUrl.startsWith(address) || !existsSync(join(siteFolder, helpUrl.slice(address.length))));
    expect(missing).toEqual([]);
  });
});
