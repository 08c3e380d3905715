import type { Mark } from "./page";

/** Something as wide as a page that is drawn below what stands before it. */
export interface Block {
  readonly height: number;
  draw(top: number): readonly Mark[];
  /** Drawn above it where it is the first on a page, such as the head of the table that it continues. */
  readonly again?: Block;
}

/** Puts blocks one below the other between `top` and `bottom`, on as many pages as they need; one that is taller than a page has one of its own. */
export function flow(blocks: readonly Block[], top: number, bottom: number): readonly (readonly Mark[])[] {
  const pages: Mark[][] = [];
  let y = Infinity;
  const put = (block: Block): void => {
    pages.at(-1)!.push(...block.draw(y));
    y += block.height;
  };
  for (const block of blocks) {
    if (y + block.height > bottom) {
      pages.push([]);
      y = top;
      if (block.again !== undefined) put(block.again);
    }
    put(block);
  }
  return pages;
}

/** Numbers the pages of one title, where there are several: "Feed loads", "Feed loads (2)" ... */
export function titleOfPart(title: string, at: number): string {
  return at === 0 ? title : `${title} (${at + 1})`;
}
