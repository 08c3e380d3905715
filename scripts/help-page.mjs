// Turns the Markdown pages of docs/ into pages of the built site, and into what the search among them looks through.
import { marked, Marked } from "marked";

const policy = "default-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'";

/** What a heading is called in a link: small letters, without marks, blanks as hyphens. */
function anchorOf(heading) {
  return plain(heading).toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, "").trim().replace(/\s+/g, "-");
}

/** Gives a line of Markdown without its marks. */
function plain(markdown) {
  return markdown.replace(/!?\[([^\]]*)\]\([^)]*\)/g, "$1").replace(/[*`]+/g, "");
}

const pages = new Marked({
  renderer: {
    heading({ tokens, depth, text }) {
      return `<h${depth} id="${anchorOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
  },
});

/** Makes the HTML of a page; links between Markdown pages become links between HTML pages. `depth` counts the folders above it. */
export function helpPage(markdown, depth) {
  const up = "../".repeat(depth);
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? "Baywright help";
  const body = pages.parse(markdown).replace(/(<a href="(?!https?:)[^"#]*)\.md(#[^"]*)?"/g, '$1.html$2"');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${title} · Baywright</title>
<link rel="stylesheet" href="${up}help.css">
</head>
<body>
<nav><a href="${up}index.html">Baywright help</a><a href="${up}functions/index.html">Functions</a>
<form role="search" action="${up}search.html"><input type="search" name="q" aria-label="Search the help"><button>Search</button></form></nav>
<main>
${body}</main>
</body>
</html>
`;
}

/** Lists the sections of a page, each with its place, its headings and its text. `page` is its path among the pages, without an ending. */
export function helpSections(page, markdown) {
  const title = plain(/^# (.+)$/m.exec(markdown)?.[1] ?? page);
  const sections = [];
  for (const token of marked.lexer(markdown)) {
    if (token.type === "heading" || sections.length === 0) sections.push({ id: `${page}.html`, title, heading: "", text: "" });
    const section = sections.at(-1);
    if (token.type !== "heading") section.text += `${textOf(token)} `;
    else if (token.depth > 1) Object.assign(section, { id: `${page}.html#${anchorOf(token.text)}`, heading: plain(token.text) });
  }
  return sections.map((section) => ({ ...section, text: section.text.replace(/\s+/g, " ").trim() })).filter(({ heading, text }) => `${heading}${text}` !== "");
}

function textOf(token) {
  if (token.type === "code") return token.text;
  if (token.type === "table") return [token.header, ...token.rows].flat().map(({ text }) => plain(text)).join(" ");
  if (token.type === "list") return token.items.map(textOf).join(" ");
  return token.tokens?.length > 0 && token.type !== "paragraph" ? token.tokens.map(textOf).join(" ") : plain(token.text ?? "");
}
