import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import packages from "../../package-lock.json";
import { siteFile, siteFolder } from "../support/built-site";
import { projectRoot, sourceFiles } from "../support/source-files";

/** Ways to run text as code, or to put cell text into a page as markup. */
function dangers(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if ((ts.isCallExpression(node) || ts.isNewExpression(node)) && ts.isIdentifier(node.expression) && ["eval", "Function"].includes(node.expression.text)) found.push(node.expression.text);
    if (ts.isPropertyAccessExpression(node) && ["innerHTML", "outerHTML", "insertAdjacentHTML", "createContextualFragment", "write", "writeln", "setHTMLUnsafe"].includes(node.name.text)) {
      const owner = node.expression.getText(source);
      if (!node.name.text.startsWith("write") || owner === "document") found.push(`${owner}.${node.name.text}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe("our code", () => {
  test("runs no text as code and writes no markup", () => {
    expect(sourceFiles("src").flatMap((file) => dangers(file, readFileSync(join(projectRoot, file), "utf8")).map((one) => `${file}: ${one}`))).toEqual([]);
  });

  test("would be caught doing so", () => {
    const text = `eval("1"); new Function("a"); Function("b"); cell.innerHTML = x; a.insertAdjacentHTML("x", y); document.write(z); stream.write(q);`;
    expect(dangers("x.ts", text)).toEqual(["eval", "Function", "Function", "cell.innerHTML", "a.insertAdjacentHTML", "document.write"]);
  });
});

describe("the built pages", () => {
  const pages = ["index.html", "taskpane.html", "step/index.html", "help/search.html", "help/start.html"];
  const policyOf = (page: string) => /Content-Security-Policy" content="([^"]*)"/.exec(siteFile(page))?.[1] ?? "";

  test.each(pages)("%s has a policy that allows no eval, no inline script, and scripts of no other host but the host library's", (page) => {
    const directives = Object.fromEntries(policyOf(page).split(";").map((one) => [one.trim().split(" ")[0]!, one.trim().split(" ").slice(1)]));
    const scripts = directives["script-src"] ?? directives["default-src"]!;
    expect(scripts.filter((one) => one !== "'self'")).toEqual(page === "taskpane.html" ? ["https://appsforoffice.microsoft.com"] : []);
    expect(directives["connect-src"]!.filter((one) => !["'self'", "data:", "blob:"].includes(one))).toEqual([]);
    expect(Object.values(directives).flat().filter((one) => one.includes("*") || one.includes("unsafe-eval"))).toEqual([]);
    // The grid puts styles into the page; the pane needs none.
    expect(Object.values(directives).flat().includes("'unsafe-inline'")).toBe(page === "index.html");
  });

  test.each(pages)("%s names no file by another host's address but the host library", (page) => {
    const outside = [...siteFile(page).matchAll(/(?:src|href)="?(https?:[^" >]*)/g)].map(([, address]) => address);
    expect(outside).toEqual(page === "taskpane.html" ? ["https://appsforoffice.microsoft.com/lib/1/hosted/office.js"] : []);
  });

  test("functions.js and the pane's own files hold no eval", () => {
    const scripts = readdirSync(siteFolder).filter((file) => file === "functions.js" || /^taskpane\.\w+\.js$/.test(file));
    expect(scripts).toHaveLength(2);
    for (const file of scripts) expect(dangers(file, siteFile(file)).filter((one) => one === "eval" || one === "Function")).toEqual([]);
  });
});

describe("licences", () => {
  const allowed = ["0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "ISC", "MIT"];
  const shipped = [...siteFile("licences.txt").matchAll(/^(\S+) (\d+\.\d+\.\d+\S*): (.+)$/gm)].map(([, name, version, licence]) => ({ name: name!, version: version!, licence: licence! }));

  test("of every package whose code ships are among the allowed, and go along with it", () => {
    expect(shipped.length).toBeGreaterThan(80);
    expect(shipped.filter(({ licence }) => !allowed.includes(licence))).toEqual([]);
    expect(shipped.map(({ name }) => name)).toEqual(expect.arrayContaining(["decimal.js", "ipaddr.js", "@univerjs/core", "fflate", "saxes", "@fluentui/web-components"]));
  });

  test("stand beside the release that the lock file pins", () => {
    const pinned = new Map(Object.entries(packages.packages as Record<string, { version?: string }>).map(([path, { version }]) => [path, version]));
    for (const { name, version } of shipped) {
      const versions = [...pinned].filter(([path]) => path.endsWith(`node_modules/${name}`)).map(([, one]) => one);
      expect([name, versions]).toEqual([name, expect.arrayContaining([version])]);
    }
  });
});

describe("dependencies", () => {
  const { dependencies, devDependencies } = packages.packages[""];

  test("are asked for by exact version", () => {
    for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) expect([name, version]).toEqual([name, expect.stringMatching(/^\d+\.\d+\.\d+$/)]);
  });

  test("that run a script when they are installed are known, and none of them ships", () => {
    const installed = Object.entries(packages.packages as Record<string, { hasInstallScript?: boolean }>);
    const scripted = installed.filter(([, one]) => one.hasInstallScript === true).map(([path]) => path.replace(/^.*node_modules\//, ""));
    const ships = new Set([...siteFile("licences.txt").matchAll(/^(\S+) \d/gm)].map(([, name]) => name));
    expect(scripted.filter((name) => ships.has(name))).toEqual([]);
  });
});
