// Figures of other origin, asked for as a cell asks: through the formula. Agreement to 1e-12 of the figure.
import { answerOf } from "../support/golden-answers";

const chen = "Chen and others 1994, table 1, as the least of 2(m+1) and the stripe; from memory";
const computed = "computed at 60 digits by another program, from the written definition";
const linear = "IDEMA LBA1-03, the line continued";
const reported = "as such drives report, from memory";
const queues = "closed form: S/(1-u) and S/(1-u^2), Kleinrock 1975, from memory";

test.each<[string, string | number, string]>([
  ['=BAY.WRITECOST("RAID 5 2+1")', 3, chen],
  ['=BAY.WRITECOST("RAID 6 2+2")', 4, chen],
  ['=BAY.WRITECOST("RAID 60 3+2")', 5, chen],
  ['=BAY.WRITECOST("RAID 6 8+2")', 6, chen],
  ['=BAY.WRITECOST("RAID 6 8+2","262144 B","65536 B")', 10, computed],
  ['=BAY.WRITECOST("RAID 5 4+1","131072 B","65536 B")', 5, computed],
  ['=BAY.WRITECOST("RAID 6 8+2","1048576 B","65536 B")', 20, computed],
  ['=BAY.IOPS("RAID 6",12,150,0.7,0,0.3)', 786.0262008733624, computed],
  ['=BAY.IOPS("RAID 5",3,150,0,0,0)', 150, computed],
  ['=BAY.REBUILDHOURS("2 copies",2,"4 TB",150,1)', 7.407407407407407, computed],
  ['=BAY.REBUILDHOURS("8+4",12,"4 TB",150,1)', 7.407407407407407, computed],
  ['=BAY.REBUILDHOURS("8+4",13,"4 TB",150,1)', 5.555555555555555, computed],
  ['=BAY.REBUILDHOURS("8+2",24,"16 TB",200,0.3)', 28.985507246376812, computed],
  ['=BAY.THROUGHPUT("RAID 6",12,200,1,"healthy",0,,0.3)', 2400, "Chen and others 1994, table 1: large reads use every drive; from memory"],
  ['=BAY.THROUGHPUT("RAID 6",12,200,0.7,"degraded",0,,0.3)', 2135.9223300970875, computed],
  ['=BAY.THROUGHPUT("RAID 60 8+2",20,200,0.5,"rebuilding",0,,0.3)', 2371.7647058823527, computed],
  ['=BAY.THROUGHPUT("8+2",24,200,0,"degraded",0,,0.3)', 3680, computed],
  ['=BAY.RESPONSETIME(50,10,1,0,0.2,"shared")', 20, queues],
  ['=BAY.RESPONSETIME(100,10,2,0,0.2,"shared")', 13.333333333333332, queues],
  ['=BAY.RESPONSETIME(800,10,10,0,0.2,"shared")', 12.045900753982218, computed],
  ['=BAY.RESPONSETIME(800,10,10,0,0.2,"own")', 50, computed],
  ['=BAY.RESPONSETIME(2000,5,12,0.3,0.2,"own")', 8.46, computed],
  ['=BAY.ENDURANCE("3.84 TB",1,"3.84 TB",1,1,5)', 5, computed],
  ['=BAY.ENDURANCE("7.68 TB",1,"20 TB",12,2,5)', 11.52, computed],
  ['=BAY.DRIVEBYTES("15360 GB",512,"flash")', 15_362_991_415_296, linear],
  ['=BAY.DRIVEBYTES("3840 GB",512,"flash")', 3_840_755_982_336, reported],
  ['=BAY.DRIVEBYTES("960 GB",512,"flash")', 960_197_124_096, reported],
  ['=BAY.SIZETEXT("40000000000000 B","TiB",2)', "36.37 TiB", computed],
  ['=BAY.SIZETEXT("40000000000000 B","TiB")', "36.379788070917 TiB", computed],
  ['=BAY.SIZETEXT("15362991415296 B","TB")', "15.362991415296 TB", computed],
])("%s is %p (%s)", (formula, figure) => {
  const answer = answerOf(formula);
  if (typeof figure === "string") expect(answer).toBe(figure);
  else expect(Math.abs(Number(answer) / figure - 1)).toBeLessThan(1e-12);
});
