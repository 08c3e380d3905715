import { body, firm, large, line, medium, paper, rect, small, text, thin, type DrawingPage, type PageContent } from "./page";

/** What stands in the title block besides the page itself. */
export interface Made {
  /** When the drawings were made, such as 2026-05-31 14:05. */
  readonly madeAt: string;
  /** What the workbook is called; "" where it has no name. */
  readonly planName: string;
}

/** Gives the pages of a site their frame and title block: for which site and whom, what, of when, and the how manieth of how many. */
export function finishPages(contents: readonly PageContent[], site: string, below: string, made: Made | null): readonly DrawingPage[] {
  const plan = made === null ? "" : [made.planName === "" ? "" : `Plan ${made.planName}`, `made ${made.madeAt}`].filter((part) => part !== "").join(", ");
  return contents.map((content, at): DrawingPage => ({
    ...content,
    width: paper.width,
    height: paper.height,
    marks: [
      ...content.marks,
      rect(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top, "none", firm),
      line([[frame.left, titleTop], [frame.right, titleTop]], firm),
      ...[siteEnd, titleEnd].map((x) => line([[x, titleTop], [x, frame.bottom]], thin)),
      ...text(frame.left + 4, titleTop + 8, siteEnd - frame.left - 8, site, { size: large, isBold: true }),
      ...text(frame.left + 4, titleTop + 14, siteEnd - frame.left - 8, below),
      ...text(siteEnd + 4, titleTop + 8, titleEnd - siteEnd - 8, content.title, { size: large, isBold: true }),
      ...text(siteEnd + 4, titleTop + 14, titleEnd - siteEnd - 8, plan),
      ...text(titleEnd + 4, titleTop + 8, frame.right - titleEnd - 8, `Page ${at + 1} of ${contents.length}`, { size: medium, isBold: true }),
      ...text(titleEnd + 4, titleTop + 14, frame.right - titleEnd - 8, "A3; text is 7 point at 100%", { size: small }),
    ],
  }));
}

const frame = { left: 8, top: 8, right: paper.width - 8, bottom: paper.height - 8 } as const;
const titleTop = body.bottom + 6;
const siteEnd = frame.left + 130;
const titleEnd = frame.right - 62;
