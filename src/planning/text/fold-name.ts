/** Makes names comparable: a sheet does not tell "Array 1" from "array 1", and neither does a plan. */
export function foldName(name: string): string {
  return name.trim().toLowerCase();
}
