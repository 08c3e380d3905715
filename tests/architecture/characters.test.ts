import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

const source = join(__dirname, "..", "..", "src");

/** What people may type or the check of secrets reads, which is never shown by us. */
const onlyRead = /^planning\/(?:checks\/secret-(?:words|text)|plan\/read\/read-cell)\.ts$/;

/** Beyond ASCII and Latin-1 (ISO/IEC 8859-1) all fonts of the common systems have these: they are of the Windows Glyph List 4 (from memory). */
const common = new Set("–—‘’“”„•…‹›→−■▲●►▼");

/** Stand for what is no character, and are written into files, not shown. */
const noCharacters = new Set("\uFFFD\uFFFF");

/** The texts of a file that a page could show: a script without its comments, any other file as it is. */
function shownTexts(path: string): string {
  const text = readFileSync(path, "utf8");
  if (!path.endsWith(".ts")) return text;
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) texts.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.ES2022));
  return texts.join("\n");
}

test("every character that our texts, cells and pictures use is one that all common fonts have, so that nobody sees an empty box", () => {
  const files = readdirSync(source, { recursive: true }).map(String).filter((name) => /\.(?:ts|css|html|json|svg)$/.test(name) && !onlyRead.test(name));
  expect(files.length).toBeGreaterThan(500);
  const isRare = (letter: string) => letter.codePointAt(0)! > 0xff && !common.has(letter) && !noCharacters.has(letter);
  const rare = files.flatMap((name) => [...new Set(shownTexts(join(source, name)))].filter(isRare).map((letter) => `${name}: ${letter}`));
  expect(rare).toEqual([]);
});
