import { iscsiName } from "../../src/functions/addresses";
import { cellAnswer } from "../support/cell-answer";

describe("RFC 7143 section 4.2.7 and RFC 3721 section 1: iSCSI qualified names as printed", () => {
  test.each([
    ["2001-04", "example.com", "storage:diskarrays-sn-a8675309", "iqn.2001-04.com.example:storage:diskarrays-sn-a8675309"],
    ["2001-04", "example.com", null, "iqn.2001-04.com.example"],
    ["2001-04", "example.com", "storage.tape1.sys1.xyz", "iqn.2001-04.com.example:storage.tape1.sys1.xyz"],
    ["2001-04", "example.com", "storage.disk2.sys1.xyz", "iqn.2001-04.com.example:storage.disk2.sys1.xyz"],
    ["2001-04", "storage.example.com", "tape.sys1.xyz", "iqn.2001-04.com.example.storage:tape.sys1.xyz"],
    ["2001-04", "tape.storage.example.com", "sys1.xyz", "iqn.2001-04.com.example.storage.tape:sys1.xyz"],
    ["2000-02", "cs.example.edu", "users.oaks:proto.target4", "iqn.2000-02.edu.example.cs:users.oaks:proto.target4"],
    ["1995-11", "ssp.example.com", "customers.4567.disks.107", "iqn.1995-11.com.example.ssp:customers.4567.disks.107"],
  ])("%s, %s, %s: %s", (yearMonth, domain, name, expected) => expect(iscsiName(yearMonth, domain, name)).toBe(expected));
});

describe("RFC 7143 section 4.2.7.1 and RFC 3722 section 6.2: what a name may hold", () => {
  test("upper case is stored as lower case", () => {
    expect(iscsiName("2001-04", "Example.COM", "Disk2")).toBe("iqn.2001-04.com.example:disk2");
  });

  test.each(" !\"#$%&'()*+,/;<=>?@[\\]^_`{|}~".split(""))("%s is forbidden", (sign) => {
    expect(cellAnswer(() => iscsiName("2001-04", "example.com", `a${sign}b`))).toMatch(/^#VALUE! name /);
  });

  test.each(["-", ".", ":"])("%s is allowed", (sign) => {
    expect(iscsiName("2001-04", "example.com", `a${sign}b`)).toBe(`iqn.2001-04.com.example:a${sign}b`);
  });

  test("a name has at most 223 bytes of UTF-8", () => {
    const room = 223 - "iqn.2001-04.com.example:".length;
    expect(iscsiName("2001-04", "example.com", "a".repeat(room))).toHaveLength(223);
    expect(cellAnswer(() => iscsiName("2001-04", "example.com", "a".repeat(room + 1)))).toMatch(/^#VALUE! name .*224 bytes/);
    expect(cellAnswer(() => iscsiName("2001-04", "example.com", "é".repeat(100)))).toMatch(/^#VALUE! name .*224 bytes/);
  });

  test.each(["8.example", "a-b.c0.example", `${"a".repeat(63)}.example`])("%s is a host name (RFC 1123 section 2.1)", (domain) => {
    expect(iscsiName("2001-04", domain)).toBe(`iqn.2001-04.${domain.split(".").reverse().join(".")}`);
  });

  test.each(["example.8", "example", "-a.example", "a-.example", "a_b.example", "a..example", `${"a".repeat(64)}.example`])("%s is none", (domain) => {
    expect(cellAnswer(() => iscsiName("2001-04", domain))).toMatch(/^#VALUE! domain .* is not a domain name of yours/);
  });

  test("a letter takes two, three or four bytes of UTF-8 by its code point (RFC 3629 section 3)", () => {
    const start = "iqn.2001-04.com.example:".length;
    for (const [letter, bytes] of [["é", 2], ["水", 3], ["𠀀", 4]] as const) {
      const most = Math.floor((223 - start) / bytes);
      expect(iscsiName("2001-04", "example.com", letter.repeat(most))).toBe(`iqn.2001-04.com.example:${letter.repeat(most)}`);
      expect(cellAnswer(() => iscsiName("2001-04", "example.com", letter.repeat(most + 1)))).toContain(` ${start + bytes * (most + 1)} bytes`);
    }
  });

  test.each([["2001-1", "2001-01"], ["200112", "2001-12"], ["2001/12", "2001-12"], ["4.2001", "2001-04"], ["04-2001", "2001-04"]])("for the month %s it proposes %s", (text, meant) => {
    expect(cellAnswer(() => iscsiName(text, "example.com"))).toBe(`#VALUE! yearMonth "${text}" is not a year and month. Write ${meant}.`);
  });

  test.each(["2001-13", "2001-0", "13.2001", "May 2001"])("for the month %s it proposes none", (text) => {
    expect(cellAnswer(() => iscsiName(text, "example.com"))).toBe(`#VALUE! yearMonth "${text}" is not a year and month. Write it as text, such as 2024-05.`);
  });

  test("December is 12, January 01, and there is no month 13 or 0", () => {
    expect(iscsiName("2001-12", "example.com")).toBe("iqn.2001-12.com.example");
    expect(iscsiName("2001-01", "example.com")).toBe("iqn.2001-01.com.example");
    for (const month of ["2001-13", "2001-00", "2001-1", "01-2001"]) {
      expect(cellAnswer(() => iscsiName(month, "example.com"))).toMatch(/^#VALUE! yearMonth /);
    }
  });
});
