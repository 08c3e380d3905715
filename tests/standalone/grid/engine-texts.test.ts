import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { LocaleService, LocaleType } from "@univerjs/core";
import { loadEnglish } from "../../../src/standalone/grid/engine-texts";

type Texts = string | { readonly [key: string]: Texts | undefined };

const service = new LocaleService();
service.setLocale(LocaleType.EN_US);
loadEnglish(service);
const english = service.getLocales() as Texts;
const engine = join(__dirname, "..", "..", "..", "node_modules", "@univerjs");

/** Keys of texts that the engine's sources ask for or give to a menu, dialog or function. */
function askedFor(): string[] {
  const sources = readdirSync(engine).map((name) => join(engine, name, "lib", "es", "index.js")).filter((path) => existsSync(path)).map((path) => readFileSync(path, "utf8"));
  const places = ["t", "title", "label", "description", "tooltip", "message", "content", "placeholder", "groupTitle", "name", "detail", "abstract"].join("|");
  const asked = new RegExp(`\\b(?:${places})(?:\\(|: )"([a-z][a-z-]*(?:\\.[\\w-]+)+)"`, "g");
  return [...new Set(sources.flatMap((source) => [...source.matchAll(asked)].map(([, key]) => key!)))];
}

/** What looks like a key, and is the name of a place for menus. */
const places = new Set(["ui.ribbon.menu"]);

test("every text that the engine can ask for has English words, so that no key of one is ever shown", () => {
  const asked = askedFor();
  expect(asked.length).toBeGreaterThan(1_000);
  const parts = Object.keys(english);
  const known = asked.filter((key) => parts.includes(key.split(".")[0]!) && !places.has(key));
  expect(known.length).toBeGreaterThan(1_000);
  expect(known.filter((key) => service.t(key) === key)).toEqual([]);
});

test("no English text of the engine's is the name of its key", () => {
  const texts = (at: Texts, key: string): [string, string][] =>
    typeof at === "string" ? [[key, at]] : Object.entries(at).flatMap(([part, below]) => (below === undefined ? [] : texts(below, `${key}.${part}`)));
  const shown = texts(english, "").filter(([key]) => !key.includes(".functionParameter."));
  expect(shown.filter(([, text]) => /^[a-z]+[A-Z][A-Za-z]*$|^[a-z]+(?:[.-][a-z]+)+$/.test(text))).toEqual([]);
});
