import MiniSearch, { type SearchResult } from "minisearch";

/** A section of a page of the help, as the build lists it. */
export interface Section {
  /** Address of the page, and of the heading in it. */
  readonly id: string;
  readonly title: string;
  /** Blank for what stands above the first heading of a page. */
  readonly heading: string;
  readonly text: string;
}

/** A section that was found, with those of its words that made it so. */
export interface Hit {
  readonly section: Section;
  readonly terms: readonly string[];
}

/** What is asked in words that stand on no page: each is looked for as the pages say it. */
const asThePagesSay: Readonly<Record<string, string>> = {
  disk: "drive", disks: "drives", hdd: "drive", hdds: "drives", ssds: "ssd", lun: "volume", luns: "volumes", cidr: "prefix", ip: "address", ips: "addresses", nic: "port", nics: "ports",
  ups: "feed", psu: "supply", psus: "supplies", ru: "units", vat: "tax", excel: "spreadsheet", print: "paper", mobile: "phone", login: "accounts",
};

/** Words of a question that say nothing of what is asked for. */
const small = new Set(["a", "an", "the", "of", "for", "to", "in", "on",
  "is", "are", "do", "does", "can", "i", "my", "how", "what", "which", "with", "and", "or", "it", "long", "much", "many", "take", "takes"]);

/** How much of a word may be mistyped: short words are too much like others. */
const slip = (term: string): number | false => (term.length > 4 ? 0.3 : false);

/**
 * Makes a search among sections of the help: best first.
 *
 * All words of a question count, or what begins with them; where no section has them all, words with a slip or two of the keyboard count too, and then
 * sections with some of the words.
 */
export function searchAmong(sections: readonly Section[]): (query: string) => readonly Hit[] {
  const byId = new Map(sections.map((section) => [section.id, section]));
  const index = new MiniSearch<Section>({
    fields: ["title", "heading", "text"],
    processTerm: (term) => (small.has(term.toLowerCase()) ? null : term.toLowerCase()),
    searchOptions: {
      boost: { title: 3, heading: 4 },
      prefix: (term) => term.length > 1,
      processTerm: (term) => (small.has(term.toLowerCase()) ? null : (asThePagesSay[term.toLowerCase()] ?? term.toLowerCase())),
    },
  });
  index.addAll([...byId.values()]);
  return (query) => {
    const ways = [{ combineWith: "AND" }, { combineWith: "AND", fuzzy: slip }, { fuzzy: slip }] as const;
    const hits = ways.map((way) => () => index.search(query, way)).reduce<SearchResult[]>((found, next) => (found.length > 0 ? found : next()), []);
    return hits.map(({ id, terms }) => ({ section: byId.get(String(id))!, terms }));
  };
}

/** A piece of an excerpt: one of the words looked for, or what stands between them. */
export interface ExcerptPiece {
  readonly text: string;
  readonly isTerm: boolean;
}

const excerptLength = 220;

/** Cuts a text around the first of some words, and takes it apart where these stand. */
export function excerptAround(text: string, terms: readonly string[]): readonly ExcerptPiece[] {
  const escaped = terms.map((term) => term.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  const words = new RegExp(escaped.length === 0 ? "(?!)" : `(?<![\\p{L}\\p{N}])(?:${escaped.join("|")})(?![\\p{L}\\p{N}])`, "giu");
  const begin = Math.max(0, text.lastIndexOf(" ", Math.max(0, text.search(words) - excerptLength / 4)));
  const end = begin + excerptLength >= text.length ? text.length : Math.max(begin + 1, text.lastIndexOf(" ", begin + excerptLength));
  const excerpt = `${begin > 0 ? "… " : ""}${text.slice(begin, end).trim()}${end < text.length ? " …" : ""}`;
  const pieces: ExcerptPiece[] = [];
  let at = 0;
  for (const match of excerpt.matchAll(words)) {
    pieces.push({ text: excerpt.slice(at, match.index), isTerm: false }, { text: match[0], isTerm: true });
    at = match.index + match[0].length;
  }
  return [...pieces, { text: excerpt.slice(at), isTerm: false }].filter((piece) => piece.text !== "");
}
