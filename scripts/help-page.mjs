// Turns one Markdown page of docs/ into a page of the built site.
import { marked } from "marked";

const style = `
  :root { color-scheme: light dark; --ink: #1d2b33; --paper: #fdfcf9; --line: #c9d3d6; --accent: #0b5f6b; --block: #eff3f2; }
  @media (prefers-color-scheme: dark) { :root { --ink: #e6ecec; --paper: #182024; --line: #45545a; --accent: #7cc7d1; --block: #222c31; } }
  body { margin: 0 auto; max-width: 52rem; padding: 1.5rem 1rem 4rem; background: var(--paper); color: var(--ink); font: 1rem/1.55 system-ui, sans-serif; }
  nav { border-bottom: 1px solid var(--line); padding-bottom: .5rem; }
  a { color: var(--accent); }
  h1, h2, h3 { line-height: 1.2; margin-top: 2rem; }
  table { border-collapse: collapse; display: block; overflow-x: auto; }
  th, td { border: 1px solid var(--line); padding: .3rem .6rem; text-align: left; vertical-align: top; }
  code { font: .9em/1.4 ui-monospace, monospace; }
  pre { background: var(--block); border: 1px solid var(--line); border-radius: 4px; overflow-x: auto; padding: .7rem .9rem; }
  img { border: 1px solid var(--line); max-width: 100%; }
`;

/** Makes the HTML of a page; links between Markdown pages become links between HTML pages. `depth` counts the folders above it. */
export function helpPage(markdown, depth) {
  const up = "../".repeat(depth);
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? "Baywright help";
  const body = marked.parse(markdown).replace(/(<a href="(?!https?:)[^"#]*)\.md(#[^"]*)?"/g, '$1.html$2"');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · Baywright</title>
<style>${style}</style>
</head>
<body>
<nav><a href="${up}index.html">Baywright help</a> · <a href="${up}functions/index.html">Functions</a></nav>
<main>
${body}</main>
</body>
</html>
`;
}
