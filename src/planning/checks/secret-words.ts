/**
 * Words for a secret that count inside longer words too, as languages that build compounds write them (Administratorkennwort).
 *
 * English, German, Dutch, Swedish, Danish, Norwegian, Finnish, French, Spanish, Portuguese, Italian, Romanian, Polish, Czech, Hungarian,
 * Croatian, Lithuanian, Turkish, Russian and Ukrainian, Greek, Vietnamese, Indonesian, Thai, Hindi, Arabic, Hebrew, Chinese, Japanese, Korean.
 */
const parts = [
  "password", "pass-?\\s?(?:word|phrase|code|wd)", "secret(?!ar|ion)", "passwort", "kennwort", "geheimnis", "geheimzahl", "zugangscode", "zugangsdaten",
  "wachtwoord", "toegangscode", "lösenord", "adgangskode", "kodeord", "passord", "salasana", "mots? de passe", "contraseña", "palavra-?\\s?passe",
  "parola d'ordine", "hasło", "haslo", "jelszó", "lozinka", "slaptažodis", "пароль", "κωδικός", "συνθηματικό", "mật khẩu", "kata sandi", "รหัสผ่าน", "पासवर्ड",
  "كلمة المرور", "كلمة السر", "סיסמה", "סיסמא", "密码", "密碼", "口令", "パスワード", "暗証番号", "비밀번호", "암호", "key\\s?-?phrase", "keyphrase",
  "pre-?\\s?shared", "credential", "(?:api|zugangs|zugriffs|sitzungs)[\\s_-]*schlüssel",
];

/** Words for a secret that count only by themselves: inside others they mean nothing. */
const words = [
  "pw", "pwd", "psk", "mdp", "passw", "token", "tokens", "jeton", "senha", "clave", "şifre", "parola", "parolă", "parool", "geslo", "heslo", "identifiants",
  "(?:api|access|private|secret|encryption|shared|ssh|signing|master|recovery|unlock)[\\s_-]*keys?", "(?:access|unlock|recovery|security|door|gate|alarm|entry)\\s+codes?",
  "privater?\\s+schlüssel", "clé\\s+(?:api|privée|secrète|d'accès|de chiffrement)", "chave\\s+(?:api|privada|secreta|de acesso)", "chiave\\s+(?:api|privata|segreta|di accesso)",
];

const letter = "[\\p{L}\\p{N}]";

/** Matches any word for a secret, in texts that `foldMarks` has folded. */
export const secretWord = `(?:${parts.map(foldMarks).join("|")}|(?<!${letter})(?:${words.map(foldMarks).join("|")}|pin(?!\\s*(?:out|number of|\\d{1,3}(?!\\d))))(?!${letter}))`;

const anySecretWord = new RegExp(secretWord, "u");

/** Alone these are everyday words: they count where they are the whole label. */
const wholeLabel = /^(?:.*\bcommunity(?:\s+(?:string|name))?|(?:user|admin|root|wi-?fi|login)?\s*pass)\s*[:?]?$/u;

/** What speaks about a secret without holding it: its rules, its owner, its place, its day. */
const aboutSecret = /\b(?:polic(?:y|ies)|rules?|resets?|changed|manager|owner|length|age|expir(?:y|es)|dates?|forms?|kept|where|who|token ring)\b/u;

/** Writes a text in lower case without the marks over and under its letters, so that each word is found however it is typed. */
export function foldMarks(text: string): string {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replaceAll("’", "'");
}

/** Tells whether a label speaks of a secret that stands beside or below it, in one of the languages above. */
export function speaksOfSecret(label: string): boolean {
  const folded = foldMarks(label);
  return (anySecretWord.test(folded) || wholeLabel.test(folded.trim())) && !aboutSecret.test(folded);
}
