/** Names the first of some things, and says how many there are besides. */
export function andMore(first: string, besides: number): string {
  return besides === 0 ? first : `${first} and ${besides} more`;
}
