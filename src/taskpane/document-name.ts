/** Takes the name of a file off its address: a web address is percent-encoded, a path on this machine is not. "" where there is none. */
export function documentName(address: string | undefined): string {
  const last = address?.split(/[\\/]/).at(-1) ?? "";
  if (!/^https?:/i.test(address ?? "")) return last;
  try {
    return decodeURIComponent(last.replace(/[?#].*$/, ""));
  } catch {
    return last;
  }
}
