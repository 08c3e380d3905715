import type { CellStyle } from "../../../sheet";

const line = { border: "all", borderColor: "#b9c4c0" } as const;
const body = { fontSize: 11, vertical: "top", ...line } as const;
const inverse = { bold: true, color: "#ffffff", fill: "#17352d" } as const;
const block = { fontSize: 11, vertical: "middle" } as const;
/** Cells in which people type stand out as paper white with a firm frame. */
const typed = { fontSize: 11, vertical: "top", wrap: true, border: "all", borderColor: "#6f8a82", fill: "#fffdf2", locked: false } as const;

/** Styles of a commissioning tab. */
export const tabStyles = {
  title: { bold: true, fontSize: 18, color: "#17352d", vertical: "middle" },
  progress: { bold: true, fontSize: 11, color: "#17352d", vertical: "middle", align: "right", wrap: true },
  header: { bold: true, fontSize: 11, color: "#ffffff", fill: "#2f5d50", vertical: "middle", wrap: true, border: "all", borderColor: "#2f5d50" },
  facts: { fontSize: 11, vertical: "middle", wrap: true },
  cautionHead: { bold: true, fontSize: 11, vertical: "middle", fill: "#fde9c4", border: "all", borderColor: "#c98a1b", color: "#4a2f00" },
  caution: { fontSize: 11, vertical: "top", wrap: true, fill: "#fde9c4", border: "all", borderColor: "#c98a1b", color: "#4a2f00" },
  label: { bold: true, fontSize: 11, color: "#3d4f49", fill: "#e6eeeb", vertical: "middle", wrap: true, border: "all", borderColor: "#b9c4c0" },
  gridHead: { fontSize: 11, color: "#17352d", fill: "#e6eeeb", vertical: "top", wrap: true, border: "all", borderColor: "#b9c4c0", format: "@" },
  figure: { ...block, bold: true, fontSize: 12, align: "center", border: "all", borderColor: "#b9c4c0" },
  figureText: { ...block, bold: true, border: "all", borderColor: "#b9c4c0", wrap: true },
  fact: { ...block, border: "all", borderColor: "#b9c4c0", wrap: true, format: "@" },
  factCount: { ...block, border: "all", borderColor: "#b9c4c0", align: "center", format: "#,##0" },
  factNumber: { ...block, border: "all", borderColor: "#b9c4c0", align: "center", format: "#,##0.0#" },
  alarm: { ...block, border: "all", borderColor: "#b9c4c0", bold: true, color: "#8c1c13", fill: "#fbdcd8", format: "@" },
  visit: { bold: true, fontSize: 14, color: "#ffffff", fill: "#2f5d50", vertical: "middle" },
  section: { bold: true, fontSize: 12, color: "#17352d", fill: "#cfe0da", vertical: "middle" },
  pocketHead: { ...block, bold: true, color: "#3d4f49", fill: "#e6eeeb", border: "bottom", borderColor: "#b9c4c0" },
  pocket: { ...block, border: "bottom", borderColor: "#b9c4c0" },
  sideTitle: { bold: true, fontSize: 11, color: "#17352d", fill: "#cfe0da", vertical: "top", wrap: true },
  note: { italic: true, fontSize: 11, color: "#3d4f49", vertical: "middle" },
  no: { ...body, align: "center", color: "#3d4f49" },
  stepId: { ...body, color: "#3d4f49", format: "@" },
  // White on dark, so that they stand out on paper without colour too.
  holdPoint: { ...body, ...inverse, align: "center" },
  holdPointId: { ...body, ...inverse, format: "@" },
  step: { ...body, wrap: true, format: "@" },
  stepCaution: { ...body, wrap: true, fill: "#fde9c4", format: "@" },
  text: { ...body, wrap: true, format: "@" },
  sealed: { ...body, wrap: true },
  expected: { ...body, wrap: true, bold: true, format: "@" },
  unitFixed: { ...body, format: "@" },
  result: { ...body, wrap: true, bold: true },
  before: { ...body, wrap: true, italic: true, format: "@" },
  typedText: { ...typed, format: "@" },
  typedNumber: { ...typed, align: "left" },
  typedDate: { ...typed, format: "yyyy-mm-dd", align: "left" },
  notAsked: { ...body, fill: "#e9ecea" },
  hidden: { fontSize: 8, color: "#808080" },
  hiddenText: { fontSize: 8, color: "#808080", format: "@" },
  isExpected: { bold: true, color: "#14532d", fill: "#d3efdc" },
  isDiffering: { bold: true, color: "#8c1c13", fill: "#fbdcd8" },
  isWaiting: { bold: true, color: "#5f3d00", fill: "#fde9c4" },
  isSetAside: { bold: true, color: "#41474b", fill: "#e1e4e6" },
  isMissing: { fill: "#f9cf86" },
} as const satisfies Readonly<Record<string, CellStyle>>;

export type TabStyle = keyof typeof tabStyles;
