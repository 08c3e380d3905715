/** Writes a colour as files have it, without any of it shining through. */
export function argb(color: string): string {
  return `FF${color.slice(1).toUpperCase()}`;
}
