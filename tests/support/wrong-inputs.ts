// What people typically type wrongly, by the kind of argument, and what they mean by it.
import { seededRandom } from "./seeded-random";

export type Typed = string | number | boolean | null;

/** One wrong input, and every way to write rightly what it means; none where it could mean two things or nothing. */
export interface WrongInput {
  readonly typed: Typed;
  readonly means: readonly Typed[];
}

export type Kind =
  | "number" | "count" | "few" | "mtu" | "share" | "growth" | "size" | "priced" | "reduction" | "scheme" | "unit" | "prefix" | "subnet" | "mask length" | "length" | "mask" | "block"
  | "address" | "gateway" | "controllers" | "ports" | "month" | "flag" | "choice" | "name" | "anything";

/** A right value of each kind, for arguments that no example gives. */
export const rightValues: Readonly<Record<Kind, Typed>> = {
  number: 0.5, count: 2, few: 1, mtu: 1500, share: 0.2, growth: 0.2, size: 4, priced: 4, reduction: 3, scheme: "RAID 6", unit: "TiB", prefix: "10.20.0.0/24", subnet: "10.20.0.9/24",
  "mask length": 24, length: 26, mask: "255.255.255.0", block: "10.20.0.9", address: "10.20.0.9", gateway: "none", controllers: 2, ports: 2, month: "2024-05",
  flag: true, choice: null, name: "n1", anything: "n1",
};

const wrong = (typed: Typed, ...means: Typed[]): WrongInput => ({ typed, means });

/** Draws whole numbers from `least` to `most`, the same ones in every run. */
function draw(seed: number): (least: number, most: number) => number {
  const random = seededRandom(seed);
  return (least, most) => least + ((random() * 2 ** 32) % (most - least + 1));
}

const times = <Value>(count: number, make: () => Value): Value[] => Array.from({ length: count }, make);
const pick = draw(14);
const digits = (length: number): string => times(length, () => pick(1, 9)).join("");

const everywhere = [wrong("#NAME?"), wrong("#N/A"), wrong("#DIV/0!"), wrong(null), wrong(" ")];
const noNumbers = [...everywhere, wrong(true), wrong("many"), wrong("12 pieces"), wrong("-"), wrong("1,2,3"), wrong("12..5"), wrong(1e300),
  wrong(-1e300), wrong("1e400"), wrong("x".repeat(300))];

const textNumbers = [
  wrong("12", 12), wrong("2e1", 20), wrong("+24", 24), wrong("0.5", 0.5), wrong("-3", -3),
  ...times(3, () => pick(1, 99)).map((whole) => wrong(` ${whole} `, whole)),
];
const decimalCommas = times(6, () => [pick(0, 99), digits(pick(1, 2))] as const).map(([whole, part]) => wrong(`${whole},${part}`, Number(`${whole}.${part}`)));
const groups = times(3, () => [pick(1, 99), digits(3), digits(3)] as const).flatMap(([millions, thousands, ones]) => [
  wrong(`${millions},${thousands},${ones}`, Number(`${millions}${thousands}${ones}`)),
  wrong(`${millions}.${thousands},5`, Number(`${millions}${thousands}.5`)),
  wrong(`${millions},${thousands}.5`, Number(`${millions}${thousands}.5`)),
]);
const thousands = times(3, () => [pick(1, 99), digits(3)] as const);
/** 1,234 is 1.234 or 1234 where both would do; a count can only be the whole one. */
const unclearNumbers = thousands.map(([whole, part]) => wrong(`${whole},${part}`));
const wholeNumbers = thousands.map(([whole, part]) => wrong(`${whole},${part}`, Number(`${whole}${part}`)));
const fractions = [wrong("0,125", 0.125), wrong("0,5", 0.5), wrong("0,95", 0.95)];

const numbers = [...noNumbers, ...textNumbers, ...decimalCommas, ...fractions, ...groups, wrong("20%"), wrong(0), wrong(-1)];

const percentages = [
  ...noNumbers,
  ...times(6, () => pick(20, 100)).map((percent) => wrong(percent, `${percent}%`, percent / 100)),
  ...times(4, () => pick(20, 99)).map((percent) => wrong(String(percent), `${percent}%`, percent / 100)),
  ...times(6, () => [pick(0, 99), digits(pick(1, 2))] as const).map(([whole, part]) => wrong(`${whole},${part}%`, `${whole}.${part}%`)),
  ...fractions, wrong("0.2", 0.2), wrong(".5", 0.5),
  wrong(1.5), wrong(1.1), wrong("1.5"), wrong("1,5"), wrong(-0.5), wrong("120%"), wrong("1000%"), wrong("-200%"), wrong("%"), wrong("a fifth"),
  wrong(1e6), wrong("20,5"), wrong("twenty %"),
];

const sizes = [
  ...everywhere, wrong(true), wrong(-4), wrong("-4 TB"), wrong("many TB"), wrong("4 T"), wrong("12 parsecs"), wrong("4 terabytes"),
  wrong("4 TB/s"), wrong("TB"), wrong(1e300),
  wrong("4 Tb"), wrong("4Gb"), wrong("100 bits"), wrong("4 Tib"), wrong("4 000 GB"), wrong("0 TB"), wrong("0.1 B"), wrong("9".repeat(40)),
  ...times(6, () => [pick(1, 99), digits(pick(1, 2)), ["TB", "tib", "GB", "PB"][pick(0, 3)]!] as const).map(([whole, part, unit]) => wrong(`${whole},${part} ${unit}`, `${whole}.${part} ${unit}`)),
  ...times(3, () => [pick(1, 99), digits(3)] as const).map(([whole, part]) => wrong(`${whole},${part} GB`)),
  wrong("3,84TB", "3.84TB"), wrong("1,234,567 GB", "1234567 GB"), wrong("1.234,5 GB", "1234.5 GB"), wrong("1,234.5 GB", "1234.5 GB"),
];
const bareSizes = [wrong("4", 4, "4 TB"), wrong("3.84", 3.84, "3.84 TB"), wrong("3,84", 3.84, "3.84 TB"),
  wrong("12,5", 12.5, "12.5 TB"), ...unclearNumbers];

const words = [...everywhere, wrong("hello"), wrong("120%"), wrong("4 Tb"), wrong("one or two words"), wrong(true), wrong(10.2), wrong(-1),
  wrong("x".repeat(300)), wrong("RAID 6"), wrong("..."), wrong("10.20"), wrong("1.2.3.4.5")];
const bytes4 = times(4, () => [10, pick(1, 250), pick(1, 250), pick(1, 250)].join("."));
const badAddresses = [
  ...words, wrong("10.20.0.300"), wrong("10.20.0"), wrong("2001:db8:::1"), wrong("1::2::3"), wrong("2001:db8::12345"), wrong("1:2:3:4:5:6:7"),
  wrong("10.20.0.9 10.20.0.10"), wrong(":"),
  wrong("010.20.0.9"),
];
const plainAddresses = [
  ...bytes4.flatMap((one) => [wrong(`${one}/24`, one), wrong(`${one}:443`, one), wrong(`[${one}]`, one), wrong(one.replaceAll(".", ","), one)]),
  wrong("10.20.0.01", "10.20.0.1"), wrong("10.20.0.08", "10.20.0.8"), wrong("010.020.000.009", "10.20.0.9"), wrong("fe80::1%eth0", "fe80::1"),
  wrong("[2001:db8::9]", "2001:db8::9"), wrong("2001:db8::9/64", "2001:db8::9"),
];
const badPrefixes = [
  ...badAddresses, wrong("/24"), wrong(" /24 "), wrong("10.20.0.0/33"), wrong("10.20.0.0/"), wrong("10.20.0.0/-1"), wrong("10.20.0/24"),
  wrong("10.20.0.0 255.0.255.0"), wrong("2001:db8::/129"),
  wrong("10.20.0.0-10.20.0.255"), wrong("10.20.0.9"), wrong("2001:db8::9"), wrong("hello/24"), wrong("10.20.300.0/24"),
  wrong("010.020.0.0/24"), wrong("4 Tb/24"),
  wrong("10.20.0.0/024", "10.20.0.0/24"), wrong("10.0.0.0/08", "10.0.0.0/8"), wrong("010.020.000.009"), wrong("[2001:db8::9]"),
  wrong("10.20.01.0/24", "10.20.1.0/24"), wrong("[2001:db8::]/64", "2001:db8::/64"), wrong("fe80::%eth0/64", "fe80::/64"),
];
/** A prefix with host bits is the subnet they lie in; /16 of four known addresses, worked out by hand: two octets stay. */
const setHostBits = bytes4.map((one) => wrong(`${one}/16`, `${one.split(".").slice(0, 2).join(".")}.0.0/16`));

const blocks = [
  ...badAddresses, ...bytes4.map((one) => wrong(`${one}/16`)), wrong("/24"), wrong("10.20.0.0/33"), wrong("switch-1"), wrong("10.20.0.1-"),
  wrong("10.20.0.1-hello"), wrong("10.20.0.9-::1"), wrong("10.20.0.1 to 10.20.0.9"),
  wrong("10.20.0.9-10.20.0.1", "10.20.0.1-10.20.0.9"), wrong("10.20.0.64, 10.20.0.9-10.20.0.1", "10.20.0.64, 10.20.0.1-10.20.0.9"),
  wrong("10.20.0.5-9", "10.20.0.5-10.20.0.9"),
  wrong("10.20.0.01", "10.20.0.1"), wrong("10.20.0.01-10.20.0.9", "10.20.0.1-10.20.0.9"), wrong("10.20.0.0/024", "10.20.0.0/24"),
];

const names = [...everywhere];

/** The table itself. A kind that is not here cannot be named in the test. */
export const wrongInputs: Readonly<Record<Kind, readonly WrongInput[]>> = {
  number: [...numbers, ...unclearNumbers],
  count: [...numbers, ...wholeNumbers, wrong(12.5), wrong("12.5")],
  few: [...noNumbers, wrong("1", 1), wrong(" 2 ", 2), wrong("+1", 1), wrong("2e0", 2), wrong("1.5"), wrong("1,5"), wrong(0.5), wrong("50%")],
  mtu: [...noNumbers, wrong("1500", 1500), wrong("9,000", 9000), wrong(" 9000 ", 9000), wrong("1.500"), wrong("12,5"), wrong(1500.5), wrong(40)],
  share: percentages,
  growth: [...percentages.filter(({ typed }) => typed !== 1.5 && typed !== 1.1 && typed !== 1e6 && typed !== "1.5" && typed !== "1,5"),
    wrong(7), wrong("1.5", 1.5), wrong("1,5", 1.5), wrong(-20, "-20%", -0.2)],
  size: [...sizes, ...bareSizes],
  priced: [...sizes, wrong("40", 40), wrong("40,5", 40.5)],
  reduction: [
    ...noNumbers, ...textNumbers, ...decimalCommas, wrong("3 to 1"), wrong("3:0"), wrong("1:3"), wrong(0.5), wrong("2,5:1", "2.5:1"),
    wrong("50%"), wrong(0.52361),
    ...times(4, () => pick(2, 23)).map((ratio) => wrong(ratio / 24 + 1 / 1440, ratio, `${ratio}:1`)), wrong(30 / 24 + 1 / 1440, 30, "30:1"),
  ],
  scheme: [
    ...everywhere, wrong("RAID 60"), wrong("RAID 50"), wrong("RAID 6 8+1"), wrong("RAID 7"), wrong("hello"), wrong("8+2+1"), wrong("+2"),
    wrong("1 copies"), wrong("0 copies"), wrong("copies"), wrong(10), wrong(6), wrong(true),
    wrong("0+2"), wrong("RAID 5 1+1"), wrong("x".repeat(300)),
    wrong("8+0", "none", "RAID 0"), ...times(3, () => pick(1, 4)).map((parity) => wrong(`1+${parity}`, `${parity + 1} copies`)),
  ],
  unit: [wrong("#NAME?"), wrong("Tb"), wrong("Gib"), wrong("terabytes"), wrong("T"), wrong(4), wrong(true), wrong("parsecs"), wrong("%")],
  prefix: [...badPrefixes, ...setHostBits],
  subnet: badPrefixes,
  "mask length": [...words, wrong(33), wrong("/33"), wrong(24.5), wrong("2001:db8::/64"), wrong("10.20.0.0"), wrong("hello/24"),
    wrong("10.20.0.0/024", "10.20.0.0/24")],
  length: [...words, wrong(129), wrong("/200"), wrong("10.20.0.0/24"), wrong("255.255.255.0"), wrong(24.5)],
  mask: [...words, wrong("255.0.255.0"), wrong("255.255.255"), wrong("0.0.0.255", "255.255.255.0"), wrong("0.0.3.255", "255.255.252.0"),
    wrong("/24", "255.255.255.0"), wrong("22", "255.255.252.0"), wrong(24, "255.255.255.0"), wrong("/40")],
  block: blocks,
  address: [...badAddresses, ...plainAddresses],
  gateway: [...badAddresses, ...plainAddresses, wrong("no gateway")],
  controllers: [wrong("#N/A"), wrong(null), wrong(0), wrong(-1), wrong(2.5), wrong(5000), wrong("A,,B"), wrong("A,A"), wrong(true)],
  ports: [wrong("#N/A"), wrong(null), wrong(0), wrong(-1), wrong(2.5), wrong("0,,1"), wrong("0,0"), wrong("3-0", "0-3"),
    wrong("0,5-2", "0,2-5"), wrong(true)],
  month: [...everywhere, wrong("May"), wrong("2024-13"), wrong("2024"), wrong(2024.05), wrong("2024-5", "2024-05"),
    wrong("2024/05", "2024-05"), wrong("05/2024", "2024-05"), wrong("5.2024", "2024-05"), wrong("202405", "2024-05"), wrong("24-05"), wrong(5),
    wrong("2024-05-17")],
  flag: [wrong("#NAME?"), wrong("yes", true), wrong("No", false), wrong("on", true), wrong("off", false), wrong("maybe"), wrong(2), wrong(-1)],
  choice: [wrong("#NAME?"), wrong("#N/A"), wrong("perhaps"), wrong("x".repeat(300)), wrong(99), wrong(-1), wrong(true), wrong("always or best")],
  name: names,
  anything: [],
};
