import { foldMarks, secretWord } from "./secret-words";

/** Names an entry of a vault by its path; without a slash it might be the secret itself. */
const vaultEntry = /^\s*vault:\s*[\p{L}\p{N}@._ -]+(?:\/[\p{L}\p{N}@._ -]+)+/u;

/** Tells whether a cell says where in a vault a secret is kept, such as vault:site/device. */
export function isKeptInVault(cell: unknown): boolean {
  return typeof cell === "string" && vaultEntry.test(cell);
}

/** Secrets that are known by their form alone. */
const forms: readonly RegExp[] = [
  /-----BEGIN [A-Z0-9 ]*PRIVATE KEY/, // a private key (RFC 7468 sections 10 and 11); certificates and public keys are none
  /\beyJ[\w-]{8,}\.eyJ[\w-]{8,}\./, // a signed token (RFC 7519 section 3.1): "eyJ" begins the base64url of an object
  /\bbearer\s+[\w.~+/-]{12,}=*/i, // RFC 6750 section 2.1
  /\bauthorization\s*:\s*basic\s+\S+/i, // RFC 7617 section 2
  /\$(?:1|2[aby]?|5|6|y|argon2id?)\$[\w./,=$+-]{12,}/, // hashed passwords as password files hold them (common practice, no source)
  /\b(?:ghp_|gho_|ghs_|github_pat_|glpat-|xox[abprs]-|sk-|sk_live_|AKIA)[\w-]{16,}/, // tokens known by their beginning (common practice, no source)
  /\b[a-z][a-z\d+.-]*:\/\/[^\s/?#@:]+:(?!\{\{)[^\s/?#@]+@/i, // user:password@ in an address (RFC 3986 section 3.2.1)
  /(?<![\w:.])[\w.-]+:[^\s@:/]+@\d{1,3}(?:\.\d{1,3}){3}\b/, // the same before a bare address
  /^\s*vault:\s*[^\s/]+\s*$/i, // what calls itself a vault entry and has no path
];

// A word for a secret and what stands behind it in the same cell. Up to three words may stand between: "Password of the array: x".
const between = `${secretWord}(?:\\p{L}|\\(s\\))*(?:[\\s(/_-]+[\\p{L}\\p{N}.-]+\\)?){0,4}?`;
const assigned = new RegExp(`${between}\\s*(?:[:=]+|->|→|：)\\s*(.+)`, "gsu");
const spoken = new RegExp(`${between}\\s+(?:is|to|ist|lautet|auf|est|es|är|er|e)\\s+(\\S+)`, "gu");
const beside = new RegExp(`${secretWord}\\s+["'“”„«]?([^\\s"'“”„«»]+)`, "gu");
const quoted = new RegExp(`${between}\\s*["“„«']([^\\s"'“”„«»]{3,})["”“»']`, "gu");
const option = /(?:^|\s)--?(?:password|passwd|pass|token|secret|api-?key|psk)[ =]+(\S+)/gu;
const account = /\b(?:login|logon|sign-?in|credentials?|zugangsdaten|identifiants|credenciales|credenziali)\b[^:=\n]{0,20}[:=]?\s*\S+\s*[/|]\s*(\S+)/gu;
const community = /\bsnmp\b.{0,30}\bcommunity\s+(?:string\s+|name\s+)?(\S+)/gu;

/** Words behind which digits alone are a secret; "pin" in small letters is one of a plug. */
const digitsOf = /\b(?:PIN|(?:[Dd]oor|[Gg]ate|[Aa]larm|[Aa]ccess|[Ee]ntry) codes?)\s+\d{4,8}\b/;

// Of the two that mean the same for English the first is much the faster.
const [plainEnglish, plainName] = [/^[\w./-]{0,19}$/, /^[\p{L}\d_./-]{0,19}$/u];

/** Tells whether a text is a short name, number or address, as most cells are: it holds no secret beside a word for one. */
export function isPlainName(text: string): boolean {
  return plainEnglish.test(text) || plainName.test(text);
}

/** Nothing of the above matches a text without one of these words. */
const speaking = new RegExp(`${secretWord}|pass|key|community|login|logon|sign-?in|credenziali`, "u");

/** Words that begin what is said about a secret: where it is, who has it, what is to be done with it. */
const sayings = new Set(
  ("a all an and are as ask at be by change changed each enter every from given held in is it kept keep left n/a named never new no none not nothing of old on one only open or " +
    "refused safe see set sealed stored string name tbd that the their them then this to unknown use what when where which who with written yes " +
    "im in siehe bei kein keine nicht liegt voir dans chez aucun en ver ninguna nel vedi").split(" "),
);

/** Tells whether a word mixes letters with digits or other marks, as passwords do and words do not. */
export function isMixed(word: string): boolean {
  const bare = word.replace(/^["'“„«(]+|["'”“»).,;]+$/g, "");
  return bare.length >= 5 && /\p{L}/u.test(bare) && /[\d!#$%&*+=?@^~]/.test(bare) && !bare.includes("{{") && !/^[a-z]+\.\d|^\w+@\w+/i.test(bare);
}

function isValue(text: string): boolean {
  const value = text.trim();
  const first = /^[^\s,;.]+/.exec(value)?.[0] ?? "";
  // Five plain words and more are a sentence about it.
  const isSentence = /^[\p{L}'-]+(?:[\s,;]+[\p{L}'-]+){4}/u.test(value);
  return /[\p{L}\p{N}]/u.test(first) && !isKeptInVault(value) && !/^(?:\{\{|<)/.test(value) && !sayings.has(first) && !isSentence;
}

/**
 * Tells whether a text holds a secret: by its form (a private key, a token, an address with user and password), or because it names one and
 * says it, as in "Password: x", "pw x1y2z3" or "--token x".
 */
export function holdsSecret(text: string): boolean {
  if (isPlainName(text)) return false;
  if (forms.some((form) => form.test(text))) return true;
  const folded = foldMarks(text);
  if (!speaking.test(folded)) return false;
  return (
    says(folded, assigned, isValue, namesNoRule) || says(folded, spoken, isMixed) || says(folded, beside, isMixed) || digitsOf.test(text) ||
    says(folded, quoted, isValue) || says(folded, option, isValue) || says(folded, account, isValue) || says(folded, community, isValue)
  );
}

/** What stands between the word and the colon may turn it into something else: "Password policy: 12 characters". */
function namesNoRule(match: string): boolean {
  return !/^[^:=]*\b(?:polic(?:y|ies)|rules?|resets?|changed?|manager|owner|length|age|expiry|expires|dates?|forms?|kept|where|who|procedure)\b/u.test(match);
}

function says(text: string, pattern: RegExp, isSecret: (value: string) => boolean, isMeant: (match: string) => boolean = () => true): boolean {
  for (const match of text.matchAll(pattern)) if (isMeant(match[0]) && isSecret(match[1] ?? "")) return true;
  return false;
}
