import { element, elements, unescapeXml } from "../../../src/workbook/xlsx/xml-scan";

test("elements are found with their attributes and text, under any prefix, closed in either way", () => {
  const xml = `<s><brk id="1"/><x:brk id='2' note="a &gt; b"></x:brk><brk\n id="3" >in<b/>side</brk ><brks/><brk/></s>`;
  expect([...elements(xml, "brk")]).toEqual([
    { attributes: { id: "1" }, inner: "" },
    { attributes: { id: "2", note: "a > b" }, inner: "" },
    { attributes: { id: "3" }, inner: "in<b/>side" },
    { attributes: {}, inner: "" },
  ]);
});

test("an attribute may hold the sign that ends a tag", () => {
  expect(element('<dv error="more > less" sqref="A1"><f>1</f></dv>', "dv")).toEqual({ attributes: { error: "more > less", sqref: "A1" }, inner: "<f>1</f>" });
});

test("an element that is never closed, and one that is not there, are none", () => {
  expect([...elements("<a><b>open", "b")]).toEqual([]);
  expect(element("<a/>", "b")).toBeUndefined();
});

test("a text of nothing but beginnings comes to an end", () => {
  expect([...elements("<brk ".repeat(100_000), "brk")]).toEqual([]);
  expect([...elements('<brk "'.repeat(20_000), "brk")]).toEqual([]);
});

test.each([
  ["&lt;a&gt; &amp;amp; &quot;b&apos;", "<a> &amp; \"b'"],
  ["&#65;&#x1F600;", "A\u{1F600}"],
  ["&unknown; & plain", "&unknown; & plain"],
])("%s says %s", (text, said) => {
  expect(unescapeXml(text)).toBe(said);
});
