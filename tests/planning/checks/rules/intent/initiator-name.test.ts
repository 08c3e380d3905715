import { initiatorName } from "../../../../../src/planning/checks/rules/intent/initiator-name";
import { cells, found, sample } from "../../../../support/plan-rows";

test.each([
  ["scan-2"], ["iqn.2024-13.example.thornmere:scan-2"], ["iqn.24-05.example.thornmere:x"], ["iqn.2024-05.thornmere"], ["eui.02004567A425678"], ["naa.52004567BA64678"],
  ["iqn.2024-05.example.thornmere:scan 2"],
])(
  "finds a name that is no iSCSI name: %s",
  (name) => {
    const rows = sample();
    rows.hosts[1]!.initiatorName = name;
    expect(cells(initiatorName, rows)).toEqual(["Hosts 6 Initiator name"]);
  },
);

// The examples of RFC 7143 section 4.2.7.
test.each([
  ["iqn.2001-04.com.example:storage:diskarrays-sn-a8675309"], ["iqn.2001-04.com.example"], ["iqn.2001-04.com.example:storage.tape1.sys1.xyz"], ["iqn.2001-04.com.example:storage.disk2.sys1.xyz"],
  ["eui.02004567A425678D"], ["naa.52004567BA64678D"], ["naa.62004567BA64678D0123456789ABCDEF"], ["IQN.2001-04.COM.EXAMPLE:x"], [null],
])("takes a name as RFC 7143 section 4.2.7 shows it: %s", (name) => {
  const rows = sample();
  rows.hosts[1]!.initiatorName = name;
  expect(cells(initiatorName, rows)).toEqual([]);
});

test("says what to write", () => {
  const rows = sample();
  rows.hosts[1]!.initiatorName = "scan-2";
  expect(found(initiatorName, rows)).toEqual(['Hosts 6 Initiator name: "scan-2" is no iSCSI name. Write one such as iqn.2024-05.example.storage:host-1, as the host shows it.']);
});
