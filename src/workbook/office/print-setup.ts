import { cellAddress, pageScale, type PrintPlan, type SheetPlan } from "../../sheet";

/** Sets how a sheet is printed. */
export function setUpPrint(sheet: Excel.Worksheet, print: PrintPlan, plan: SheetPlan): void {
  const layout = sheet.pageLayout;
  layout.orientation = print.orientation === "landscape" ? "Landscape" : "Portrait";
  if (print.paper !== undefined) layout.paperSize = print.paper;
  if (print.marginsMm !== undefined) {
    const { left, right, top, bottom, header = 0, footer = 0 } = print.marginsMm;
    layout.setPrintMargins("Centimeters", { left: left / 10, right: right / 10, top: top / 10, bottom: bottom / 10, header: header / 10, footer: footer / 10 });
  }
  if (print.firstPage !== undefined) layout.firstPageNumber = print.firstPage;
  if (print.scale !== undefined) layout.zoom = { scale: print.scale };
  if (print.fitToWidth) layout.zoom = { scale: pageScale(print.orientation, plan.columnWidths.filter((_, column) => plan.hiddenColumns?.includes(column) !== true)) };
  if (print.titleRows !== undefined) layout.setPrintTitleRows(`$${print.titleRows.row + 1}:$${print.titleRows.row + print.titleRows.rows}`);
  if (print.header !== undefined) layout.headersFooters.defaultForAllPages.centerHeader = print.header;
  if (print.footer !== undefined) layout.headersFooters.defaultForAllPages.centerFooter = print.footer;
  for (const row of print.breaksBefore) sheet.horizontalPageBreaks.add(cellAddress({ row, column: 0 }));
}
