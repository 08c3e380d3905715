/**
 * Writes, as part of a formula, a figure that is added up over some rows of Arrays, or nothing where `column` is blank in one of them: without it the figure
 * would be too small. `isMeant` is 1 for the rows that are meant; it is asked only where the column is blank for any array at all, since that takes longest.
 */
export function unlessBlank(column: string, isMeant: string, figure: string): string {
  return `IF(IF(COUNT(${column})<COUNTA([Arrays.Array]),SUMPRODUCT(${isMeant}*(${column}="")),0)>0,"",${figure})`;
}
