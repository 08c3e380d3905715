import { catalogue } from "../../src/functions/catalogue";

// Names of one word, three letters and more, out of the index of the vendor's reference of Excel 4.0 macro functions (Macrofun), as the
// project xlladdins/xll carries it in docs/Excel4Macros. The vendor's guide to naming custom functions says to avoid them.
const macroFunctions = `
  ABSREF ACTIVATE ALERT ALIGNMENT ANOVA1 ANOVA2 ANOVA3 ARGUMENT AXES BEEP BORDER BREAK CALCULATION CALLER CLEAR CLOSE COMBINATION
  CONSOLIDATE COPY CUT DEMOTE DEREF DESCR DIRECTORY DISPLAY DOCUMENTS DUPLICATE ECHO ELSE EMBED ERROR EVALUATE EXEC EXECUTE EXPON EXTRACT
  FCLOSE FILES FILTER FONT FOPEN FOR FORMULA FOURIER FPOS FREAD FREADLN FSIZE FTESTV FULL FWRITE FWRITELN GOTO GRIDLINES GROUP HALT HELP
  HIDE HISTOGRAM HLINE HPAGE HSCROLL INITIATE INPUT INSERT JUSTIFY LEGEND LINKS MCORREL MCOVAR MESSAGE MOVE MOVEAVG NAMES NEW NEXT NOTE
  OPEN OUTLINE OVERLAY PARSE PASTE PATTERNS PAUSE PLACEMENT POKE PRECISION PREFERRED PRINT PROMOTE PTTESTM PTTESTV QUIT RANDOM RANKPERC
  REFTEXT REGISTER REGRESS RELREF REQUEST RESTART RESULT RESUME RETURN RUN SAMPLE SAVE SCALE SELECT SELECTION SERIES SIZE SORT SPELLING
  SPLIT STEP STYLE TABLE TERMINATE TEXTREF TTESTM UNDO UNGROUP UNHIDE UNREGISTER VLINE VOLATILE VPAGE VSCROLL WAIT WHILE WINDOWS
  WORKGROUP WORKSPACE ZOOM ZTESTM`.trim().split(/\s+/);

test("no function has the name of an Excel 4.0 macro function (the vendor's guide to naming custom functions)", () => {
  expect(catalogue.map(({ id }) => id).filter((id) => macroFunctions.includes(id))).toEqual([]);
});

test("no function has a name that is a cell, A1 to XFD1048576 or R1C1 (the same guide)", () => {
  expect(catalogue.map(({ id }) => id).filter((id) => /^[A-Z]{1,3}\d+$|^R\d+C\d+$/.test(id))).toEqual([]);
});
